import { type Kysely, sql } from 'kysely';
import { placedAt, placedBy } from '../../ingest/placing.ts';
import { markRoomDirty } from '../../ingest/roomProgress.ts';
import type { Tables } from '../../migrations/tables.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { queueJob } from '../database/queueJob.ts';

/** The queue's name for the work of placing a logger's strokes by its offset. */
export const PLACE_STROKES = 'place-strokes';

export interface PlaceStrokesPayload {
  readonly accountId: string;
  readonly loggerId: string;
}

/** Queues that work, in the transaction that changes the offset. */
export function queuePlacing(trx: Kysely<Tables>, accountId: string, loggerId: string): Promise<void> {
  return queueJob(trx, PLACE_STROKES, { accountId, loggerId }, `${PLACE_STROKES}/${loggerId}`);
}

/**
 * Places the strokes of a logger anew by its offset as it stands, and has their rooms gone through from the earliest
 * change. Strokes that a person placed stay. Call it when the offset is committed; doing it again changes nothing.
 */
export async function placeStrokes(db: Kysely<Tables>, { accountId, loggerId }: PlaceStrokesPayload) {
  await letStoringEnd(db);
  while (await inTransaction(db, (trx) => placeMisplaced(trx, accountId, loggerId)));
}

/**
 * Waits until no statement is under way that read the old offset and is about to store by it. A statement takes its
 * lock on the table before it looks at any row, so one that comes after this sees the new offset.
 */
async function letStoringEnd(db: Kysely<Tables>): Promise<void> {
  await inTransaction(db, (trx) => sql`lock table strokes in share row exclusive mode`.execute(trx));
}

const NEW_PLACE = sql.raw<Date>(placedAt('s.started_at', 'l.clock_offset_s', 's.received_at'));
const NEW_PLACED_BY = sql.raw<'sender' | 'arrival'>(
  placedBy('s.started_at', 'l.clock_offset_s', 's.received_at'),
);

/** Answers whether there may be more: a stroke that was moved to another room meanwhile is found by the next look. */
async function placeMisplaced(trx: Kysely<Tables>, accountId: string, loggerId: string): Promise<boolean> {
  const misplaced = await trx
    .selectFrom('strokes as s')
    .innerJoin('loggers as l', (join) =>
      join.onRef('l.account_id', '=', 's.account_id').onRef('l.id', '=', 's.sender_id'),
    )
    .select(['s.room_id', sql<Date>`min(least(s.placed_at, ${NEW_PLACE}))`.as('from')])
    .where('s.account_id', '=', accountId)
    .where('s.sender_id', '=', loggerId)
    .where('s.placed_by', '<>', 'person')
    .where((on) => on('s.placed_at', '<>', NEW_PLACE))
    .groupBy('s.room_id')
    // As everybody does who marks several: two such changes never wait for each other.
    .orderBy('s.room_id')
    .execute();
  for (const room of misplaced) {
    await markRoomDirty(trx, accountId, room.room_id, room.from);
    await placeInRoom(trx, accountId, loggerId, room.room_id, room.from);
  }
  return misplaced.length > 0;
}

/** Only strokes whose old and new place are both within what was marked. */
async function placeInRoom(
  trx: Kysely<Tables>,
  accountId: string,
  loggerId: string,
  roomId: string,
  from: Date,
): Promise<void> {
  await sql`
    update strokes s set placed_at = ${NEW_PLACE}, placed_by = ${NEW_PLACED_BY}
    from loggers l
    where l.account_id = ${accountId} and l.id = ${loggerId}
      and s.account_id = ${accountId} and s.sender_id = ${loggerId} and s.room_id = ${roomId}
      and s.placed_by <> 'person' and s.placed_at <> ${NEW_PLACE}
      and least(s.placed_at, ${NEW_PLACE}) >= ${from}
  `.execute(trx);
}
