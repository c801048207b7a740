import type { RoomDescription } from '../../analysis/trace.ts';
import type { FaultLabel } from '../../server/demo/simulator/faults/fault.ts';
import type { SimulatedRoom } from '../../server/demo/simulator/room.ts';
import { simulateHistory } from '../../server/demo/simulator/simulateHistory.ts';
import { type BeamMember, drawBeamFleet } from './beam/fleet.ts';
import { beamHistory } from './beam/history.ts';
import { type CableMember, drawCableFleet } from './cable/fleet.ts';
import { cableHistory } from './cable/history.ts';
import { drawForcesFleet, type ForcesMember } from './forces/fleet.ts';
import { forcesHistory } from './forces/history.ts';
import { drawFleet, type FleetMember } from './motor/drawFleet.ts';
import { drawPinionFleet, type PinionMember } from './pinion/fleet.ts';
import { pinionHistory } from './pinion/history.ts';
import { drawPlainFleet, type PlainMember } from './plain/fleet.ts';
import { plainHistory } from './plain/history.ts';
import type { ToldEvent } from './playFleet.ts';
import { drawRecorderFleet, type RecorderMember } from './recorder/fleet.ts';
import { recorderHistory } from './recorder/history.ts';
import { drawWindingFleet, type WindingMember } from './winding/fleet.ts';
import { windingHistory } from './winding/history.ts';
import { drawWormFleet, type WormMember } from './worm/fleet.ts';
import { wormHistory } from './worm/history.ts';

/** A room of a fleet, whichever generator made it: what a dealer knows of it, what happened, and what is the truth. */
export interface FleetRoom {
  readonly seed: number;
  readonly room: RoomDescription;
  readonly strokes: number;
  /** null: healthy. `startsStroke` may lie before the label's onset. */
  readonly fault: { readonly name: string; readonly label: FaultLabel; readonly startsStroke: number } | null;
  readonly recordsSupply: boolean;
  events(): Iterable<ToldEvent>;
}

export const FLEET_NAMES = [
  'motor',
  'plain',
  'forces',
  'winding',
  'worm',
  'cable',
  'recorder',
  'beam',
  'pinion',
] as const;
export type FleetName = (typeof FLEET_NAMES)[number];

/**
 * `motor`: the demo's simulator, driven from the motor's equations; `plain`: currents written down directly; `forces`:
 * motors solved against friction, teeth, seals and tilt, read by clamps with converters; `winding`: motors whose windings
 * warm, the controllers that keep two in step, and the wiring and loggers of coaches that stand somewhere else each time;
 * `worm`: motors behind worms that drive and hold by the screw's law, over rollers, seals and a flush floor's ramp;
 * `cable`: motors and halves of a room as masses joined by cables, shafts or teeth with slack, under controllers and
 * users of many habits; `recorder`: traces as a maker of current loggers knows them, phase by phase in time: inrush, a
 * textured plateau, end stop and cut-off under ramps, nudges and hall sensors, seen by clamps that drift, trigger badly and
 * resolve little; `beam`: the room as a rigid body on two guided edges, in translation and yaw, with dry, viscous and
 * wedging friction, gears with slack, a sagging supply and warming windings, run step by step; `pinion`: each motor's
 * winding, speed, place and heat integrated over time against a load drawn from the room's geometry, under relays, soft
 * starts, current limits and controllers that count, in a life of camps with their weather, people and supplies.
 */
export function drawRooms(fleet: FleetName, seed: number, count: number, strokes: number): FleetRoom[] {
  switch (fleet) {
    case 'motor':
      return drawFleet(seed, count, { strokes }).map(fromMotorFleet);
    case 'plain':
      return drawPlainFleet(seed, count, strokes).map(fromPlainFleet);
    case 'forces':
      return drawForcesFleet(seed, count, strokes).map(fromForcesFleet);
    case 'winding':
      return drawWindingFleet(seed, count, strokes).map(fromWindingFleet);
    case 'worm':
      return drawWormFleet(seed, count, strokes).map(fromWormFleet);
    case 'cable':
      return drawCableFleet(seed, count, strokes).map(fromCableFleet);
    case 'recorder':
      return drawRecorderFleet(seed, count, strokes).map(fromRecorderFleet);
    case 'beam':
      return drawBeamFleet(seed, count, strokes).map(fromBeamFleet);
    case 'pinion':
      return drawPinionFleet(seed, count, strokes).map(fromPinionFleet);
  }
}

export function fromMotorFleet({ seed, room, plan, fault }: FleetMember): FleetRoom {
  return {
    seed,
    room: roomOf(room),
    strokes: plan.strokes,
    fault,
    recordsSupply: room.logging.supplyRateHz !== null,
    *events() {
      for (const event of simulateHistory(room, plan, seed)) {
        if (event.type === 'stroke') yield event;
        else yield { type: 'service', atMs: event.atMs, kind: event.service.kind, side: event.service.side };
      }
    },
  };
}

function fromPlainFleet({ seed, room, fault, variants, strokes }: PlainMember): FleetRoom {
  return {
    seed,
    room: room.facts,
    strokes,
    fault,
    recordsSupply: room.supplyRateHz !== null,
    *events() {
      for (const event of plainHistory(room, variants, fault, strokes, seed)) {
        yield event.type === 'stroke' ? event : { ...event, side: null };
      }
    },
  };
}

function fromForcesFleet({ seed, room, fault, variants, strokes, years }: ForcesMember): FleetRoom {
  return {
    seed,
    room: room.facts,
    strokes,
    fault,
    recordsSupply: room.supply !== null,
    *events() {
      for (const event of forcesHistory(room, variants, fault, strokes, years, seed)) {
        yield event.type === 'stroke' ? event : { ...event, side: null };
      }
    },
  };
}

function fromWindingFleet(member: WindingMember): FleetRoom {
  const { facts, logger } = member.room;
  return toldRoom(member, facts, logger.supplyRateHz, () => windingHistory(member));
}

function fromWormFleet(member: WormMember): FleetRoom {
  const { facts, logger } = member.room;
  return toldRoom(member, facts, logger.supply, () => wormHistory(member));
}

function fromCableFleet(member: CableMember): FleetRoom {
  const { facts, logger } = member.room;
  return toldRoom(member, facts, logger.supply, () => cableHistory(member));
}

function fromRecorderFleet(member: RecorderMember): FleetRoom {
  const { facts, logger } = member.room;
  return toldRoom(member, facts, logger.supplyRateHz, () => recorderHistory(member));
}

function fromBeamFleet(member: BeamMember): FleetRoom {
  const { facts, logger } = member.plant;
  return toldRoom(member, facts, logger.supply, () => beamHistory(member));
}

function fromPinionFleet(member: PinionMember): FleetRoom {
  const { facts, logger } = member.plant;
  return toldRoom(member, facts, logger.supply, () => pinionHistory(member));
}

/** `supply`: how the room's logger reads it; null: not at all. */
function toldRoom(
  { seed, fault, strokes }: Pick<FleetRoom, 'seed' | 'fault' | 'strokes'>,
  room: RoomDescription,
  supply: unknown,
  events: () => Iterable<ToldEvent>,
): FleetRoom {
  return { seed, room, strokes, fault, recordsSupply: supply !== null, events };
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
