import type { Kysely } from 'kysely';
import { v7 as newId } from 'uuid';
import type { Tables } from '../../migrations/tables.ts';
import type { Person, Role } from '../schemas/session.ts';
import { hashPassword } from './passwords.ts';

export interface NewAccount {
  readonly name: string;
  readonly email: string;
  readonly password: string;
  readonly role?: Role;
}

/** Makes an account and its first person, a dealer. The address is free only once: the second is a conflict. */
export async function createAccount(db: Kysely<Tables>, wanted: NewAccount): Promise<Person> {
  const passwordHash = await hashPassword(wanted.password);
  const email = wanted.email.toLowerCase();
  const person: Person = {
    id: newId(),
    accountId: newId(),
    email,
    name: wanted.name,
    role: wanted.role ?? 'dealer',
  };
  const { accountId } = person;
  await db.insertInto('accounts').values({ id: accountId, name: wanted.name }).execute();
  await db
    .insertInto('people')
    .values({
      account_id: accountId,
      id: person.id,
      email,
      name: person.name,
      role: person.role,
      password_hash: passwordHash,
    })
    .execute();
  await db.insertInto('directory').values({ email, account_id: accountId, person_id: person.id }).execute();
  return person;
}

export async function hasAccounts(db: Kysely<Tables>): Promise<boolean> {
  return (await db.selectFrom('accounts').select('id').limit(1).executeTakeFirst()) !== undefined;
}
