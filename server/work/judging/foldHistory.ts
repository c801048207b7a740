import type { Kysely } from 'kysely';
import type { Judgement, RoomEvent, RoomSummary, StrokeEvent } from '../../../analysis/history.ts';
import {
  advanceRoom,
  beginRoom,
  type LentToRoom,
  lentByRoom,
  limitsOf,
  type RoomState,
  summariseRoom,
} from '../../../analysis/room/fold.ts';
import type { Warning } from '../../../analysis/warning.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { RoomLimits } from '../../results/roomLimits.ts';
import type { Turns } from '../inHand/turns.ts';
import { borrowFor, type Lending, learntBefore, sameLent } from '../lending/borrowFor.ts';
import type { RoomToAnalyse } from '../reading/readRoom.ts';
import { roomEvents } from '../reading/roomEvents.ts';
import { type Checkpoint, latestCheckpoint, stretchOf } from '../remembered/checkpoints.ts';
import type { FoldStart, Place } from '../remembered/foldStart.ts';
import { type MeasureRow, measureRows } from './measureRows.ts';

/** What a room's history says from a time on, ready to be written. */
export interface FoldedHistory extends Lending {
  readonly from: FoldStart | null;
  readonly checkpoints: readonly Checkpoint[];
  /** The state after the last event, and where that is; null: there are none. */
  readonly state: RoomState;
  readonly end: Place | null;
  /** The strokes whose results are to be written, with or without measures. */
  readonly strokeIds: readonly string[];
  readonly measures: readonly MeasureRow[];
  /** Those open when it began and all that changed since, by id, as they stand at the end. */
  readonly warnings: ReadonlyMap<string, Warning>;
  readonly summary: RoomSummary;
  readonly limits: readonly RoomLimits[];
}

/** The analysis could not judge a stroke: that one must be set aside, or the room would stand still for ever. */
export class UnjudgedStroke extends Error {
  readonly strokeId: string;

  constructor(strokeId: string, cause: unknown) {
    super('A stroke could not be judged.', { cause });
    this.name = 'UnjudgedStroke';
    this.strokeId = strokeId;
  }
}

/**
 * Goes through the room's events from the last checkpoint before `dirtyFrom`. Reads only. A room borrows from those that
 * learnt their normal before it did: where the events show that to have been at another time, they are gone through
 * once more from the beginning, with what is lent then.
 */
export async function foldHistory(
  db: Kysely<Tables>,
  room: RoomToAnalyse,
  dirtyFrom: Date,
  turns: Turns,
): Promise<FoldedHistory> {
  const { accountId, roomId } = room;
  const foldFrom = (from: FoldStart | null, since: Date | null, lent: LentToRoom) =>
    foldEvents(room, { from, since, lent }, roomEvents(db, accountId, roomId, from?.at ?? null), turns);
  const from = await latestCheckpoint(db, accountId, roomId, dirtyFrom);
  const folded = await foldFrom(
    from,
    dirtyFrom,
    from === null ? await borrowFor(db, room, await learntBefore(db, room)) : [],
  );
  if (folded.isSettled) return folded;
  const lentThen = await borrowFor(db, room, folded.lends);
  return sameLent(lentThen, folded.lent) ? folded : foldFrom(null, null, lentThen);
}

interface FoldFrom {
  /** Null: the beginning. */
  readonly from: FoldStart | null;
  /** The results of strokes before it are written and still hold; null: of none. */
  readonly since: Date | null;
  /** With what it begins at the beginning. */
  readonly lent?: LentToRoom;
}

/** Goes on from a place in the room's history with all events after it, in the one order of events. */
export async function foldEvents(
  { roomId, description }: RoomToAnalyse,
  { from, since, lent = [] }: FoldFrom,
  chunks: AsyncIterable<RoomEvent[]> | Iterable<RoomEvent[]>,
  turns: Turns,
): Promise<FoldedHistory> {
  const state = from?.state() ?? beginRoom(roomId, description, lent);
  const isSettled = from !== null && lentByRoom(state).every(({ normal }) => normal !== null);
  const warnings = new Map(from ? summariseRoom(state).openWarnings.map((open) => [open.id, open]) : []);
  const measures: MeasureRow[] = [];
  const strokeIds: string[] = [];
  const checkpoints: Checkpoint[] = [];
  let events = from?.events ?? 0;
  let before: RoomEvent | null = null;
  const keepState = (event: RoomEvent) =>
    checkpoints.push({ at: new Date(event.atMs), events, state: JSON.stringify(state) });

  for await (const chunk of chunks) {
    for (const event of chunk) {
      await turns.next();
      // Only between two instants: a checkpoint stands for everything up to its time.
      if (before && event.atMs > before.atMs && endsStretch(events, checkpoints, from)) keepState(before);
      const judgement = judge(state, event, turns);
      events++;
      before = event;
      for (const warning of judgement.warnings) warnings.set(warning.id, warning);
      if (event.type === 'stroke' && (since === null || event.atMs >= since.getTime())) {
        strokeIds.push(event.strokeId);
        measures.push(...measureRows(event, judgement, description));
      }
    }
  }
  // Of a room that is busy enough to be remembered, the last stretch is gone through again where that is forgotten.
  if (before && (!from?.isRemembered || endsStretch(events, checkpoints, from))) keepState(before);
  return {
    from,
    checkpoints,
    state,
    end: before ? { at: new Date(before.atMs), events } : from,
    strokeIds,
    measures,
    warnings,
    summary: summariseRoom(state),
    limits: limitsOf(state),
    lent: state.channels.map((channel) => channel.lent),
    lends: lentByRoom(state),
    isSettled,
  };
}

/** Whether the next event begins another stretch than the one after the last checkpoint. */
function endsStretch(events: number, made: readonly Checkpoint[], from: FoldStart | null): boolean {
  const last = made[made.length - 1] ?? from?.saved ?? null;
  return stretchOf(events + 1) > stretchOf(last === null ? 0 : last.events + 1);
}

function judge(state: RoomState, event: RoomEvent, { hand }: Turns): Judgement {
  if (!isUsable(event)) return advanceRoom(state, event);
  try {
    return hand.holding(event.strokeId, () => advanceRoom(state, event));
  } catch (error) {
    throw new UnjudgedStroke(event.strokeId, error);
  }
}

function isUsable(event: RoomEvent): event is StrokeEvent {
  return event.type === 'stroke' && event.analysis.status === 'done';
}
