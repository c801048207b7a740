import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { inTransaction } from '../../database/inTransaction.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { takeTurn } from '../../database/takeTurn.ts';
import type { Mailer } from '../../mail/mailer.ts';
import { notFound } from '../../problems.ts';
import type { Person } from '../../schemas/session.ts';
import { hashPassword } from '../passwords/passwords.ts';
import type { LetIn } from '../signIn/sessions.ts';
import { findSignIn } from '../signIn/signIn.ts';
import { newToken, readToken, type Token } from '../tokens/tokens.ts';
import { updatePerson } from './updatePerson.ts';

const RESET_MINUTES = 60;
/** Of one person within that time: a stranger must not fill a mailbox. */
const MOST_RESETS = 3;

/**
 * Mails a link by which a forgotten password is set anew, once, within an hour. For an address that nobody has it does
 * nothing: whoever asks is answered before this has begun, and learns neither by words nor by time.
 */
export async function mailPasswordReset(
  database: Database,
  mailer: Mailer,
  email: string,
  publicUrl: string,
): Promise<void> {
  const { db } = inScope(database, { spanning: 'sign-in' });
  const person = await findSignIn(db, email);
  if (person === undefined) return;
  const token = await newReset(db, person.account_id, person.id);
  if (token === null) return;
  await mailer.send({
    to: email,
    subject: 'Set a new password',
    text: [
      `Somebody, probably you, asked for a new password for ${email}. This link sets it. It works once, within an hour:`,
      `${publicUrl}/reset#${token}`,
      'If it was not you, do nothing: the password stays as it is.',
    ].join('\n\n'),
  });
}

/** Null where the person has been sent enough of them lately. */
function newReset(db: Kysely<Tables>, accountId: string, personId: string): Promise<string | null> {
  return inTransaction(db, async (trx) => {
    await takeTurn(trx, `reset ${personId}`);
    const { count } = await trx
      .selectFrom('password_resets')
      .select(({ fn }) => fn.countAll<string>().as('count'))
      .where('account_id', '=', accountId)
      .where('person_id', '=', personId)
      .where(sql<boolean>`expires_at > now()`)
      .executeTakeFirstOrThrow();
    if (Number(count) >= MOST_RESETS) return null;
    const { text, hash } = newToken('reset', accountId);
    await trx
      .insertInto('password_resets')
      .values({
        account_id: accountId,
        token_hash: hash,
        person_id: personId,
        expires_at: sql<Date>`now() + make_interval(mins => ${RESET_MINUTES})`,
      })
      .execute();
    return text;
  });
}

/**
 * Sets the password by the link of a message, once. Every session and every token for scripts of the person ends, and
 * so does the counting of wrong passwords: whoever guesses must not keep its owner out.
 */
export async function resetPassword(database: Database, sent: string, password: string): Promise<LetIn> {
  const token = readToken(sent);
  if (token?.kind !== 'reset') throw notFound('link');
  const { db } = inScope(database, { spanning: 'sign-in' });
  const found = await personOfReset(db, token);
  const password_hash = await hashPassword(password);
  return inTransaction(db, async (trx) => {
    // Of two at once the second waits here, and finds nothing.
    await trx
      .deleteFrom('password_resets')
      .where('account_id', '=', token.accountId)
      .where('token_hash', '=', token.hash)
      .where(sql<boolean>`expires_at > now()`)
      .returning('person_id')
      .executeTakeFirstOrThrow(() => notFound('link'));
    // First: no session begins from here on by the old password, and no token is made in one that has ended.
    await updatePerson(trx, { accountId: token.accountId, personId: found.id }, { password_hash });
    for (const table of ['password_resets', 'sessions', 'personal_tokens'] as const)
      await trx
        .deleteFrom(table)
        .where('account_id', '=', token.accountId)
        .where('person_id', '=', found.id)
        .execute();
    await trx.deleteFrom('sign_in_failures').where('email', '=', found.email).execute();
    return { person: found, passwordHash: password_hash };
  });
}

/** Throws the 404 problem where the link was used or has run out. */
export async function checkReset(database: Database, sent: string): Promise<void> {
  const token = readToken(sent);
  if (token?.kind !== 'reset') throw notFound('link');
  await personOfReset(inScope(database, { spanning: 'sign-in' }).db, token);
}

async function personOfReset(db: Kysely<Tables>, token: Token): Promise<Person> {
  return db
    .selectFrom('password_resets as r')
    .innerJoin('people as p', (join) =>
      join.onRef('p.account_id', '=', 'r.account_id').onRef('p.id', '=', 'r.person_id'),
    )
    .select(['p.id', 'p.account_id as accountId', 'p.email', 'p.name', 'p.role'])
    .where('r.account_id', '=', token.accountId)
    .where('r.token_hash', '=', token.hash)
    .where(sql<boolean>`r.expires_at > now()`)
    .executeTakeFirstOrThrow(() => notFound('link'));
}
