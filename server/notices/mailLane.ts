import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { updatePerson } from '../access/people/updatePerson.ts';
import { MailError, type Mailer } from '../mail/mailer.ts';
import { backOffMs, GIVE_UP_AFTER_MS } from './backOff.ts';
import { composeMail } from './composeMail.ts';
import { GATHER_S } from './enqueue.ts';
import type { Lane } from './lane.ts';
import type { Notice } from './notice.ts';
import { quietUntil } from './quietUntil.ts';
import { type ReaderRow, readReader, wanted } from './reader.ts';

/** Mails under way at once. */
const PLACES = 4;
/** Longer than any attempt can last: what a process that died had taken is taken by another then. */
const TAKEN_FOR_MS = 5 * 60_000;

interface MailLaneParts {
  readonly db: Kysely<Tables>;
  readonly mailer: Mailer;
  /** What people reach the service at; empty: nobody knows. */
  readonly publicUrl: () => string;
  readonly count: (outcome: 'sent' | 'refused' | 'failed' | 'dropped') => void;
}

/** One message: all that was due for a person when it was first taken. */
interface MailPiece {
  readonly accountId: string;
  readonly personId: string;
  readonly message: string;
  readonly rows: readonly MailRow[];
}

interface MailRow {
  readonly account_id: string;
  readonly person_id: string;
  readonly message: string;
  readonly key: string;
  readonly notice: Notice;
  readonly attempts: number;
  readonly made_at: Date;
}

/** Sends people what waits for them. */
export function mailLane(parts: MailLaneParts): Lane<MailPiece> {
  return {
    places: PLACES,
    claim: (most, now) => claim(parts.db, most, now),
    work: (piece, now) => send(parts, piece, now),
  };
}

async function claim(db: Kysely<Tables>, most: number, now: Date): Promise<MailPiece[]> {
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

async function send(parts: MailLaneParts, piece: MailPiece, now: Date): Promise<void> {
  const { db, mailer, count } = parts;
  const reader = await readReader(db, piece);
  // Whoever was removed took along what was waiting.
  if (reader === null) return;
  const over = piece.rows.filter(({ made_at }) => now.getTime() - made_at.getTime() > GIVE_UP_AFTER_MS);
  await settle(db, piece, over, now, 'failed', 'The mail server did not take it within three days.');
  const inTime = piece.rows.filter((row) => !over.includes(row));
  const quiet = quietTimeOf(reader, now);
  if (quiet !== null) return postpone(db, piece, inTime, quiet);
  const { kept, dropped } = await wanted(db, reader, inTime, now);
  if (dropped.length > 0) {
    await settle(db, piece, dropped, now, 'dropped', 'It may no longer see this, or does not want it.');
    count('dropped');
  }
  if (kept.length === 0) return;
  try {
    await mailer.send(composeMail(reader, piece.message, latestOf(kept), parts.publicUrl()));
    await settle(db, piece, kept, now, 'sent', null);
    count('sent');
  } catch (error) {
    if (!(error instanceof MailError)) throw error;
    if (error.isForGood) {
      await pause(db, reader, now);
      await settle(db, piece, kept, now, 'failed', 'The mailbox was refused.');
      count('refused');
    } else {
      await tryLater(db, piece, kept, now);
      count('failed');
    }
  }
}

function quietTimeOf({ quiet_from, quiet_to, time_zone }: ReaderRow, now: Date): Date | null {
  if (quiet_from === null || quiet_to === null) return null;
  return quietUntil(now, { from: quiet_from, to: quiet_to }, time_zone ?? 'UTC');
}

/** Of each warning the last that is known of it; all else as it is. */
function latestOf(rows: readonly MailRow[]): Notice[] {
  const thingOf = ({ notice, key }: MailRow) => ('warningId' in notice ? notice.warningId : key);
  return [...new Map(rows.map((row) => [thingOf(row), row.notice])).values()];
}

/** No attempt was made: it goes with whatever else is due then. */
async function postpone(
  db: Kysely<Tables>,
  piece: MailPiece,
  rows: readonly MailRow[],
  until: Date,
): Promise<void> {
  if (rows.length === 0) return;
  await mine(db, piece, rows).set({ due_at: until, message: null, attempts: sql`attempts - 1` }).execute();
}

async function tryLater(
  db: Kysely<Tables>,
  piece: MailPiece,
  rows: readonly MailRow[],
  now: Date,
): Promise<void> {
  const due_at = new Date(now.getTime() + backOffMs(Math.max(...rows.map(({ attempts }) => attempts))));
  await mine(db, piece, rows).set({ due_at, reason: 'The mail server did not take it.' }).execute();
}

async function settle(
  db: Kysely<Tables>,
  piece: MailPiece,
  rows: readonly MailRow[],
  now: Date,
  state: 'sent' | 'dropped' | 'failed',
  reason: string | null,
): Promise<void> {
  if (rows.length === 0) return;
  await mine(db, piece, rows).set({ state, reason, ended_at: now }).execute();
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

async function pause(db: Kysely<Tables>, reader: ReaderRow, now: Date): Promise<void> {
  const person = { accountId: reader.account_id, personId: reader.id };
  const mail_paused_because = `The mail server refused ${reader.email} for good.`;
  await updatePerson(db, person, { mail_paused_at: now, mail_paused_because });
}
