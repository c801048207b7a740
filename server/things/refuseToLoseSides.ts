import { sql, type Transaction } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { ProblemError } from '../problems.ts';

/** Whoever stores strokes waits behind us: better that this one comes again. */
const WAIT_AT_MOST = '2s';

/**
 * Throws the 409 problem where strokes of the room, stored or under way, name a side that it would lose: they could not
 * be read any more. Call it first in the transaction that takes the sides away, as it waits for all that store.
 */
export async function refuseToLoseSides(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  roomId: string,
  sides: readonly string[],
): Promise<void> {
  refuse(await namedBeside(trx, accountId, roomId, sides));
  // None so far, but one may be on its way that still saw the old sides: those under way end before us, and those that
  // come wait and see the new ones. The tables in the order in which an ending stroke takes them.
  await sql`set local lock_timeout = ${sql.lit(WAIT_AT_MOST)}`.execute(trx);
  await sql`lock table live_strokes in exclusive mode`.execute(trx);
  await sql`lock table strokes in share row exclusive mode`.execute(trx);
  refuse(await namedBeside(trx, accountId, roomId, sides));
}

function refuse(named: readonly string[]): void {
  if (named.length === 0) return;
  const detail = `Strokes of this room name ${named.join(', ')}: it must keep what they name.`;
  throw new ProblemError('conflict', detail, { errors: [{ pointer: '/sides', detail }] });
}

/** What strokes of the room name that is not among these. */
async function namedBeside(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  roomId: string,
  sides: readonly string[],
): Promise<string[]> {
  const { rows } = await sql<{ side: string }>`
    select side from strokes s, unnest(s.recorded_sides) as side
    where s.account_id = ${accountId} and s.room_id = ${roomId} and side <> all (${sides}::text[])
    union
    select said ->> 'side' from live_strokes l, jsonb_array_elements(l.header -> 'sides') as said
    where l.account_id = ${accountId} and l.room_id = ${roomId} and l.stored_at is null
      and said ->> 'side' <> all (${sides}::text[])
    order by 1
  `.execute(trx);
  return rows.map(({ side }) => side);
}
