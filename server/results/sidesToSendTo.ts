import type { Kysely } from 'kysely';
import { isUuid } from '../../ingest/uuid.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { Caller } from '../access/scopes/caller.ts';
import { sendersOf } from './sendStrokes.ts';

/** The sides of a room that the caller may send to, which the titles of a recording are held against. */
export async function sidesToSendTo(
  db: Kysely<Tables>,
  caller: Caller,
  roomId: string | undefined,
): Promise<readonly string[] | undefined> {
  if (roomId === undefined || !isUuid(roomId)) return undefined;
  for (const { accountId, coachId } of sendersOf(caller)) {
    let query = db
      .selectFrom('rooms')
      .select('sides')
      .where('account_id', '=', accountId)
      .where('id', '=', roomId);
    if (coachId !== null) query = query.where('coach_id', '=', coachId);
    const room = await query.executeTakeFirst();
    if (room !== undefined) return room.sides;
  }
  return undefined;
}
