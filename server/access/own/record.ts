import { type Kysely, type Selectable, sql } from 'kysely';
import { parse, v7 } from 'uuid';
import { z } from 'zod';
import type { RecordTable } from '../../../migrations/peopleTables.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { csvTable } from '../../csvTable.ts';
import { type AnsweredPage, answerPage, oneMoreThan, type Page, pageFrom, readCursor } from '../../paging.ts';
import { invalidField } from '../../problems.ts';
import { Id } from '../../schemas/common.ts';
import type { RecordedAct, RecordQuery } from '../../schemas/record.ts';
import type { AccountInScope } from '../scopes/scope.ts';

interface RecordRow extends Selectable<RecordTable> {
  readonly coach_name: string | null;
  /** Its time to the microsecond, which a Date does not hold: the cursor must not pass anything over. */
  readonly place: string;
}

/** More at once is no table that anybody reads. */
const MOST_LINES = 100_000;

const LIST = 'record';
const Place = z.tuple([z.iso.datetime({ offset: true }), Id]);

/** What was done in the account, newest first. Triggers of the database write it (migration 0012). */
export async function listRecord(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  query: RecordQuery,
): Promise<AnsweredPage<RecordedAct>> {
  const page = await readRecord(db, accountId, query, readCursor(LIST, query.cursor, Place));
  return answerPage(LIST, page, actOf, (row) => [row.place, row.id]);
}

async function readRecord(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  { limit, from, to, acts, personId }: RecordQuery,
  after: readonly [at: string, id: string] | null,
): Promise<Page<RecordRow>> {
  let query = db
    .selectFrom('record as r')
    .leftJoin('coaches as c', (join) =>
      join.onRef('c.account_id', '=', 'r.account_id').onRef('c.id', '=', 'r.coach_id'),
    )
    .selectAll('r')
    .select('c.name as coach_name')
    .select(sql<string>`to_char(r.at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"')`.as('place'))
    .where('r.account_id', '=', accountId);
  if (from !== undefined) query = query.where('r.at', '>=', new Date(from));
  if (to !== undefined) query = query.where('r.at', '<=', new Date(to));
  if (acts !== undefined) query = query.where('r.act', 'in', acts.split(','));
  if (personId !== undefined) query = query.where('r.person_id', '=', personId);
  if (after !== null)
    query = query.where(sql<boolean>`(r.at, r.id) < (${after[0]}::timestamptz, ${after[1]}::uuid)`);
  const rows = await query
    .orderBy('r.at', 'desc')
    .orderBy('r.id', 'desc')
    .limit(oneMoreThan(limit))
    .execute();
  return pageFrom(rows, limit);
}

function actOf(row: RecordRow): RecordedAct {
  return {
    id: recordId(row.at, row.id),
    at: row.at.toISOString(),
    act: row.act,
    by: row.person_id === null ? null : { id: row.person_id, name: row.person_name },
    thing: row.thing,
    thingId: row.thing_id,
    coachId: row.coach_id,
    coachName: row.coach_name,
    details: withTimesInUtc(row.details),
  };
}

const TIMES = ['at', 'started_at', 'until'];

/** The database noted them in the zone of whoever was connected, which before was that of its server. */
function withTimesInUtc(details: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(details).map(([name, value]) => [name, TIMES.includes(name) ? inUtc(value) : value]),
  );
}

/** What is no time of a calendar stays as it is. */
function inUtc(value: unknown): unknown {
  const time = new Date(typeof value === 'string' ? value : Number.NaN);
  return Number.isNaN(time.getTime()) ? value : time.toISOString();
}

/**
 * The id under which the API tells an act. The database notes acts by itself, under random ids (version 4): the instant
 * of the act and that id's randomness make one of version 7, always the same.
 */
function recordId(at: Date, storedId: string): string {
  return v7({ msecs: at.getTime(), random: parse(storedId) });
}

/** The span as a table. Throws the 422 problem where it holds too much: a record with its end cut off would look whole. */
export async function recordCsv(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  query: RecordQuery,
): Promise<string> {
  const { rows, more } = await readRecord(db, accountId, { ...query, limit: MOST_LINES }, null);
  if (more) throw invalidField('/from', `There are more than ${MOST_LINES} acts: ask for a shorter span.`);
  const lines = rows.map(actOf).map(({ by, details, ...act }) => ({
    ...act,
    by: by?.name ?? null,
    byId: by?.id ?? null,
    details: JSON.stringify(details),
  }));
  const columns = ['at', 'act', 'by', 'byId', 'thing', 'thingId', 'coachId', 'coachName', 'details'] as const;
  return csvTable(columns, lines);
}
