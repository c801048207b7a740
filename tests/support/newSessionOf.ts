import { beginSession } from '../../server/access/signIn/sessions.ts';
import type { Database } from '../../server/database/openDatabase.ts';
import type { Person } from '../../server/schemas/session.ts';

/** The token of a new session of the person, who need not be asked for the password. */
export async function newSessionOf({ pool, db }: Database, person: Person): Promise<string> {
  const { password_hash } = await db
    .selectFrom('people')
    .select('password_hash')
    .where('account_id', '=', person.accountId)
    .where('id', '=', person.id)
    .executeTakeFirstOrThrow();
  if (password_hash === null) throw new Error(`${person.email} has not joined.`);
  return (await beginSession({ pool, db }, { person, passwordHash: password_hash })).token;
}
