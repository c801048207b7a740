import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { type Kysely, sql, type Transaction } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { notFound } from '../../problems.ts';
import type { Person } from '../../schemas/session.ts';
import { hashPassword } from '../passwords/passwords.ts';
import type { LetIn } from '../signIn/sessions.ts';
import type { NewPerson } from './addPerson.ts';
import { createAccount, hasAccounts } from './createAccount.ts';

/** Held while the first account is made, so that it is made once. Any number that nothing else here locks. */
const FIRST_ACCOUNT_LOCK = 0x66_69_72_73_74;

/** The secret of the one-time set-up link. It lives as long as the process: each start prints a new one. */
export function newSetUpToken(): string {
  return randomBytes(24).toString('base64url');
}

/** Whether the link's secret is right; compared in the same time however much of it is. */
function isSetUpToken(expected: string | null, sent: string): boolean {
  if (expected === null) return false;
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(expected), digest(sent));
}

/** Makes what an empty installation begins with, in one transaction; null where there is an account already. */
export function beginInstallation<Made>(
  db: Kysely<Tables>,
  make: (trx: Transaction<Tables>) => Promise<Made>,
): Promise<Made | null> {
  return db.transaction().execute(async (trx) => {
    // Another start may be filling a whole demo meanwhile: that is waited for, however slow the machine.
    await sql`set local lock_timeout = 0`.execute(trx);
    await sql`set local statement_timeout = 0`.execute(trx);
    await sql`select pg_advisory_xact_lock(${FIRST_ACCOUNT_LOCK})`.execute(trx);
    return (await hasAccounts(trx)) ? null : make(trx);
  });
}

/** Makes the first account of an empty installation; null where there is one already. */
export function createFirstAccount(
  database: Database,
  wanted: Pick<NewPerson, 'email' | 'name' | 'password'>,
): Promise<Person | null> {
  const { db } = inScope(database, { spanning: 'first-account' });
  return beginInstallation(db, (trx) => createAccount(trx, wanted));
}

/** The same by the set-up link: once, and only while there is nobody. */
export async function setUp(
  database: Database,
  expectedToken: string | null,
  sent: { token: string; email: string; password: string; name: string },
): Promise<LetIn> {
  if (!isSetUpToken(expectedToken, sent.token)) throw notFound('set-up link');
  const { email, name } = sent;
  const hash = await hashPassword(sent.password);
  const person = await createFirstAccount(database, { email, name, password: { hash } });
  if (person === null) throw notFound('set-up link');
  return { person, passwordHash: hash };
}
