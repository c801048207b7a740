import { type Kysely, sql } from 'kysely';
import type { Tables } from '../migrations/tables.ts';
import { queueAnalysisOf } from './analyseRoomJob.ts';

/** Before every stroke that can be stored. */
export const BEGINNING = new Date('0001-01-01T00:00:00Z');

/**
 * Says that a room's results from a time on must be made anew, and queues the work. Call it first in the transaction
 * that changes the room's strokes or services: its lock on the room's progress is what keeps an analysis under way
 * from writing results of the old history over the new.
 */
export async function markRoomDirty(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
  from: Date,
): Promise<void> {
  await sql`
    with progress as (
      insert into room_progress as p (account_id, room_id, dirty_from, revision)
      values (${accountId}::uuid, ${roomId}::uuid, ${from.toISOString()}::timestamptz, 1)
      on conflict (account_id, room_id) do update
      set dirty_from = least(p.dirty_from, excluded.dirty_from), revision = p.revision + 1
      returning account_id, room_id
    )
    ${sql.raw(queueAnalysisOf('progress'))}
  `.execute(db);
}

/**
 * The same from the room's beginning, its strokes measured again too: for a change of what the measuring itself
 * depends on (drive, sides, travel, which direction is positive).
 */
export async function remeasureRoom(db: Kysely<Tables>, accountId: string, roomId: string): Promise<void> {
  await markRoomDirty(db, accountId, roomId, BEGINNING);
  await db
    .updateTable('strokes')
    .set({ analysis: null })
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .execute();
}

/** Queues every room whose results are not up to date. For the start, when work may have been cut off. */
export async function queueDirtyRooms(db: Kysely<Tables>): Promise<void> {
  await sql
    .raw(
      queueAnalysisOf('(select account_id, room_id from room_progress where dirty_from is not null) dirty'),
    )
    .execute(db);
}
