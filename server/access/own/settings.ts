import type { Kysely } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { notFound } from '../../problems.ts';
import type { Settings, SettingsPatch } from '../../schemas/settings.ts';
import { updatePerson } from '../people/updatePerson.ts';
import type { Scope } from '../scopes/scope.ts';

export async function readSettings(db: Kysely<Tables>, person: Scope): Promise<Settings> {
  const row = await db
    .selectFrom('people')
    .select(['units', 'time_zone', 'locale'])
    .where('account_id', '=', person.accountId)
    .where('id', '=', person.personId)
    .executeTakeFirstOrThrow(() => notFound('person'));
  return { units: row.units, timeZone: row.time_zone, locale: row.locale };
}

export async function changeSettings(
  db: Kysely<Tables>,
  person: Scope,
  { units, timeZone, locale }: SettingsPatch,
): Promise<Settings> {
  await updatePerson(db, person, { units, time_zone: timeZone, locale });
  return readSettings(db, person);
}
