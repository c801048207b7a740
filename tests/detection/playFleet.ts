import type { Expectation, StrokeEvent } from '../../analysis/history.ts';
import { measureStroke } from '../../analysis/measureStroke.ts';
import { advanceRoom, beginRoom, summariseRoom } from '../../analysis/room/fold.ts';
import type { RoomDescription } from '../../analysis/trace.ts';
import type { Verdict, Warning } from '../../analysis/warning.ts';
import { decodeStroke } from '../../ingest/json/stroke.ts';
import { toStrokeTrace } from '../../ingest/stroke.ts';
import type { FleetMember } from '../../server/demo/simulator/drawFleet.ts';
import type { SimulatedRoom } from '../../server/demo/simulator/room.ts';
import { simulateHistory } from '../../server/demo/simulator/simulateHistory.ts';
import type { SimulatedStroke } from '../../server/demo/simulator/simulateStroke.ts';

/** A warning with the indices of the strokes that opened and cleared it. */
export interface PlayedWarning {
  warning: Warning;
  readonly openedAt: number;
  clearedAt: number | null;
}

export interface PlayedStroke {
  readonly event: StrokeEvent;
  readonly truth: SimulatedStroke['truth'];
  readonly expectations: readonly Expectation[];
}

export interface PlayedHistory {
  readonly warnings: PlayedWarning[];
  readonly strokes: PlayedStroke[];
  readonly verdict: Verdict;
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

/** Plays a simulated room's whole history through decoding, measuring and judging, as the service would. */
export function playHistory(member: FleetMember): PlayedHistory {
  const room = roomOf(member.room);
  const state = beginRoom(`room-${member.seed}`, room);
  const warnings = new Map<string, PlayedWarning>();
  const strokes: PlayedStroke[] = [];
  let services = 0;
  for (const event of simulateHistory(member.room, member.plan, member.seed)) {
    if (event.type === 'service') {
      const { kind, side = null } = event.service;
      advanceRoom(state, {
        type: 'service',
        serviceId: `service-${services++}`,
        atMs: event.atMs,
        kind,
        side,
      });
      continue;
    }
    const incoming = decodeStroke({ ...event.stroke, key: `k${event.index}`, roomId: SOME_ROOM }, '');
    const trace = toStrokeTrace(incoming, incoming.direction);
    const strokeEvent: StrokeEvent = {
      type: 'stroke',
      strokeId: `stroke-${event.index}`,
      atMs: Date.parse(event.stroke.startedAt),
      direction: incoming.direction,
      ambientC: incoming.ambientC,
      excluded: false,
      analysis: measureStroke(trace, room),
    };
    const judgement = advanceRoom(state, strokeEvent);
    strokes.push({ event: strokeEvent, truth: event.truth, expectations: judgement.expectations });
    for (const warning of judgement.warnings) {
      const known = warnings.get(warning.id);
      const clearedAt = warning.clearedAtMs === null ? null : event.index;
      if (known === undefined) warnings.set(warning.id, { warning, openedAt: event.index, clearedAt });
      else Object.assign(known, { warning, clearedAt });
    }
  }
  return { warnings: [...warnings.values()], strokes, verdict: summariseRoom(state).verdict };
}

const SOME_ROOM = '01900000-0000-7000-8000-000000000001';
