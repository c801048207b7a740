import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import type { RoomKey } from '../../database/roomChannel.ts';

export interface Claim {
  /** Rooms that this connection holds now, and nobody else works on until it lets them go. */
  readonly rooms: readonly RoomKey[];
  /** Where the next look goes on; null: at the beginning, as this one came to the end. */
  readonly next: RoomKey | null;
}

/** SQL of the advisory lock that goes with the work on a room. */
const LOCK = `hashtextextended('analyse ' || account_id || ' ' || room_id, 0)`;

/**
 * Takes up to `most` rooms whose results are out of date, in the order of their ids after `after`, but for those that
 * another connection holds. They are held by the connection itself, so that the death of whoever works on them frees
 * them at once; what makes them due is their own mark, so that no piece of work can be lost or stuck.
 */
export async function claimRooms(
  connection: Kysely<Tables>,
  after: RoomKey | null,
  except: readonly string[],
  most: number,
): Promise<Claim> {
  const { rows } = await sql<{ account_id: string; room_id: string; held: boolean }>`
    with due as materialized (
      select account_id, room_id from room_progress
      where dirty_from is not null and room_id <> all (${except}::uuid[])
        ${after === null ? sql`` : sql`and (account_id, room_id) > (${after.accountId}::uuid, ${after.roomId}::uuid)`}
      order by account_id, room_id limit ${most}
    )
    select account_id, room_id, pg_try_advisory_lock(${sql.raw(LOCK)}) as held from due
  `.execute(connection);
  const keys = rows.map((row) => ({ accountId: row.account_id, roomId: row.room_id, held: row.held }));
  return {
    rooms: keys.filter(({ held }) => held),
    next: keys.length === most ? keys[keys.length - 1] : null,
  };
}

/** Lets go of all rooms that the connection holds. */
export async function releaseRooms(connection: Kysely<Tables>): Promise<void> {
  await sql`select pg_advisory_unlock_all()`.execute(connection);
}

/** Runs the work on one room while this connection holds it. Answers null where another one does. */
export async function holdingRoom<Result>(
  connection: Kysely<Tables>,
  { accountId, roomId }: RoomKey,
  work: () => Promise<Result>,
): Promise<Result | null> {
  const key = sql`(select ${accountId}::uuid as account_id, ${roomId}::uuid as room_id) room`;
  const { rows } = await sql<{ held: boolean }>`
    select pg_try_advisory_lock(${sql.raw(LOCK)}) as held from ${key}
  `.execute(connection);
  if (!rows[0].held) return null;
  try {
    return await work();
  } finally {
    await sql`select pg_advisory_unlock(${sql.raw(LOCK)}) from ${key}`.execute(connection);
  }
}
