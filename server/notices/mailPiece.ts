import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { backOffMs } from './backOff.ts';
import { GATHER_S } from './enqueue.ts';
import type { Notice } from './notice.ts';

/** Longer than any attempt can last: what a process that died had taken is taken by another then. */
const TAKEN_FOR_MS = 5 * 60_000;

/** One message: all that was due for a person when it was first taken. */
export interface MailPiece {
  readonly accountId: string;
  readonly personId: string;
  readonly message: string;
  readonly rows: readonly MailRow[];
}

/** One notice of a message. */
export interface MailRow {
  readonly account_id: string;
  readonly person_id: string;
  readonly message: string;
  readonly key: string;
  readonly notice: Notice;
  readonly attempts: number;
  readonly made_at: Date;
}

/** Takes what is due for at most so many people, a message each, for nobody else to take. */
export async function claimMail(db: Kysely<Tables>, most: number, now: Date): Promise<MailPiece[]> {
  const at = now.toISOString();
  const { rows } = await sql<MailRow>`
    with reader as materialized (
      select p.account_id, p.id, gen_random_uuid() as message from people p
      where (p.account_id, p.id) in (
        select account_id, person_id from mail_notices where state = 'waiting' and due_at <= ${at}::timestamptz
      )
      order by p.account_id, p.id limit ${most} for no key update skip locked
    )
    update mail_notices n
    set due_at = ${at}::timestamptz + make_interval(secs => ${TAKEN_FOR_MS / 1000}), attempts = n.attempts + 1,
      message = coalesce(n.message, r.message)
    from reader r
    where n.account_id = r.account_id and n.person_id = r.id and n.state = 'waiting' and n.due_at <= ${at}::timestamptz
      -- What still waits for more to come goes along.
      + case when n.message is null then make_interval(secs => ${GATHER_S}) else interval '0' end
    returning n.account_id, n.person_id, n.message, n.key, n.notice, n.attempts, n.made_at
  `.execute(db);
  const pieces = new Map<string, MailRow[]>();
  for (const row of rows) pieces.set(row.message, [...(pieces.get(row.message) ?? []), row]);
  return [...pieces].map(([message, own]) => ({
    accountId: own[0].account_id,
    personId: own[0].person_id,
    message,
    rows: own.sort((a, b) => a.made_at.getTime() - b.made_at.getTime() || (a.key < b.key ? -1 : 1)),
  }));
}

/** No attempt was made: it goes with whatever else is due then. */
export async function postpone(
  db: Kysely<Tables>,
  piece: MailPiece,
  rows: readonly MailRow[],
  until: Date,
): Promise<void> {
  if (rows.length === 0) return;
  await mine(db, piece, rows).set({ due_at: until, message: null, attempts: sql`attempts - 1` }).execute();
}

/** The mail server did not take it: it is tried again, later each time. */
export async function tryLater(
  db: Kysely<Tables>,
  piece: MailPiece,
  rows: readonly MailRow[],
  now: Date,
): Promise<void> {
  const due_at = new Date(now.getTime() + backOffMs(Math.max(...rows.map(({ attempts }) => attempts))));
  await mine(db, piece, rows).set({ due_at, reason: 'The mail server did not take it.' }).execute();
}

/** What became of notices, for good. */
interface MailEnd {
  readonly state: 'sent' | 'dropped' | 'failed';
  /** A sentence for people; null: none is needed. */
  readonly reason: string | null;
  readonly at: Date;
}

/** Nothing more is done about these rows. */
export async function settle(
  db: Kysely<Tables>,
  piece: MailPiece,
  rows: readonly MailRow[],
  { state, reason, at }: MailEnd,
): Promise<void> {
  if (rows.length === 0) return;
  await mine(db, piece, rows).set({ state, reason, ended_at: at }).execute();
}

function mine(db: Kysely<Tables>, { accountId, personId, message }: MailPiece, rows: readonly MailRow[]) {
  return db
    .updateTable('mail_notices')
    .where('account_id', '=', accountId)
    .where('person_id', '=', personId)
    .where('message', '=', message)
    .where('state', '=', 'waiting')
    .where(
      'key',
      'in',
      rows.map(({ key }) => key),
    );
}
