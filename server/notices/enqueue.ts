import { type Kysely, sql } from 'kysely';
import { v7 as newId } from 'uuid';
import type { Severity } from '../../migrations/columns.ts';
import type { Tables } from '../../migrations/tables.ts';
import { placeOfSeverity } from '../results/severityOrder.ts';
import type { Event } from '../schemas/webhook.ts';
import { newsBody } from './newsBody.ts';
import type { Notice, SilentNotice, WarningNotice } from './notice.ts';
import { whoSees } from './whoSees.ts';

/** A mail waits so long for what comes up together with it: what many rooms bring at once is one message. */
export const GATHER_S = 60;

/** Writes a notice for every person who sees the coach and wants it. `key` names what is told: never twice. */
export async function enqueueMails(
  trx: Kysely<Tables>,
  key: string,
  notice: WarningNotice,
  now: Date,
): Promise<void> {
  const wanted =
    notice.event === 'warning.cleared'
      ? sql`p.notices_cleared and ${fromSeverity(notice.severity)}`
      : fromSeverity(notice.severity);
  await sql`
    insert into mail_notices (account_id, person_id, key, notice, made_at, due_at)
    select p.account_id, p.id, ${key}, ${JSON.stringify(notice)}::jsonb, ${at(now)}, ${gathered(now)}
    from (${whoSees(notice, now)}) s join people p on p.account_id = s.account_id and p.id = s.id
    where p.mail_paused_at is null and ${wanted}
    on conflict do nothing
  `.execute(trx);
}

function fromSeverity(severity: Severity) {
  return sql`${placeOfSeverity(sql.ref('p.notices_from'))} <= ${placeOfSeverity(sql`${severity}`)}`;
}

export async function enqueueMail(
  trx: Kysely<Tables>,
  person: { readonly accountId: string; readonly personId: string },
  key: string,
  notice: Notice,
  now: Date,
): Promise<void> {
  await sql`
    insert into mail_notices (account_id, person_id, key, notice, made_at, due_at)
    values (${person.accountId}, ${person.personId}, ${key}, ${JSON.stringify(notice)}::jsonb, ${at(now)}, ${gathered(now)})
    on conflict do nothing
  `.execute(trx);
}

/** Writes a delivery for every webhook of the coach's account that takes such news. */
export async function enqueueWebhooks(
  trx: Kysely<Tables>,
  key: string,
  notice: WarningNotice | SilentNotice,
  now: Date,
): Promise<void> {
  const event: Event = notice.event;
  let query = trx
    .selectFrom('webhooks')
    .select(['id'])
    .where('account_id', '=', notice.accountId)
    .where('enabled', '=', true)
    .where(sql<boolean>`${event} = any (events)`);
  if (notice.event !== 'logger.silent')
    query = query.where(
      sql<boolean>`${placeOfSeverity(sql.ref('severity'))} <= ${placeOfSeverity(sql`${notice.severity}`)}`,
    );
  const webhooks = await query.execute();
  if (webhooks.length === 0) return;
  const body = newsBody(notice);
  await trx
    .insertInto('webhook_deliveries')
    .values(
      webhooks.map(({ id }) => ({
        account_id: notice.accountId,
        webhook_id: id,
        id: newId(),
        key,
        event,
        body,
        made_at: now,
        due_at: now,
      })),
    )
    .onConflict((conflict) => conflict.columns(['account_id', 'webhook_id', 'key']).doNothing())
    .execute();
}

function at(time: Date) {
  return sql`${time.toISOString()}::timestamptz`;
}

function gathered(now: Date) {
  return at(new Date(now.getTime() + GATHER_S * 1000));
}
