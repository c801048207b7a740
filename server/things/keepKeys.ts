import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';

/**
 * Keeps the keys of strokes that a person removes, so that none comes back when its sender sends it again: of one, or
 * of all in a room that is held for removing. Of a logger that is gone nothing is sent any more; one that goes
 * meanwhile is waited for.
 */
export async function keepKeys(
  trx: Kysely<Tables>,
  accountId: AccountInScope,
  removed: { readonly strokeId: string } | { readonly roomId: string },
): Promise<void> {
  const chosen = 'strokeId' in removed ? sql`s.id = ${removed.strokeId}` : sql`s.room_id = ${removed.roomId}`;
  await sql`
    with senders as materialized (
      select l.id from loggers l
      where l.account_id = ${accountId}
        and l.id in (select s.logger_id from strokes s where s.account_id = ${accountId} and ${chosen})
      for key share
    )
    insert into removed_strokes (account_id, sender_id, key, stroke_id, coach_id, logger_id)
    select s.account_id, s.sender_id, s.key, s.id, r.coach_id, s.logger_id
    from strokes s join rooms r on r.account_id = s.account_id and r.id = s.room_id
    where s.account_id = ${accountId} and ${chosen}
      and (s.logger_id is null or s.logger_id in (select id from senders))
  `.execute(trx);
}
