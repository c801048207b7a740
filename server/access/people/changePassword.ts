import { inTransaction } from '../../database/inTransaction.ts';
import { type Database, inScope } from '../../database/openDatabase.ts';
import { hashPassword } from '../passwords/passwords.ts';
import { actingIn, type Scope } from '../scopes/scope.ts';
import { endSessions } from '../signIn/sessions.ts';
import { signIn } from '../signIn/signIn.ts';
import type { Token } from '../tokens/tokens.ts';
import { findPerson } from './people.ts';
import { updatePerson } from './updatePerson.ts';

/**
 * Sets a new password for whoever knows the old one, and ends every session but the one it is done in. Wrong old
 * passwords count with those of signing in: a stolen session is no way round the limit.
 */
export async function changePassword(
  database: Database,
  person: Scope,
  current: Token | null,
  { oldPassword, newPassword }: { readonly oldPassword: string; readonly newPassword: string },
): Promise<void> {
  const { db } = inScope(database, actingIn(person));
  const { email } = await findPerson(db, person);
  await signIn(database, email, oldPassword);
  const password_hash = await hashPassword(newPassword);
  await inTransaction(db, async (trx) => {
    await updatePerson(trx, person, { password_hash });
    await endSessions(trx, person, current);
  });
}
