import { type Kysely, type RawBuilder, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';

/**
 * The id of the warning that has taken the place of `f`, a row of `former_warnings`. It is of the same room and kind and lasted
 * while that one did. Of several, one of the same side goes first, then one of the same direction, then the one that opened
 * nearest to it. What was said of one side may be said of both now, and the other way round.
 */
export const SUCCESSOR: RawBuilder<string | null> = sql`(
  select n.id from warnings n
  where n.account_id = f.account_id and n.room_id = f.room_id and n.kind = f.kind
    and (n.side is not distinct from f.side or n.side is null or f.side is null)
    and n.opened_at <= f.last_at and (n.cleared_at is null or n.cleared_at >= f.opened_at)
  order by n.side is not distinct from f.side desc, n.direction is not distinct from f.direction desc,
    greatest(n.opened_at - f.opened_at, f.opened_at - n.opened_at), n.id
  limit 1
)`;

/** The id of the warning that has the place of one that stood under this id before; null: none has. */
export async function successorOf(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  formerId: string,
): Promise<string | null> {
  const { rows } = await sql<{ id: string | null }>`
    select ${SUCCESSOR} as id from former_warnings f where f.account_id = ${accountId} and f.id = ${formerId}
  `.execute(db);
  return rows[0]?.id ?? null;
}
