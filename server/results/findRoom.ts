import type { Kysely, Selectable } from 'kysely';
import type { RoomTable, Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scope.ts';
import { notFound } from '../problems.ts';

/** A room of the account; to everyone else it does not exist. */
export async function findRoom(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  roomId: string,
): Promise<Selectable<RoomTable>> {
  const room = await db
    .selectFrom('rooms')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('id', '=', roomId)
    .executeTakeFirst();
  if (room === undefined) throw notFound('room');
  return room;
}
