import type { Kysely } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { updatePerson } from '../access/people/updatePerson.ts';
import { MailError, type Mailer } from '../mail/mailer.ts';
import { GIVE_UP_AFTER_MS } from './backOff.ts';
import { composeMail } from './composeMail.ts';
import type { Lane } from './lane.ts';
import { claimMail, type MailPiece, type MailRow, postpone, settle, tryLater } from './mailPiece.ts';
import type { Notice } from './notice.ts';
import { quietUntil } from './quietUntil.ts';
import { type ReaderRow, readReader, wanted } from './reader.ts';

/** Mails under way at once. */
const PLACES = 4;
interface MailLaneParts {
  readonly db: Kysely<Tables>;
  readonly mailer: Mailer;
  /** What people reach the service at; empty: nobody knows. */
  readonly publicUrl: () => string;
  readonly count: (outcome: 'sent' | 'refused' | 'failed' | 'dropped') => void;
}

/** Sends people what waits for them. */
export function mailLane(parts: MailLaneParts): Lane<MailPiece> {
  return {
    places: PLACES,
    claim: (most, now) => claimMail(parts.db, most, now),
    work: (piece, now) => send(parts, piece, now),
  };
}

async function send(parts: MailLaneParts, piece: MailPiece, now: Date): Promise<void> {
  const { db, mailer, count } = parts;
  const reader = await readReader(db, piece);
  // Whoever was removed took along what was waiting.
  if (reader === null) return;
  const over = piece.rows.filter(({ made_at }) => now.getTime() - made_at.getTime() > GIVE_UP_AFTER_MS);
  await settle(db, piece, over, {
    state: 'failed',
    reason: 'The mail server did not take it within three days.',
    at: now,
  });
  const inTime = piece.rows.filter((row) => !over.includes(row));
  const quiet = quietTimeOf(reader, now);
  if (quiet !== null) return postpone(db, piece, inTime, quiet);
  const { kept, dropped } = await wanted(db, reader, inTime, now);
  if (dropped.length > 0) {
    await settle(db, piece, dropped, {
      state: 'dropped',
      reason: 'It may no longer see this, or does not want it.',
      at: now,
    });
    count('dropped');
  }
  if (kept.length === 0) return;
  try {
    await mailer.send(composeMail(reader, piece.message, latestOf(kept), parts.publicUrl()));
    await settle(db, piece, kept, { state: 'sent', reason: null, at: now });
    count('sent');
  } catch (error) {
    if (!(error instanceof MailError)) throw error;
    if (error.isForGood) {
      await pause(db, reader, now);
      await settle(db, piece, kept, { state: 'failed', reason: 'The mailbox was refused.', at: now });
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

async function pause(db: Kysely<Tables>, reader: ReaderRow, now: Date): Promise<void> {
  const person = { accountId: reader.account_id, personId: reader.id };
  const mail_paused_because = `The mail server refused ${reader.email} for good.`;
  await updatePerson(db, person, { mail_paused_at: now, mail_paused_because });
}
