import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';

/** The Postgres channel on which every process learns that a room's results were written. */
export const ROOM_CHANNEL = 'room_results';

export interface RoomKey {
  readonly accountId: string;
  readonly roomId: string;
}

/** Tells all processes; within a transaction once it is committed, and once however often it is said. */
export async function announceRoom(db: Kysely<Tables>, { accountId, roomId }: RoomKey): Promise<void> {
  await sql`select pg_notify(${ROOM_CHANNEL}, ${`${accountId} ${roomId}`})`.execute(db);
}

/** Reads what `announceRoom` wrote; null where somebody else wrote to the channel. */
export function roomOfNotice(payload: string | undefined): RoomKey | null {
  const [accountId, roomId] = payload?.split(' ') ?? [];
  return accountId && roomId ? { accountId, roomId } : null;
}
