import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';

/** The Postgres channel on which every process learns that a room's results were written. */
export const ROOM_CHANNEL = 'room_results';

export interface RoomKey {
  readonly accountId: string;
  readonly roomId: string;
}

/** Tells all processes; within a transaction once it is committed, and once however often it is said. */
export async function announceRooms(db: Kysely<Tables>, rooms: readonly RoomKey[]): Promise<void> {
  const notices = rooms.map(({ accountId, roomId }) => `${accountId} ${roomId}`);
  await sql`select pg_notify(${ROOM_CHANNEL}, notice) from unnest(${notices}::text[]) as notice`.execute(db);
}

/** Reads what `announceRooms` wrote; null where somebody else wrote to the channel. */
export function roomOfNotice(payload: string | undefined): RoomKey | null {
  const [accountId, roomId] = payload?.split(' ') ?? [];
  return accountId && roomId ? { accountId, roomId } : null;
}
