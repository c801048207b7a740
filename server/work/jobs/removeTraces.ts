import { type Kysely, sql } from 'kysely';
import { v7 as newId } from 'uuid';
import { holdRooms } from '../../../ingest/holdRooms.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { inTransaction } from '../../database/inTransaction.ts';

interface Due {
  readonly account_id: string;
  readonly trace_months: number;
  readonly removed_before: Date;
}

interface Removed {
  readonly traces: number;
  readonly bytes: number;
}

/**
 * Removes the samples that accounts no longer want kept, and writes down for each what it removed: counted before,
 * removed, counted after. Strokes, analyses and measures stay; samples of a stroke that is not measured yet stay until
 * it is. May be cut off anywhere: the next run goes on, and what was removed by then is in its own count.
 */
export async function removeTraces(db: Kysely<Tables>, now: Date): Promise<void> {
  const { rows } = await sql<Due>`
    select id as account_id, trace_months,
      date_trunc('milliseconds', ${now.toISOString()}::timestamptz - make_interval(months => trace_months))
        as removed_before
    from accounts where trace_months is not null order by id
  `.execute(db);
  for (const due of rows) await removeOfAccount(db, due, now);
}

async function removeOfAccount(db: Kysely<Tables>, due: Due, now: Date): Promise<void> {
  const before = await countDue(db, due);
  if (before === 0) return;
  let traces = 0;
  let bytes = 0;
  for (const roomId of await roomsWithDue(db, due)) {
    const removed = await inTransaction(db, (trx) => removeOfRoom(trx, due, roomId));
    traces += removed.traces;
    bytes += removed.bytes;
  }
  if (traces === 0) return;
  await db
    .insertInto('retention_runs')
    .values({
      account_id: due.account_id,
      id: newId(),
      ran_at: now,
      trace_months: due.trace_months,
      removed_before: due.removed_before,
      traces_before: before,
      traces_removed: traces,
      bytes_removed: bytes,
      traces_after: await countDue(db, due),
    })
    .execute();
}

async function countDue(db: Kysely<Tables>, { account_id, removed_before }: Due): Promise<number> {
  const { count } = await db
    .selectFrom('traces')
    .select(({ fn }) => fn.countAll<string>().as('count'))
    .where('account_id', '=', account_id)
    .where('received_at', '<', removed_before)
    .executeTakeFirstOrThrow();
  return Number(count);
}

async function roomsWithDue(db: Kysely<Tables>, { account_id, removed_before }: Due): Promise<string[]> {
  const rows = await db
    .selectFrom('traces as t')
    .innerJoin('strokes as s', (join) =>
      join.onRef('s.account_id', '=', 't.account_id').onRef('s.id', '=', 't.stroke_id'),
    )
    .select('s.room_id')
    .distinct()
    .where('t.account_id', '=', account_id)
    .where('t.received_at', '<', removed_before)
    .orderBy('s.room_id')
    .execute();
  return rows.map((row) => row.room_id);
}

/**
 * Holds the room's progress first, as everybody does who asks for strokes to be measured again: they see what is gone
 * before they forget an analysis, or this sees that there is none and leaves the samples.
 */
async function removeOfRoom(
  trx: Kysely<Tables>,
  { account_id, removed_before }: Due,
  roomId: string,
): Promise<Removed> {
  await holdRooms(trx, [{ accountId: account_id, roomId }]);
  await sql`
    select from room_progress where account_id = ${account_id} and room_id = ${roomId} for update
  `.execute(trx);
  const { rows } = await sql<Removed>`
    with removed as (
      delete from traces t using strokes s
      where t.account_id = ${account_id} and t.received_at < ${removed_before}
        and s.account_id = ${account_id} and s.id = t.stroke_id and s.room_id = ${roomId}
        and s.received_at = t.received_at and s.analysis is not null
      returning octet_length(t.trace) as bytes
    )
    select count(*)::integer as traces, coalesce(sum(bytes), 0)::float8 as bytes from removed
  `.execute(trx);
  return rows[0];
}
