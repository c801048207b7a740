import { type Kysely, sql, type Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import type { Tables } from '../../../migrations/tables.ts';
import { type PageAsked, pageById } from '../../paging.ts';
import { notFound, ProblemError } from '../../problems.ts';
import type { Colleague, Invited, PersonBody, PersonPatch } from '../../schemas/access.ts';
import type { Person } from '../../schemas/session.ts';
import type { AccountInScope, Scope } from '../scopes/scope.ts';
import { endSessions } from '../signIn/sessions.ts';
import { holdPerson, newInvitation } from './invitations.ts';
import { updatePerson } from './updatePerson.ts';

/** The caller as the API shows a person. */
export async function findPerson(db: Kysely<Tables>, caller: Scope): Promise<Person> {
  const { id, accountId, email, name, role } = await findColleague(db, caller.accountId, caller.personId);
  return { id, accountId, email, name, role };
}

export async function findColleague(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<Colleague> {
  const row = await colleagues(db, accountId)
    .where('id', '=', id)
    .executeTakeFirstOrThrow(() => notFound('person'));
  return colleagueOf(row);
}

/** In the order in which they were invited. */
export function listColleagues(db: Kysely<Tables>, accountId: AccountInScope, asked: PageAsked) {
  return pageById(colleagues(db, accountId), { list: 'people', ...asked }, colleagueOf);
}

/** Adds a person without a password: the invitation sets it. */
export async function invitePerson(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  body: PersonBody,
): Promise<Invited> {
  const added = await trx
    .insertInto('people')
    .values({ account_id: accountId, id: newId(), ...body, password_hash: null })
    .onConflict((conflict) => conflict.columns(['account_id', 'email']).doNothing())
    .returning('id')
    .executeTakeFirstOrThrow(() => addressTaken());
  const invitation = await newInvitation(trx, accountId, { personId: added.id });
  return { person: await findColleague(trx, accountId, added.id), invitation };
}

/**
 * Another invitation, for one that was lost or ran out. Not for those who have joined: whoever holds it would see what
 * others granted to that person.
 */
export async function inviteAgain(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<Invited> {
  await holdPerson(trx, accountId, id);
  const person = await findColleague(trx, accountId, id);
  if (person.joined) throw new ProblemError('conflict', 'This person has joined already.');
  return { person, invitation: await newInvitation(trx, accountId, { personId: id }) };
}

export async function changeColleague(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
  change: PersonPatch,
): Promise<Colleague> {
  await holdDealers(trx, accountId);
  const before = await findColleague(trx, accountId, id);
  await updatePerson(trx, { accountId, personId: id }, change);
  if (before.role === 'dealer') await refuseToLoseLastDealer(trx, accountId);
  return findColleague(trx, accountId, id);
}

/** Its sessions end at once, and so does what others granted it. */
export async function removeColleague(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<void> {
  await holdDealers(trx, accountId);
  const person = await findColleague(trx, accountId, id);
  // Grants lie with the accounts of their coaches, where no key refers to people of others.
  await sql`select end_visits_of(${id})`.execute(trx);
  await trx.deleteFrom('people').where('account_id', '=', accountId).where('id', '=', id).execute();
  if (person.role === 'dealer') await refuseToLoseLastDealer(trx, accountId);
}

/** Signs the person out on every device, which was lost perhaps; it may sign in again. */
export async function signOutColleague(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<void> {
  const person = await findColleague(trx, accountId, id);
  await endSessions(trx, { accountId, personId: person.id });
}

/** Two dealers who remove each other at once take turns. */
async function holdDealers(trx: Transaction<Tables>, accountId: AccountInScope): Promise<void> {
  await trx.selectFrom('accounts').select('id').where('id', '=', accountId).forUpdate().execute();
}

async function refuseToLoseLastDealer(trx: Transaction<Tables>, accountId: AccountInScope): Promise<void> {
  const dealer = await colleagues(trx, accountId)
    .where('role', '=', 'dealer')
    .where('password_hash', 'is not', null)
    .limit(1)
    .executeTakeFirst();
  if (dealer === undefined)
    throw new ProblemError('conflict', 'An account keeps at least one dealer who can sign in.');
}

function addressTaken(): ProblemError {
  return new ProblemError('conflict', 'A person of your account has this address already.');
}

function colleagues(db: Kysely<Tables>, accountId: AccountInScope) {
  return db
    .selectFrom('people')
    .select(['id', 'account_id', 'email', 'name', 'role', 'created_at'])
    .select(sql<boolean>`password_hash is not null`.as('joined'))
    .where('account_id', '=', accountId);
}

type Row = Awaited<ReturnType<ReturnType<typeof colleagues>['executeTakeFirstOrThrow']>>;

function colleagueOf({ account_id, created_at, ...row }: Row): Colleague {
  return { ...row, accountId: account_id, createdAt: created_at.toISOString() };
}
