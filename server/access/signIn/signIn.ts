import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { takeTurn } from '../../database/takeTurn.ts';
import { ProblemError, wrongPassword } from '../../problems.ts';
import { inHashingTurn, isPassword } from '../passwords/passwords.ts';
import { oneAtATime } from './oneAtATime.ts';
import type { LetIn } from './sessions.ts';

const WRONG_PASSWORDS = 10;
export const FAILURES_COUNT_FOR_MS = 15 * 60_000;

/** One attempt per address holds one connection: any number of attempts on one person cannot exhaust the pool. */
const inTurn = oneAtATime();

/**
 * The person whose address and password these are. After ten wrong passwords for one address within 15 minutes every
 * attempt is refused until the first of the ten is 15 minutes old. An address that nobody has answers alike in words,
 * in time and in being counted, so that nothing tells who is known here.
 */
export async function signIn(database: Database, email: string, password: string): Promise<LetIn> {
  const { db } = inScope(database, { spanning: 'sign-in' });
  // A closed door costs whoever keeps knocking nobody's turn.
  const waitMs = await millisecondsToWait(db, email);
  if (waitMs > 0) throw tooManyAttempts(waitMs);
  // Its turn to hash comes before its connection: those that wait hold none.
  return inTurn(email, () => inHashingTurn(() => attempt(db, email, password)));
}

async function attempt(db: Kysely<Tables>, email: string, password: string): Promise<LetIn> {
  const outcome = await db.transaction().execute(async (trx) => {
    // Other processes take the same turn: without it, attempts sent at once would all see nine failures.
    await takeTurn(trx, email);
    const waitMs = await millisecondsToWait(trx, email);
    if (waitMs > 0) return { waitMs };
    const found = await findSignIn(trx, email);
    const passwordHash = found?.password_hash ?? null;
    const right = await isPassword(passwordHash, password);
    if (found !== undefined && passwordHash !== null && right) return { found, passwordHash };
    await trx.insertInto('sign_in_failures').values({ email }).execute();
    return {};
  });
  if (outcome.waitMs !== undefined) throw tooManyAttempts(outcome.waitMs);
  if (outcome.found === undefined) throw wrongPassword();
  const { id, account_id: accountId, name, role } = outcome.found;
  return { person: { id, accountId, email, name, role }, passwordHash: outcome.passwordHash };
}

/** Whoever signs in with this address, in whatever account. Undefined: nobody does. */
export function findSignIn(db: Kysely<Tables>, email: string) {
  return db
    .selectFrom('directory')
    .innerJoin('people', (join) =>
      join
        .onRef('people.account_id', '=', 'directory.account_id')
        .onRef('people.id', '=', 'directory.person_id'),
    )
    .select(['people.id', 'people.account_id', 'people.name', 'people.role', 'people.password_hash'])
    .where('directory.email', '=', email)
    .executeTakeFirst();
}

/** Whose address it is to sign in with, whatever the account; null: nobody's. All that others may be told of it. */
export async function personAt(db: Kysely<Tables>, email: string): Promise<string | null> {
  const { rows } = await sql<{ id: string | null }>`select person_at(${email}) as id`.execute(db);
  return rows[0]?.id ?? null;
}

/** How long until the tenth latest failure is old enough; 0 when there are fewer. */
async function millisecondsToWait(db: Kysely<Tables>, email: string): Promise<number> {
  const failures = await db
    .selectFrom('sign_in_failures')
    .select(sql<number>`extract(epoch from now() - failed_at) * 1000`.as('ageMs'))
    .where('email', '=', email)
    // Those of a future are from before a clock that was set back: they would close the door for as long.
    .where(
      sql<boolean>`failed_at between now() - make_interval(secs => ${FAILURES_COUNT_FOR_MS / 1000}) and now()`,
    )
    .orderBy('failed_at', 'desc')
    .limit(WRONG_PASSWORDS)
    .execute();
  const oldest = failures[WRONG_PASSWORDS - 1];
  return oldest === undefined ? 0 : Math.max(1, FAILURES_COUNT_FOR_MS - Number(oldest.ageMs));
}

function tooManyAttempts(waitMs: number): ProblemError {
  const seconds = Math.ceil(waitMs / 1000);
  return new ProblemError('too-many-attempts', `Try again in ${Math.ceil(seconds / 60)} minutes.`, {
    headers: { 'retry-after': String(seconds) },
  });
}
