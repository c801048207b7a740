import { type Kysely, type Selectable, sql, type Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import type { WebhookDeliveryTable, WebhookTable } from '../../migrations/noticeTables.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { type PageAsked, pageById } from '../paging.ts';
import { notFound, ProblemError } from '../problems.ts';
import type {
  Event,
  NewWebhook,
  Webhook,
  WebhookBody,
  WebhookDelivery,
  WebhookPatch,
} from '../schemas/webhook.ts';
import { refuseUrl } from './refuseUrl.ts';
import { newSecret, secretText } from './signature.ts';

/** An account's programs are few: more than this are a script gone wrong. */
const MOST_WEBHOOKS = 20;

/** The secret is answered here and nowhere else. */
export async function createWebhook(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  body: WebhookBody,
  toPrivate: boolean,
): Promise<NewWebhook> {
  refuseUrl(body.url, toPrivate);
  // Those who make one at once take turns.
  await trx.selectFrom('accounts').select('id').where('id', '=', accountId).forUpdate().execute();
  const { count } = await own(trx, accountId)
    .select(({ fn }) => fn.countAll<string>().as('count'))
    .executeTakeFirstOrThrow();
  if (Number(count) >= MOST_WEBHOOKS)
    throw new ProblemError(
      'conflict',
      `An account has at most ${MOST_WEBHOOKS} webhooks: remove some first.`,
    );
  const row = await trx
    .insertInto('webhooks')
    .values({ account_id: accountId, id: newId(), ...body, secret: newSecret() })
    .returningAll()
    .executeTakeFirstOrThrow();
  return { ...webhookOf(row), secret: secretText(row.secret) };
}

/** The oldest first. */
export function listWebhooks(db: Kysely<Tables>, accountId: AccountInScope, asked: PageAsked) {
  return pageById(own(db, accountId).selectAll(), { list: 'webhooks', ...asked }, webhookOf);
}

export async function findWebhook(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<Webhook> {
  const row = await own(db, accountId)
    .selectAll()
    .where('id', '=', id)
    .executeTakeFirstOrThrow(() => notFound('webhook'));
  return webhookOf(row);
}

/** Whatever is changed, it is tried again at once, as one that answers well. */
export async function changeWebhook(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  id: string,
  change: WebhookPatch,
  toPrivate: boolean,
): Promise<Webhook> {
  if (change.url !== undefined) refuseUrl(change.url, toPrivate);
  const row = await db
    .updateTable('webhooks')
    .set({ ...change, failures: 0, try_at: sql`now()`, updated_at: sql`now()` })
    .$if(change.enabled !== undefined, (query) => query.set({ disabled_because: null }))
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow(() => notFound('webhook'));
  return webhookOf(row);
}

/** What was on its way to it goes with it. */
export async function removeWebhook(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<void> {
  await db
    .deleteFrom('webhooks')
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .returning('id')
    .executeTakeFirstOrThrow(() => notFound('webhook'));
}

/** Puts a test on its way, before all else that waits for the webhook, and without regard to how it answered before. */
export async function testWebhook(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  webhookId: string,
): Promise<WebhookDelivery> {
  const { enabled } = await findWebhook(trx, accountId, webhookId);
  if (!enabled) throw new ProblemError('conflict', 'It is switched off: switch it on first.');
  const id = newId();
  const body = JSON.stringify({ type: 'test', timestamp: new Date().toISOString(), data: {} });
  const row = await trx
    .insertInto('webhook_deliveries')
    .values({ account_id: accountId, webhook_id: webhookId, id, key: `test ${id}`, event: 'test', body })
    .returningAll()
    .executeTakeFirstOrThrow();
  await trx
    .updateTable('webhooks')
    .set({ try_at: sql`now()` })
    .where('account_id', '=', accountId)
    .where('id', '=', webhookId)
    .where('failures', '>', 0)
    .execute();
  return deliveryOf(row);
}

type DeliveryRow = Selectable<WebhookDeliveryTable>;

/** What was sent to it and what is on its way, the latest first. */
export async function listDeliveries(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  webhookId: string,
  asked: PageAsked,
) {
  await findWebhook(db, accountId, webhookId);
  const query = db
    .selectFrom('webhook_deliveries')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('webhook_id', '=', webhookId);
  const list = `webhooks/${webhookId}/deliveries`;
  return pageById(query, { list, ...asked }, deliveryOf, 'latest-first');
}

function deliveryOf(row: DeliveryRow): WebhookDelivery {
  return {
    id: row.id,
    // Written by `enqueueWebhooks` and `testWebhook` and nobody else.
    event: row.event as WebhookDelivery['event'],
    state: row.state,
    attempts: row.attempts,
    status: row.status,
    error: row.error,
    madeAt: row.made_at.toISOString(),
    endedAt: row.ended_at?.toISOString() ?? null,
  };
}

function own(db: Kysely<Tables>, accountId: AccountInScope) {
  return db.selectFrom('webhooks').where('account_id', '=', accountId);
}

function webhookOf(row: Selectable<WebhookTable>): Webhook {
  return {
    id: row.id,
    url: row.url,
    // The column takes no others.
    events: row.events as Event[],
    severity: row.severity,
    enabled: row.enabled,
    disabledBecause: row.disabled_because,
    failing: row.failures === 0 ? null : { times: row.failures, tryAt: row.try_at.toISOString() },
    createdAt: row.created_at.toISOString(),
    updatedAt: row.updated_at.toISOString(),
  };
}
