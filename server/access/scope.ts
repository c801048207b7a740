import { type Kysely, type RawBuilder, type SelectQueryBuilder, sql } from 'kysely';
import { validate as isUuid } from 'uuid';
import type { Tables } from '../../migrations/tables.ts';
import { notFound } from '../problems.ts';
import type { Role } from '../schemas/session.ts';

declare const inScope: unique symbol;

/**
 * The account whose rows a caller may reach. Queries of things and results take nothing else, and only this folder
 * makes one: no route can ask for rows before it is known whose they are and in which role they are seen.
 */
export type AccountInScope = string & { readonly [inScope]: true };

/** A person as it stands to what its request is about. */
export interface Scope {
  readonly kind: 'person';
  /** Where the rows live: the person's own account, or that of the coach which a grant lets it see. */
  readonly accountId: AccountInScope;
  readonly personId: string;
  /** There: its own, or the granted one. */
  readonly role: Role;
  /** Set where a grant let it in, to this one coach. */
  readonly visit?: { readonly coachId: string; readonly homeAccountId: string };
  /** Every coach that a grant shows it; known where a request is about no single thing. */
  readonly visits?: readonly Visit[];
}

/** A coach of another account that a grant shows. */
export interface Visit {
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

/**
 * The scope in which a person sees one thing: at home, or by a grant that has not ended. Throws the 404 problem for
 * everything else, whether it exists or not.
 */
export async function scopeOf(
  db: Kysely<Tables>,
  person: Scope,
  table: SubjectTable,
  id: string,
): Promise<Scope> {
  if (!isUuid(id)) throw notFound(SUBJECTS[table]);
  if (await isAtHome(db, person, table, id)) return person;
  const grant = await grantTo(db, person, table, id);
  if (grant === undefined) throw notFound(SUBJECTS[table]);
  return {
    kind: 'person',
    accountId: accountInScope(grant.accountId),
    personId: person.personId,
    role: grant.role,
    visit: { coachId: grant.coachId, homeAccountId: person.accountId },
  };
}

/** The same person with every coach that it visits: for lists, which are about no single thing. */
export async function withVisits(db: Kysely<Tables>, person: Scope): Promise<Scope> {
  const found = await activeGrants(db, person).orderBy('g.role', 'desc').execute();
  const visits = new Map<string, Visit>();
  // A technician sees all that an owner sees: of several grants to one coach the first in this order counts.
  for (const { accountId, coachId, role } of found)
    if (!visits.has(coachId)) visits.set(coachId, { accountId: accountInScope(accountId), coachId, role });
  return { ...person, visits: [...visits.values()] };
}

/** The coaches that a person visits. Throws where they were not asked for: an empty list would hide them. */
export function visitsOf(person: Scope): readonly Visit[] {
  if (person.visits === undefined) throw new Error('The visits of this person were not read.');
  return person.visits;
}

async function isAtHome(
  db: Kysely<Tables>,
  person: Scope,
  table: SubjectTable,
  id: string,
): Promise<boolean> {
  const found = await db
    .selectFrom(table)
    .select('id')
    .where('account_id', '=', person.accountId)
    .where('id', '=', id)
    .executeTakeFirst();
  return found !== undefined;
}

function grantTo(db: Kysely<Tables>, person: Scope, table: SubjectTable, id: string) {
  return activeGrants(db, person)
    .where(isOfGrantedCoach(table, id))
    .orderBy('g.role', 'desc')
    .executeTakeFirst();
}

/** Whether the thing belongs to the coach of the grant `g`. */
function isOfGrantedCoach(table: SubjectTable, id: string): RawBuilder<boolean> {
  switch (table) {
    case 'coaches':
      return sql`g.coach_id = ${id}`;
    case 'rooms':
    case 'loggers':
      return sql`exists (
        select from ${sql.table(table)} s
        where s.account_id = g.account_id and s.id = ${id} and s.coach_id = g.coach_id
      )`;
    case 'strokes':
    case 'services':
    case 'warnings':
      return sql`exists (
        select from ${sql.table(table)} s join rooms r on r.account_id = s.account_id and r.id = s.room_id
        where s.account_id = g.account_id and s.id = ${id} and r.coach_id = g.coach_id
      )`;
  }
}

type ActiveGrants = SelectQueryBuilder<
  Tables & { g: Tables['grants'] },
  'g',
  { accountId: string; coachId: string; role: 'owner' | 'technician' }
>;

/** Asked for each request, by the database's own clock: a grant ends with the request after its end. */
function activeGrants(db: Kysely<Tables>, { personId }: Scope): ActiveGrants {
  return db
    .selectFrom('grants as g')
    .select(['g.account_id as accountId', 'g.coach_id as coachId', 'g.role'])
    .where('g.person_id', '=', personId)
    .where(sql<boolean>`(g.until is null or g.until > now())`);
}
