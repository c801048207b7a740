import type { Expectation, StrokeEvent } from '../../analysis/history.ts';
import { measureStroke } from '../../analysis/measureStroke.ts';
import {
  advanceRoom,
  beginRoom,
  type LentToRoom,
  type RoomState,
  summariseRoom,
} from '../../analysis/room/fold.ts';
import type { RoomDescription, ServiceKind } from '../../analysis/trace.ts';
import type { Verdict, Warning } from '../../analysis/warning.ts';
import { decodeStroke } from '../../ingest/json/stroke.ts';
import { toStrokeTrace } from '../../ingest/stroke.ts';
import type { StrokeRecord } from '../../server/demo/simulator/strokeRecord.ts';

/** One event of a fleet's room as its logger and its people tell it, in time order. */
export type ToldEvent =
  | {
      readonly type: 'stroke';
      readonly index: number;
      readonly stroke: StrokeRecord;
      readonly broken?: boolean;
    }
  | {
      readonly type: 'service';
      readonly atMs: number;
      readonly kind: ServiceKind;
      readonly side: string | null;
    };

/** A warning with the indices of the strokes that opened and cleared it. */
export interface PlayedWarning {
  warning: Warning;
  readonly openedAt: number;
  clearedAt: number | null;
}

export interface PlayedStroke {
  readonly index: number;
  /** A part of a movement only, which is rightly beyond its limits. */
  readonly broken: boolean;
  readonly event: StrokeEvent;
  readonly expectations: readonly Expectation[];
  /** The room's, after this stroke. */
  readonly verdict: Verdict;
}

export interface PlayedHistory {
  readonly warnings: PlayedWarning[];
  readonly strokes: PlayedStroke[];
  readonly verdict: Verdict;
  /** At the end. */
  readonly state: RoomState;
}

/**
 * Plays a room's whole history through decoding, measuring and judging, as the service would; `lent`: what rooms of its
 * model lend it.
 */
export function playHistory(
  room: RoomDescription,
  events: Iterable<ToldEvent>,
  lent: LentToRoom = [],
): PlayedHistory {
  const state = beginRoom('room', room, lent);
  const warnings = new Map<string, PlayedWarning>();
  const strokes: PlayedStroke[] = [];
  let services = 0;
  for (const told of events) {
    if (told.type === 'service') {
      advanceRoom(state, { ...told, serviceId: `service-${services++}` });
      continue;
    }
    const event = measured(told, room);
    const judgement = advanceRoom(state, event);
    strokes.push({
      index: told.index,
      broken: told.broken ?? false,
      event,
      expectations: judgement.expectations,
      verdict: summariseRoom(state).verdict,
    });
    for (const warning of judgement.warnings) {
      const known = warnings.get(warning.id);
      const clearedAt = warning.clearedAtMs === null ? null : told.index;
      if (known === undefined) warnings.set(warning.id, { warning, openedAt: told.index, clearedAt });
      else Object.assign(known, { warning, clearedAt });
    }
  }
  return { warnings: [...warnings.values()], strokes, verdict: summariseRoom(state).verdict, state };
}

const SOME_ROOM = '01900000-0000-7000-8000-000000000001';

function measured(
  { index, stroke }: Extract<ToldEvent, { type: 'stroke' }>,
  room: RoomDescription,
): StrokeEvent {
  const incoming = decodeStroke({ ...stroke, key: `k${index}`, roomId: SOME_ROOM }, '');
  return {
    type: 'stroke',
    strokeId: `stroke-${String(index).padStart(6, '0')}`,
    atMs: Date.parse(stroke.startedAt),
    direction: incoming.direction,
    ambientC: incoming.ambientC,
    excluded: false,
    analysis: measureStroke(toStrokeTrace(incoming, incoming.direction), room),
  };
}
