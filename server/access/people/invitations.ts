import { type Kysely, sql, type Transaction } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { inTransaction } from '../../database/inTransaction.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { notFound, ProblemError } from '../../problems.ts';
import type { Person } from '../../schemas/session.ts';
import { hashPassword } from '../passwords/passwords.ts';
import type { LetIn } from '../signIn/sessions.ts';
import { findSignIn, signIn } from '../signIn/signIn.ts';
import { newToken, readToken, type Token } from '../tokens/tokens.ts';
import { createAccount } from './createAccount.ts';

const INVITATION_DAYS = 7;
const DAY_MS = 86_400_000;

type Brings = { readonly personId: string } | { readonly grantId: string };
type InvitationRow = { readonly person_id: string | null; readonly grant_id: string | null };

/** A new invitation, whose earlier ones are worth nothing any more. Only its hash is kept. */
export async function newInvitation(
  trx: Transaction<Tables>,
  accountId: string,
  brings: Brings,
): Promise<string> {
  const person_id = 'personId' in brings ? brings.personId : null;
  const grant_id = 'grantId' in brings ? brings.grantId : null;
  if (person_id !== null) {
    // Of two invitations of one person at once the second ends the first.
    await holdPerson(trx, accountId, person_id);
    await trx
      .deleteFrom('invitations')
      .where('account_id', '=', accountId)
      .where('person_id', '=', person_id)
      .execute();
  }
  const { text, hash } = newToken('invitation', accountId);
  const expires_at = new Date(Date.now() + INVITATION_DAYS * DAY_MS);
  await trx
    .insertInto('invitations')
    .values({ account_id: accountId, token_hash: hash, person_id, grant_id, expires_at })
    .execute();
  return text;
}

/**
 * Accepts an invitation, once. A colleague gets the password. A person who was granted a coach gets an account of their own. If
 * the address has one by now, the password must be that account's: an invitation proves no address, and must neither open nor
 * take over what somebody else has.
 */
export async function acceptInvitation(database: Database, sent: string, password: string): Promise<LetIn> {
  const token = readToken(sent);
  if (token?.kind !== 'invitation') throw notFound('invitation');
  const { db } = inScope(database, { spanning: 'invitation' });
  const found = await invitationOf(db, token);
  if (found.grant_id === null) return joinAccount(db, token, found, password);
  const email = await emailOfGrant(db, token.accountId, found.grant_id);
  const known = (await findSignIn(db, email)) === undefined ? null : await knownAt(database, email, password);
  if (known !== null) return takeGrant(db, token, email, () => Promise.resolve(known));
  const hash = await hashPassword(password);
  return takeGrant(db, token, email, async (trx) => ({
    // Nobody told us a name yet; the address can be changed to one later.
    person: await createAccount(trx, { email, name: email, password: { hash } }),
    passwordHash: hash,
  }));
}

/** Whoever follows a second link chose a password behind the first, and nothing there says that it is asked for now. */
async function knownAt(database: Database, email: string, password: string): Promise<LetIn> {
  try {
    return await signIn(database, email, password);
  } catch (error) {
    if (!(error instanceof ProblemError) || error.problem !== 'wrong-password') throw error;
    const detail = 'Whoever this invitation is for has an account here already: send the password of that.';
    throw new ProblemError('wrong-password', detail, { headers: error.headers, cause: error });
  }
}

/** Throws the 404 problem where the invitation was used or has run out. */
export async function checkInvitation(database: Database, sent: string): Promise<void> {
  const token = readToken(sent);
  if (token?.kind !== 'invitation') throw notFound('invitation');
  await invitationOf(inScope(database, { spanning: 'invitation' }).db, token);
}

async function joinAccount(
  db: Kysely<Tables>,
  token: Token,
  { person_id }: InvitationRow,
  password: string,
): Promise<LetIn> {
  const password_hash = await hashPassword(password);
  return inTransaction(db, async (trx) => {
    // In the order of whoever invites again: neither waits for the other in a ring.
    await holdPerson(trx, token.accountId, person_id);
    await useUp(trx, token);
    const person = await trx
      .updateTable('people')
      .set({ password_hash })
      .where('account_id', '=', token.accountId)
      .where('id', '=', person_id)
      .returning(['id', 'account_id as accountId', 'email', 'name', 'role'])
      .executeTakeFirstOrThrow(() => notFound('invitation'));
    await enterDirectory(trx, person);
    return { person, passwordHash: password_hash };
  });
}

function takeGrant(
  db: Kysely<Tables>,
  token: Token,
  email: string,
  letInFor: (trx: Transaction<Tables>) => Promise<LetIn>,
): Promise<LetIn> {
  return inTransaction(db, async (trx) => {
    const { grant_id } = await useUp(trx, token);
    const { person, passwordHash } = await letInFor(trx);
    // All that this account granted to the address so far: it need not be asked for each coach by itself. What other
    // accounts granted stays theirs, as an invitation proves nothing of the address to them.
    await trx
      .updateTable('grants')
      .set({ person_id: person.id })
      .where('account_id', '=', token.accountId)
      .where(({ and, eb, or }) =>
        or([eb('id', '=', grant_id), and([eb('email', '=', email), eb('person_id', 'is', null)])]),
      )
      .execute();
    const { id, accountId, name, role } = person;
    return { person: { id, accountId, email, name, role }, passwordHash };
  });
}

/** Until the transaction ends nobody else invites or joins as this person. */
export async function holdPerson(
  trx: Transaction<Tables>,
  accountId: string,
  id: string | null,
): Promise<void> {
  await trx
    .selectFrom('people')
    .select('id')
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .forNoKeyUpdate()
    .execute();
}

async function invitationOf(db: Kysely<Tables>, token: Token): Promise<InvitationRow> {
  return db
    .selectFrom('invitations')
    .select(['person_id', 'grant_id'])
    .where('account_id', '=', token.accountId)
    .where('token_hash', '=', token.hash)
    .where(sql<boolean>`expires_at > now()`)
    .executeTakeFirstOrThrow(() => notFound('invitation'));
}

/** Of two acceptances at once the second waits here, and finds nothing. */
async function useUp(trx: Transaction<Tables>, token: Token): Promise<InvitationRow> {
  return trx
    .deleteFrom('invitations')
    .where('account_id', '=', token.accountId)
    .where('token_hash', '=', token.hash)
    .where(sql<boolean>`expires_at > now()`)
    .returning(['person_id', 'grant_id'])
    .executeTakeFirstOrThrow(() => notFound('invitation'));
}

async function emailOfGrant(db: Kysely<Tables>, accountId: string, grantId: string): Promise<string> {
  const grant = await db
    .selectFrom('grants')
    .select('email')
    .where('account_id', '=', accountId)
    .where('id', '=', grantId)
    .executeTakeFirstOrThrow(() => notFound('invitation'));
  return grant.email;
}

/** Makes the address one to sign in with: the first to accept has it. */
async function enterDirectory(trx: Transaction<Tables>, { accountId, id, email }: Person): Promise<void> {
  const entered = await trx
    .insertInto('directory')
    .values({ email, account_id: accountId, person_id: id })
    .onConflict((conflict) => conflict.column('email').doNothing())
    .returning('email')
    .executeTakeFirst();
  if (entered === undefined)
    throw new ProblemError(
      'conflict',
      'Whoever this invitation is for has an account here already, and one address signs in to one account: ask to be' +
        ' invited under another address, or to be granted the coaches.',
    );
}
