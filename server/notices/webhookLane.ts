import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { type Attempt, post } from '../webhooks/post.ts';
import { signedHeaders } from '../webhooks/signature.ts';
import { backOffMs, GIVE_UP_AFTER_MS } from './backOff.ts';
import type { Lane } from './lane.ts';

/** Requests under way at once, each to another webhook. */
const PLACES = 32;
/** Longer than any attempt can last: what a process that died had taken is taken by another then. */
const TAKEN_FOR_MS = 60_000;

interface WebhookLaneParts {
  readonly db: Kysely<Tables>;
  readonly toPrivate: boolean;
  readonly count: (outcome: 'sent' | 'refused' | 'failed') => void;
}

/** The next delivery of one webhook. */
interface WebhookPiece {
  readonly account_id: string;
  readonly webhook_id: string;
  readonly id: string;
  readonly url: string;
  readonly secret: Buffer;
  readonly failures: number;
  readonly event: string;
  readonly body: string;
  readonly attempts: number;
  readonly made_at: Date;
}

/** Sends webhooks what waits for them, to each one thing at a time. */
export function webhookLane(parts: WebhookLaneParts): Lane<WebhookPiece> {
  return {
    places: PLACES,
    claim: (most, now) => claim(parts.db, most, now),
    work: (piece, now, cut) => send(parts, piece, now, cut),
  };
}

async function claim(db: Kysely<Tables>, most: number, now: Date): Promise<WebhookPiece[]> {
  const at = sql`${now.toISOString()}::timestamptz`;
  const taken = sql`${at} + make_interval(secs => ${TAKEN_FOR_MS / 1000})`;
  // The delivery is taken as well as the webhook: whoever changes that meanwhile has it tried at once.
  const { rows } = await sql<WebhookPiece>`
    with free as materialized (
      select w.account_id, w.id from webhooks w
      where w.enabled and w.try_at <= ${at} and (w.account_id, w.id) in (
        select account_id, webhook_id from webhook_deliveries where state = 'waiting' and due_at <= ${at}
      )
      order by w.try_at limit ${most} for no key update skip locked
    ), busy as (
      update webhooks w set try_at = ${taken}
      from free f where w.account_id = f.account_id and w.id = f.id
      returning w.account_id, w.id, w.url, w.secret, w.failures
    ), next as (
      select b.*, d.id as delivery_id
      from busy b cross join lateral (
        select id from webhook_deliveries d
        where d.account_id = b.account_id and d.webhook_id = b.id and d.state = 'waiting' and d.due_at <= ${at}
        order by (d.event = 'test') desc, d.id limit 1
      ) d
    )
    update webhook_deliveries d set due_at = ${taken}
    from next n
    where d.account_id = n.account_id and d.webhook_id = n.id and d.id = n.delivery_id
      and d.state = 'waiting' and d.due_at <= ${at}
    returning d.account_id, d.webhook_id, n.url, n.secret, n.failures, d.id, d.event, d.body, d.attempts, d.made_at
  `.execute(db);
  return rows;
}

async function send(
  { db, toPrivate, count }: WebhookLaneParts,
  piece: WebhookPiece,
  now: Date,
  cut: AbortSignal,
): Promise<void> {
  const { id, url, body, secret, attempts } = piece;
  const attempt = await post(url, signedHeaders(id, new Date(), body, secret), body, { toPrivate, cut });
  // Cut off by our own end: it is tried again as if it had not been.
  if (cut.aborted && 'error' in attempt) {
    await delivery(db, piece).set({ due_at: now }).execute();
    return free(db, piece, now, piece.failures);
  }
  const said = { attempts: attempts + 1, status: null, error: null, ...attempt };
  const next = whatNow(piece, attempt, now);
  await delivery(db, piece)
    .set({ ...said, ...next.delivery })
    .execute();
  if (next.isGone) await switchOff(db, piece);
  else await free(db, piece, new Date(now.getTime() + next.waitMs), next.failures);
  count(next.outcome);
}

interface Next {
  readonly delivery: { state?: 'sent' | 'failed'; ended_at?: Date; due_at?: Date };
  /** How long nothing is sent to the webhook at all. */
  readonly waitMs: number;
  readonly failures: number;
  readonly isGone?: boolean;
  readonly outcome: 'sent' | 'refused' | 'failed';
}

/** A webhook that does not answer, or not well, waits with all that is for it; one thing that it refuses waits alone. */
function whatNow({ failures, attempts, event, made_at }: WebhookPiece, attempt: Attempt, now: Date): Next {
  const status = 'status' in attempt ? attempt.status : 0;
  if (status >= 200 && status < 300)
    return { delivery: { state: 'sent', ended_at: now }, waitMs: 0, failures: 0, outcome: 'sent' };
  const failed = { state: 'failed', ended_at: now } as const;
  if (status === 410) return { delivery: failed, waitMs: 0, failures, isGone: true, outcome: 'refused' };
  // Whoever tests looks on, and tests again.
  if (event === 'test') return { delivery: failed, waitMs: 0, failures, outcome: 'failed' };
  const isOver = now.getTime() - made_at.getTime() > GIVE_UP_AFTER_MS;
  if (status >= 400 && status < 500 && status !== 408 && status !== 429) {
    const due_at = new Date(now.getTime() + backOffMs(attempts + 1));
    return { delivery: isOver ? failed : { due_at }, waitMs: 0, failures: 0, outcome: 'refused' };
  }
  const waitMs = backOffMs(failures + 1);
  const due_at = new Date(now.getTime() + waitMs);
  return { delivery: isOver ? failed : { due_at }, waitMs, failures: failures + 1, outcome: 'failed' };
}

function delivery(db: Kysely<Tables>, piece: WebhookPiece) {
  return db
    .updateTable('webhook_deliveries')
    .where('account_id', '=', piece.account_id)
    .where('webhook_id', '=', piece.webhook_id)
    .where('id', '=', piece.id);
}

function webhook(db: Kysely<Tables>, piece: WebhookPiece) {
  return db
    .updateTable('webhooks')
    .where('account_id', '=', piece.account_id)
    .where('id', '=', piece.webhook_id);
}

/** Lets the webhook be taken again from then on. */
async function free(db: Kysely<Tables>, piece: WebhookPiece, try_at: Date, failures: number): Promise<void> {
  await webhook(db, piece).set({ try_at, failures }).execute();
}

async function switchOff(db: Kysely<Tables>, piece: WebhookPiece): Promise<void> {
  await webhook(db, piece)
    .set({ enabled: false, disabled_because: 'It answered 410: it wants no more.' })
    .execute();
}
