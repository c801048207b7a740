import type { Kysely } from 'kysely';
import { v7 as newId } from 'uuid';
import type { Tables } from '../../../migrations/tables.ts';
import type { Person, Role } from '../../schemas/session.ts';
import { hashPasswordAtOnce } from '../passwords/passwords.ts';

export interface NewPerson {
  readonly name: string;
  readonly email: string;
  /** The password, or its hash where that was made before. */
  readonly password: string | { readonly hash: string };
  readonly role: Role;
}

/** Adds a person to an account. The address is free only once: the second is a conflict. */
export async function addPerson(
  db: Kysely<Tables>,
  accountId: string,
  { name, email, password, role }: NewPerson,
): Promise<Person> {
  const person: Person = { id: newId(), accountId, email: email.toLowerCase(), name, role };
  await db
    .insertInto('people')
    .values({
      account_id: accountId,
      id: person.id,
      email: person.email,
      name,
      role,
      password_hash: typeof password === 'string' ? await hashPasswordAtOnce(password) : password.hash,
    })
    .execute();
  await db
    .insertInto('directory')
    .values({ email: person.email, account_id: accountId, person_id: person.id })
    .execute();
  return person;
}
