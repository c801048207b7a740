import { type Kysely, sql, type Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import type { Tables } from '../../migrations/tables.ts';
import { newInvitation } from '../access/people/invitations.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { personAt } from '../access/signIn/signIn.ts';
import { takeTurn } from '../database/takeTurn.ts';
import { type PageAsked, pageById } from '../paging.ts';
import { invalidField, notFound } from '../problems.ts';
import type { Grant, GrantBody, NewGrant } from '../schemas/access.ts';
import { holdCoach } from './coaches.ts';

/**
 * Lets a person of another account see a coach; for an address that nobody has, by an invitation. What the address was
 * granted of the coach before ends: the latest role and date are what counts.
 */
export async function createGrant(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  coachId: string,
  { email, role, until }: GrantBody,
): Promise<NewGrant> {
  await holdCoach(trx, accountId, coachId);
  if (until != null && Date.parse(until) <= Date.now())
    throw invalidField('/until', 'Must be a time to come.');
  // Of two grants of a coach to one address at once the second sees the first, and replaces it.
  await takeTurn(trx, `grant ${coachId} ${email}`);
  const known = await personAt(trx, email);
  await refuseColleague(trx, accountId, email, known);
  const before = await standingGrants(trx, { accountId, coachId, email, personId: known });
  const id = newId();
  await trx
    .insertInto('grants')
    .values({
      account_id: accountId,
      id,
      coach_id: coachId,
      email,
      role,
      until,
      person_id: known,
    })
    .execute();
  await replace(trx, accountId, before, id);
  const grant = await findGrant(trx, accountId, id);
  if (known !== null) return grant;
  return { ...grant, invitation: await newInvitation(trx, accountId, { grantId: id }) };
}

export async function findGrant(db: Kysely<Tables>, accountId: AccountInScope, id: string): Promise<Grant> {
  const row = await grants(db, accountId)
    .where('g.id', '=', id)
    .executeTakeFirstOrThrow(() => notFound('grant'));
  return grantOf(row);
}

/** Of one coach, in the order in which they were given; those that ran out stay to be read. */
export function listGrants(db: Kysely<Tables>, accountId: AccountInScope, coachId: string, asked: PageAsked) {
  const query = grants(db, accountId).where('g.coach_id', '=', coachId);
  return pageById(query, { list: `grants/${coachId}`, ...asked }, grantOf);
}

/** Ends it at once; an invitation that was not accepted yet is worth nothing from then on. */
export async function removeGrant(db: Kysely<Tables>, accountId: AccountInScope, id: string): Promise<void> {
  await db
    .deleteFrom('grants')
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .returning('id')
    .executeTakeFirstOrThrow(() => notFound('grant'));
}

/**
 * People of the account see its coaches already; a grant must not give them another role. Who was invited and signs in
 * to another account with the address, as `known`, is none of them: that invitation cannot be taken up.
 */
async function refuseColleague(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  email: string,
  known: string | null,
): Promise<void> {
  const colleague = await db
    .selectFrom('people')
    .select('id')
    .where('account_id', '=', accountId)
    .where('email', '=', email)
    .executeTakeFirst();
  const isElsewhere = known !== null && known !== colleague?.id;
  if (colleague !== undefined && !isElsewhere)
    throw invalidField('/email', 'This person belongs to your account already.');
}

interface GrantedTo {
  readonly accountId: AccountInScope;
  readonly coachId: string;
  readonly email: string;
  /** Null: nobody signs in with the address. */
  readonly personId: string | null;
}

/** Those that have not run out. */
async function standingGrants(
  trx: Transaction<Tables>,
  { accountId, coachId, email, personId }: GrantedTo,
): Promise<string[]> {
  const rows = await trx
    .selectFrom('grants')
    .select('id')
    .where('account_id', '=', accountId)
    .where('coach_id', '=', coachId)
    .where(sql<boolean>`(until is null or until > now())`)
    .where((eb) => eb.or([eb('email', '=', email), eb('person_id', '=', personId)]))
    .execute();
  return rows.map(({ id }) => id);
}

/** A link that was handed out for a grant leads to the one that replaces it. */
async function replace(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  before: readonly string[],
  id: string,
): Promise<void> {
  if (before.length === 0) return;
  await trx
    .updateTable('invitations')
    .set({ grant_id: id })
    .where('account_id', '=', accountId)
    .where('grant_id', 'in', before)
    .execute();
  await trx.deleteFrom('grants').where('account_id', '=', accountId).where('id', 'in', before).execute();
}

function grants(db: Kysely<Tables>, accountId: AccountInScope) {
  return db
    .selectFrom('grants as g')
    .select(['g.id', 'g.coach_id', 'g.email', 'g.role', 'g.until', 'g.created_at'])
    .select(sql<string | null>`case when g.person_id is not null then name_of(g.person_id) end`.as('name'))
    .where('g.account_id', '=', accountId);
}

type Row = Awaited<ReturnType<ReturnType<typeof grants>['executeTakeFirstOrThrow']>>;

function grantOf({ coach_id, until, created_at, ...row }: Row): Grant {
  return {
    ...row,
    coachId: coach_id,
    until: until?.toISOString() ?? null,
    createdAt: created_at.toISOString(),
  };
}
