import { type Kysely, type RawBuilder, sql } from 'kysely';
import { isUuid } from '../../../ingest/uuid.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import type { RowScope } from '../../database/rowScope.ts';
import { notFound } from '../../problems.ts';
import type { Role } from '../../schemas/session.ts';

declare const scoped: unique symbol;

/**
 * The account whose rows a caller may reach. Queries of things and results take nothing else, and only this folder
 * makes one: no route can ask for rows before it is known whose they are and in which role they are seen.
 */
export type AccountInScope = string & { readonly [scoped]: true };

/** A person as it stands to what its request is about. */
export interface Scope {
  readonly kind: 'person';
  /** Where the rows live: the person's own account, or that of the coach which a grant lets it see. */
  readonly accountId: AccountInScope;
  readonly personId: string;
  /** There: its own, or the granted one. */
  readonly role: Role;
  /** Set where a token that the person gave to a script speaks for it. */
  readonly script?: { readonly mayChange: boolean };
  /** Set where a grant let it in, to this one coach. */
  readonly visit?: { readonly coachId: string; readonly homeAccountId: string };
  /** Every coach that a grant shows it; known where a request is about no single thing. */
  readonly visits?: readonly Visit[];
}

/** A coach of another account that a grant shows. */
interface Visit {
  readonly accountId: AccountInScope;
  readonly coachId: string;
  readonly role: Role;
}

/** Things that a route's address may name, and what they are called. */
export const SUBJECTS = {
  coaches: 'coach',
  rooms: 'room',
  loggers: 'logger',
  strokes: 'stroke',
  services: 'service',
  warnings: 'warning',
} as const;
export type SubjectTable = keyof typeof SUBJECTS;

/** For ids that come from the caller's own row in the database, or from an account that was just made. */
export function accountInScope(accountId: string): AccountInScope {
  // The brand exists for the compiler alone.
  return accountId as AccountInScope;
}

/** The rows that Postgres gives to a person: its own account, and the coaches that it visits. */
export function rowsOf({ accountId, visit, visits = [] }: Scope): RowScope {
  if (visit === undefined) return { accounts: [accountId], visits };
  return { accounts: [visit.homeAccountId], visits: [{ accountId, coachId: visit.coachId }] };
}

/** The same for what the person changes: the record of who did what names it. */
export function actingIn(scope: Scope): RowScope {
  return { ...rowsOf(scope), person: scope.personId };
}

/**
 * The scope in which a person sees one thing: at home, or by a grant that has not ended. Throws the 404 problem for
 * everything else, whether it exists or not.
 */
export async function scopeOf(
  database: Database,
  person: Scope,
  table: SubjectTable,
  id: string,
): Promise<Scope> {
  if (!isUuid(id)) throw notFound(SUBJECTS[table]);
  const { db } = inScope(database, rowsOf(person));
  if (await isAtHome(db, person, table, id)) return person;
  const visitor = await withVisits(database, person);
  const visit = await visitTo(inScope(database, rowsOf(visitor)).db, visitsOf(visitor), table, id);
  if (visit === undefined) throw notFound(SUBJECTS[table]);
  const { accountId, coachId, role } = visit;
  const { personId, accountId: homeAccountId } = person;
  return { kind: 'person', accountId, personId, role, visit: { coachId, homeAccountId } };
}

/** The same person with every coach that it visits: for lists, which are about no single thing. */
export async function withVisits(database: Database, person: Scope): Promise<Scope> {
  // By the database's own clock: a grant ends with the request after its end. Of several grants to one coach the latest
  // counts: ids follow time.
  const { rows } = await sql<Visit>`
    select account_id as "accountId", coach_id as "coachId", role from visits_of(${person.personId})
    order by id desc
  `.execute(inScope(database, rowsOf(person)).db);
  const visits = new Map<string, Visit>();
  for (const visit of rows) if (!visits.has(visit.coachId)) visits.set(visit.coachId, visit);
  return { ...person, visits: [...visits.values()] };
}

/** The coaches that a person visits. Throws where they were not asked for: an empty list would hide them. */
export function visitsOf(person: Scope): readonly Visit[] {
  if (person.visits === undefined) throw new Error('The visits of this person were not read.');
  return person.visits;
}

/** Of a coach that was deleted nothing is there: its row and its rooms are out of sight, and what hangs on them. */
async function isAtHome(
  db: Kysely<Tables>,
  person: Scope,
  table: SubjectTable,
  id: string,
): Promise<boolean> {
  const { rows } = await sql`
    select from ${rowsNamed(table)} s
    where s.account_id = ${person.accountId} and s.id = ${id} and ${isOfCoachInSight(table)}
  `.execute(db);
  return rows.length > 0;
}

/** A warning is also named by an id that it stood under before. */
function rowsNamed(table: SubjectTable): RawBuilder<unknown> {
  if (table !== 'warnings') return sql.table(table);
  return sql`(
    select account_id, id, room_id from warnings union all select account_id, id, room_id from former_warnings
  )`;
}

function isOfCoachInSight(table: SubjectTable): RawBuilder<boolean> {
  switch (table) {
    case 'coaches':
    case 'rooms':
      return sql`true`;
    case 'loggers':
      return sql`exists (select from coaches c where c.account_id = s.account_id and c.id = s.coach_id)`;
    case 'strokes':
    case 'services':
    case 'warnings':
      return sql`exists (select from rooms r where r.account_id = s.account_id and r.id = s.room_id)`;
  }
}

/** The visit in whose coach the thing is. */
async function visitTo(
  db: Kysely<Tables>,
  visits: readonly Visit[],
  table: SubjectTable,
  id: string,
): Promise<Visit | undefined> {
  if (visits.length === 0) return undefined;
  const { rows } = await sql<{ coachId: string }>`
    select v.coach_id as "coachId"
    from unnest(
      ${visits.map((visit) => visit.accountId)}::uuid[], ${visits.map((visit) => visit.coachId)}::uuid[]
    ) as v (account_id, coach_id)
    where ${isOfVisitedCoach(table, id)}
  `.execute(db);
  return visits.find((visit) => visit.coachId === rows[0]?.coachId);
}

/** Whether the thing belongs to the coach of the visit `v`. */
function isOfVisitedCoach(table: SubjectTable, id: string): RawBuilder<boolean> {
  switch (table) {
    case 'coaches':
      return sql`v.coach_id = ${id}::uuid`;
    case 'rooms':
    case 'loggers':
      return sql`exists (
        select from ${sql.table(table)} s
        where s.account_id = v.account_id and s.id = ${id} and s.coach_id = v.coach_id
      )`;
    case 'strokes':
    case 'services':
    case 'warnings':
      return sql`exists (
        select from ${rowsNamed(table)} s join rooms r on r.account_id = s.account_id and r.id = s.room_id
        where s.account_id = v.account_id and s.id = ${id} and r.coach_id = v.coach_id
      )`;
  }
}
