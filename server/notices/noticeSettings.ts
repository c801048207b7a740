import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { updatePerson } from '../access/people/updatePerson.ts';
import type { Scope } from '../access/scopes/scope.ts';
import { notFound } from '../problems.ts';
import type { NoticeSettings, NoticeSettingsPatch } from '../schemas/settings.ts';

/** What is kept of a person. */
export type KeptNoticeSettings = Omit<NoticeSettings, 'mails'>;

export async function readNoticeSettings(db: Kysely<Tables>, person: Scope): Promise<KeptNoticeSettings> {
  const row = await db
    .selectFrom('people')
    .select(['email', 'notices_from', 'notices_cleared', 'quiet_from', 'quiet_to', 'digest'])
    .select(['silent_after_days', 'mail_paused_at', 'mail_paused_because'])
    .where('account_id', '=', person.accountId)
    .where('id', '=', person.personId)
    .executeTakeFirstOrThrow(() => notFound('person'));
  const { quiet_from, quiet_to, mail_paused_at, mail_paused_because } = row;
  return {
    email: row.email,
    warningsFrom: row.notices_from,
    cleared: row.notices_cleared,
    quiet:
      quiet_from === null || quiet_to === null ? null : { from: clockOf(quiet_from), to: clockOf(quiet_to) },
    digest: row.digest,
    silentAfterDays: row.silent_after_days,
    paused:
      mail_paused_at === null
        ? null
        : { since: mail_paused_at.toISOString(), because: mail_paused_because ?? '' },
  };
}

export async function changeNoticeSettings(
  db: Kysely<Tables>,
  person: Scope,
  { warningsFrom, cleared, quiet, digest, silentAfterDays }: NoticeSettingsPatch,
): Promise<KeptNoticeSettings> {
  await updatePerson(db, person, {
    notices_from: warningsFrom,
    notices_cleared: cleared,
    quiet_from: quiet === null ? null : quiet?.from,
    quiet_to: quiet === null ? null : quiet?.to,
    digest,
    silent_after_days: silentAfterDays,
  });
  if (quiet !== undefined) await lookAtWaiting(db, person);
  return readNoticeSettings(db, person);
}

/** What came up while it was paused is not mailed late. */
export async function resumeMail(db: Kysely<Tables>, person: Scope): Promise<KeptNoticeSettings> {
  await updatePerson(db, person, { mail_paused_at: null, mail_paused_because: null });
  return readNoticeSettings(db, person);
}

/** What the quiet hours of before held back waits no longer than those of now. */
async function lookAtWaiting(db: Kysely<Tables>, person: Scope): Promise<void> {
  await db
    .updateTable('mail_notices')
    .set({ due_at: sql`now()` })
    .where('account_id', '=', person.accountId)
    .where('person_id', '=', person.personId)
    .where('state', '=', 'waiting')
    // It is in no message yet, so nobody is sending it.
    .where('message', 'is', null)
    .execute();
}

/** Postgres tells the seconds too. */
function clockOf(time: string): string {
  return time.slice(0, 5);
}
