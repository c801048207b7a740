import type { Kysely } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { notFound } from '../problems.ts';
import type { Person } from '../schemas/session.ts';
import type { PersonCaller } from './caller.ts';

/** The caller as the API shows a person. */
export async function findPerson(db: Kysely<Tables>, caller: PersonCaller): Promise<Person> {
  const found = await db
    .selectFrom('people')
    .select(['id', 'account_id as accountId', 'email', 'name', 'role'])
    .where('account_id', '=', caller.accountId)
    .where('id', '=', caller.personId)
    .executeTakeFirst();
  if (found === undefined) throw notFound('person');
  return found;
}
