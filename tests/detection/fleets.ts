import type { RoomDescription } from '../../analysis/trace.ts';
import type { LabelledFault } from '../../server/demo/simulator/faults/fault.ts';
import type { SimulatedRoom } from '../../server/demo/simulator/room.ts';
import { simulateHistory } from '../../server/demo/simulator/simulateHistory.ts';
import { drawBeamFleet } from './beam/fleet.ts';
import { beamHistory } from './beam/history.ts';
import { drawCableFleet } from './cable/fleet.ts';
import { cableHistory } from './cable/history.ts';
import { drawForcesFleet } from './forces/fleet.ts';
import { forcesHistory } from './forces/history.ts';
import { drawFleet, type FleetMember } from './motor/drawFleet.ts';
import { drawPinionFleet } from './pinion/fleet.ts';
import { pinionHistory } from './pinion/history.ts';
import { drawPlainFleet } from './plain/fleet.ts';
import { plainHistory } from './plain/history.ts';
import type { ToldEvent } from './playFleet.ts';
import { drawRecorderFleet } from './recorder/fleet.ts';
import { recorderHistory } from './recorder/history.ts';
import { drawWindingFleet } from './winding/fleet.ts';
import { windingHistory } from './winding/history.ts';
import { drawWormFleet } from './worm/fleet.ts';
import { wormHistory } from './worm/history.ts';

/** A room of a fleet, whichever generator made it: what a dealer knows of it, what happened, and what is the truth. */
export interface FleetRoom {
  readonly seed: number;
  readonly room: RoomDescription;
  readonly strokes: number;
  /** null: healthy. `startsStroke` may lie before the label's onset. */
  readonly fault: LabelledFault | null;
  readonly recordsSupply: boolean;
  /** What was told of it; without its fault: what would have been. */
  events(hasFault?: boolean): Iterable<ToldEvent>;
}

type DrawRooms = (seed: number, count: number, strokes: number) => FleetRoom[];

/** What each is made of is told in `README.md` beside this file. */
const FLEETS = {
  motor: (seed, count, strokes) => drawFleet(seed, count, { strokes }).map(fromMotorFleet),
  plain: (...of) =>
    drawPlainFleet(...of).map((member) =>
      told(member, member.room.facts, member.room.supplyRateHz, plainHistory),
    ),
  forces: (...of) =>
    drawForcesFleet(...of).map((member) =>
      told(member, member.room.facts, member.room.supply, forcesHistory),
    ),
  winding: (...of) =>
    drawWindingFleet(...of).map((member) =>
      told(member, member.room.facts, member.room.logger.supplyRateHz, windingHistory),
    ),
  worm: (...of) =>
    drawWormFleet(...of).map((member) =>
      told(member, member.room.facts, member.room.logger.supply, wormHistory),
    ),
  cable: (...of) =>
    drawCableFleet(...of).map((member) =>
      told(member, member.room.facts, member.room.logger.supply, cableHistory),
    ),
  recorder: (...of) =>
    drawRecorderFleet(...of).map((member) =>
      told(member, member.room.facts, member.room.logger.supplyRateHz, recorderHistory),
    ),
  beam: (...of) =>
    drawBeamFleet(...of).map((member) =>
      told(member, member.plant.facts, member.plant.logger.supply, beamHistory),
    ),
  pinion: (...of) =>
    drawPinionFleet(...of).map((member) =>
      told(member, member.plant.facts, member.plant.logger.supply, pinionHistory),
    ),
} satisfies Record<string, DrawRooms>;

export type FleetName = keyof typeof FLEETS;
// The keys of a literal are of its type.
export const FLEET_NAMES = Object.keys(FLEETS) as FleetName[];

export function drawRooms(fleet: FleetName, seed: number, count: number, strokes: number): FleetRoom[] {
  return FLEETS[fleet](seed, count, strokes);
}

export function fromMotorFleet({ seed, room, plan, fault }: FleetMember): FleetRoom {
  return {
    seed,
    room: roomOf(room),
    strokes: plan.strokes,
    fault,
    recordsSupply: room.logging.supplyRateHz !== null,
    *events(hasFault = true) {
      for (const event of simulateHistory(room, hasFault ? plan : { ...plan, faults: [] }, seed)) {
        if (event.type === 'stroke') yield event;
        else yield { type: 'service', atMs: event.atMs, kind: event.service.kind, side: event.service.side };
      }
    },
  };
}

type Member<Fault> = Pick<FleetRoom, 'seed' | 'strokes'> & { readonly fault: Fault | null };

/** `supply`: how the room's logger reads it; null: not at all. */
function told<Fault extends LabelledFault, Of extends Member<Fault>>(
  member: Of,
  room: RoomDescription,
  supply: unknown,
  history: (member: Of) => Iterable<ToldEvent>,
): FleetRoom {
  const { seed, strokes, fault } = member;
  return {
    seed,
    room,
    strokes,
    fault,
    recordsSupply: supply !== null,
    events: (hasFault = true) => history(hasFault ? member : { ...member, fault: null }),
  };
}

export function roomOf({ facts }: SimulatedRoom): RoomDescription {
  return {
    drive: facts.drive,
    sides: facts.sides,
    travelMetres: facts.travelMetres ?? null,
    gearTeeth: facts.gearTeeth ?? null,
    rackPitchMm: facts.rackPitchMm ?? null,
    ratedAmps: facts.ratedAmps ?? null,
    nominalVolts: facts.nominalVolts ?? 12,
    positiveDirection: facts.positiveDirection,
  };
}
