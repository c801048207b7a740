import { stringify } from 'csv-stringify/sync';
import { type Kysely, type Selectable, sql } from 'kysely';
import type { RecordTable, Tables } from '../../migrations/tables.ts';
import type { RecordedAct, RecordQuery } from '../schemas/record.ts';
import { oneMoreThan, type Page, pageFrom } from '../things/page.ts';
import type { AccountInScope } from './scope.ts';

export type RecordRow = Selectable<RecordTable>;

/** More at once is no table that anybody reads: ask for a shorter span. */
const MOST_LINES = 100_000;

/** What was done in the account, newest first. Triggers of the database write it (migration 0012). */
export async function listRecord(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  { limit, from, to }: RecordQuery,
  after: readonly [at: string, id: string] | null,
): Promise<Page<RecordRow & { readonly place: string }>> {
  let query = db
    .selectFrom('record')
    .selectAll()
    // To the microsecond, which a Date does not hold: the cursor must not pass anything over.
    .select(sql<string>`to_char(at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"')`.as('place'))
    .where('account_id', '=', accountId);
  if (from !== undefined) query = query.where('at', '>=', new Date(from));
  if (to !== undefined) query = query.where('at', '<=', new Date(to));
  if (after !== null)
    query = query.where(sql<boolean>`(at, id) < (${after[0]}::timestamptz, ${after[1]}::uuid)`);
  const rows = await query.orderBy('at', 'desc').orderBy('id', 'desc').limit(oneMoreThan(limit)).execute();
  return pageFrom(rows, limit);
}

export function actOf(row: RecordRow): RecordedAct {
  return {
    id: row.id,
    at: row.at.toISOString(),
    act: row.act,
    by: row.person_id === null ? null : { id: row.person_id, name: row.person_name },
    thing: row.thing,
    thingId: row.thing_id,
    coachId: row.coach_id,
    details: row.details,
  };
}

/** The span as a table. What a spreadsheet would take for a formula is text. */
export async function recordCsv(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  query: RecordQuery,
): Promise<string> {
  const { rows } = await listRecord(db, accountId, { ...query, limit: MOST_LINES }, null);
  const lines = rows.map(actOf).map(({ by, details, ...act }) => ({
    ...act,
    by: by?.name ?? null,
    byId: by?.id ?? null,
    details: JSON.stringify(details),
  }));
  return stringify(lines, {
    header: true,
    columns: ['at', 'act', 'by', 'byId', 'thing', 'thingId', 'coachId', 'details'],
    record_delimiter: '\r\n',
    escape_formulas: true,
  });
}
