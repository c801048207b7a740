import { type Kysely, sql } from 'kysely';
import { ANALYSIS_VERSION } from '../../analysis/room/fold.ts';
import type { Tables } from '../../migrations/tables.ts';

/** The room's state after all events up to a time, kept so that an on-time stroke need not go through the history. */
export interface Checkpoint {
  readonly at: Date;
  /** How many events lie behind it. */
  readonly events: number;
  /** The state as JSON text. */
  readonly state: string;
}

/** One is kept at the end of each so many events, and one at the latest event. */
export const EVENTS_APART = 32;
/** Among those further back than this, every eighth stays. */
const CLOSE_EVENTS = 1024;
const OLD_KEEP_ONE_IN = 8;

/** The latest one before a time, made by this version of the analysis. */
export async function latestCheckpoint(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
  before: Date,
): Promise<Checkpoint | null> {
  const row = await db
    .selectFrom('room_checkpoints')
    .select(['at', 'events', sql<string>`state #>> '{}'`.as('state')])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('at', '<', before)
    .where('analysis_version', '=', ANALYSIS_VERSION)
    .orderBy('at', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row ?? null;
}

/** Replaces all checkpoints after the one that the work began from. `made` are in order of time. */
export async function replaceCheckpoints(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
  from: Checkpoint | null,
  made: readonly Checkpoint[],
): Promise<void> {
  const ofRoom = db
    .deleteFrom('room_checkpoints')
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId);
  await ofRoom.$if(from !== null, (query) => query.where('at', '>', from?.at ?? new Date(0))).execute();
  if (made.length === 0) return;
  const events = made[made.length - 1].events;
  if (from !== null) {
    if (stretchOf(from.events) === stretchOf(made[0].events)) {
      await ofRoom.where('at', '=', from.at).execute();
    }
    if (stretchOf(from.events) !== stretchOf(events)) {
      await ofRoom
        .where('events', '<', events - CLOSE_EVENTS)
        .where(sql<boolean>`(events / ${sql.lit(EVENTS_APART)}) % ${sql.lit(OLD_KEEP_ONE_IN)} <> 0`)
        .execute();
    }
  }
  await db
    .insertInto('room_checkpoints')
    .values(
      made.map((checkpoint) => ({
        account_id: accountId,
        room_id: roomId,
        at: checkpoint.at,
        events: checkpoint.events,
        analysis_version: ANALYSIS_VERSION,
        // As one JSON string: the database would else put the keys of the state in an order of its own.
        state: JSON.stringify(checkpoint.state),
      })),
    )
    .execute();
}

/** Of each stretch of events the last checkpoint is the one that stays. */
export function stretchOf(events: number): number {
  return Math.floor(events / EVENTS_APART);
}
