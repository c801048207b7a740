import { type Kysely, type Selectable, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { atLeast } from '../results/severityOrder.ts';
import type { Notice } from './notice.ts';
import { coachesSeenBy } from './whoSees.ts';

const COLUMNS = [
  'account_id',
  'id',
  'email',
  'name',
  'role',
  'time_zone',
  'locale',
  'notices_from',
  'notices_cleared',
  'quiet_from',
  'quiet_to',
  'digest',
  'silent_after_days',
  'mail_paused_at',
  'unsubscribe_key',
] as const;

/** A person with what it wants to be told. */
export type ReaderRow = Pick<Selectable<Tables['people']>, (typeof COLUMNS)[number]>;

export async function readReader(
  db: Kysely<Tables>,
  { accountId, personId }: { readonly accountId: string; readonly personId: string },
): Promise<ReaderRow | null> {
  const row = await db
    .selectFrom('people')
    .select(COLUMNS)
    .where('account_id', '=', accountId)
    .where('id', '=', personId)
    .where(sql<boolean>`password_hash is not null`)
    .executeTakeFirst();
  return row ?? null;
}

/** Of what waits for a person: what it still wants and may still see at that time, and the rest. */
export async function wanted<Row extends { readonly notice: Notice }>(
  db: Kysely<Tables>,
  reader: ReaderRow,
  rows: readonly Row[],
  now: Date,
): Promise<{ kept: Row[]; dropped: Row[] }> {
  const coaches = rows.flatMap(({ notice }) => ('coachId' in notice ? [notice] : []));
  const person = { accountId: reader.account_id, personId: reader.id };
  const seen = coaches.length === 0 ? new Set() : await coachesSeenBy(db, person, coaches, now);
  const isKept = ({ notice }: Row) =>
    reader.mail_paused_at === null &&
    wants(reader, notice) &&
    (!('coachId' in notice) || seen.has(notice.coachId));
  return { kept: rows.filter(isKept), dropped: rows.filter((row) => !isKept(row)) };
}

function wants(reader: ReaderRow, notice: Notice): boolean {
  switch (notice.event) {
    case 'warning.cleared':
      return reader.notices_cleared && isSevere(reader, notice);
    case 'warning.opened':
    case 'warning.worse':
      return isSevere(reader, notice);
    case 'logger.silent':
      return reader.silent_after_days !== null;
    case 'digest':
      return reader.digest && reader.role === 'dealer';
  }
}

function isSevere(
  { notices_from }: ReaderRow,
  { severity }: Extract<Notice, { severity: unknown }>,
): boolean {
  return notices_from !== null && atLeast(severity, notices_from);
}
