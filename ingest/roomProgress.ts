import { type Kysely, sql } from 'kysely';
import type { Tables } from '../migrations/tables.ts';
import { holdRooms } from './holdRooms.ts';

/** Before every stroke that can be stored. */
export const BEGINNING = new Date('0001-01-01T00:00:00Z');

/**
 * Says that a room's results from a time on must be made anew, which sets the analysis to work. Call it first in the
 * transaction that changes the room's strokes or services: its lock on the room's progress is what keeps an analysis
 * under way from writing results of the old history over the new.
 */
export async function markRoomDirty(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
  from: Date,
): Promise<void> {
  await markRoomsDirty(db, accountId, [roomId], from);
}

/** The same for several rooms, in the order of rooms: two such changes never wait for each other. */
export async function markRoomsDirty(
  db: Kysely<Tables>,
  accountId: string,
  roomIds: readonly string[],
  from: Date,
): Promise<void> {
  if (roomIds.length === 0) return;
  await holdRooms(
    db,
    roomIds.map((roomId) => ({ accountId, roomId })),
  );
  await sql`
    insert into room_progress as p (account_id, room_id, dirty_from, revision)
    select ${accountId}::uuid, room_id, ${from.toISOString()}::timestamptz, 1
    from unnest(${roomIds}::uuid[]) as room_id order by room_id
    on conflict (account_id, room_id) do update
    set dirty_from = least(p.dirty_from, excluded.dirty_from), revision = p.revision + 1
  `.execute(db);
}

/**
 * The same from the room's beginning, its strokes measured again too: for a change of what the measuring itself
 * depends on (drive, sides, travel, which direction is positive). A stroke whose samples are no longer kept stays as
 * it was measured.
 */
export async function remeasureRoom(db: Kysely<Tables>, accountId: string, roomId: string): Promise<void> {
  await markRoomDirty(db, accountId, roomId, BEGINNING);
  await db
    .updateTable('room_progress')
    .set({ measured_by: null })
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .execute();
  await forgetAnalyses(db, accountId, roomId, BEGINNING);
}

/** Has the strokes from a time on measured again, as far as their samples are kept. In the transaction of the mark. */
export async function forgetAnalyses(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
  from: Date,
): Promise<void> {
  // Not together with the mark: whoever removes samples holds the mark too, and what it removed must be seen here.
  await db
    .updateTable('strokes as s')
    .set({ analysis: null })
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('placed_at', '>=', from)
    .where(HAS_TRACE)
    .execute();
}

/** Whether the samples of a row of `strokes as s` are still kept. */
export const HAS_TRACE = sql<boolean>`exists (
  select from traces t where t.account_id = s.account_id and t.stroke_id = s.id and t.received_at = s.received_at
)`;
