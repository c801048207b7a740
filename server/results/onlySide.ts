import type { Kysely } from 'kysely';
import { isUuid } from '../../ingest/uuid.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { Caller } from '../access/scopes/caller.ts';
import { sendersOf } from './sendStrokes.ts';

/** The side of a room that has but one, where the caller may send to it: a current without a name can be no other's. */
export async function onlySide(
  db: Kysely<Tables>,
  caller: Caller,
  roomId: string | undefined,
): Promise<string | undefined> {
  if (roomId === undefined || !isUuid(roomId)) return undefined;
  for (const { accountId, coachId } of sendersOf(caller)) {
    let query = db
      .selectFrom('rooms')
      .select('sides')
      .where('account_id', '=', accountId)
      .where('id', '=', roomId);
    if (coachId !== null) query = query.where('coach_id', '=', coachId);
    const room = await query.executeTakeFirst();
    if (room !== undefined) return room.sides.length === 1 ? room.sides[0] : undefined;
  }
  return undefined;
}
