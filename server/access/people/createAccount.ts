import type { Kysely } from 'kysely';
import { v7 as newId } from 'uuid';
import type { Tables } from '../../../migrations/tables.ts';
import type { Person } from '../../schemas/session.ts';
import { type AccountInScope, accountInScope } from '../scopes/scope.ts';
import { addPerson, type NewPerson } from './addPerson.ts';

/** Its first person; the account bears that one's name unless it has a name of its own. */
interface NewAccount extends Omit<NewPerson, 'role'> {
  readonly role?: NewPerson['role'];
  readonly accountName?: string;
}

/** Makes an account and its first person, a dealer. The address is free only once: the second is a conflict. */
export async function createAccount(
  db: Kysely<Tables>,
  wanted: NewAccount,
): Promise<Person & { accountId: AccountInScope }> {
  const accountId = accountInScope(newId());
  await db
    .insertInto('accounts')
    .values({ id: accountId, name: wanted.accountName ?? wanted.name })
    .execute();
  const person = await addPerson(db, accountId, { ...wanted, role: wanted.role ?? 'dealer' });
  return { ...person, accountId };
}

export async function hasAccounts(db: Kysely<Tables>): Promise<boolean> {
  return (await db.selectFrom('accounts').select('id').limit(1).executeTakeFirst()) !== undefined;
}
