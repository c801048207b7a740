import type { Kysely } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { notFound } from '../../problems.ts';
import type { Settings, SettingsPatch } from '../../schemas/settings.ts';
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
  // Fields that are not named stay out, and an update of no columns is none.
  const change = { units, time_zone: timeZone, locale };
  if (Object.values(change).some((value) => value !== undefined))
    await db
      .updateTable('people')
      .set(change)
      .where('account_id', '=', person.accountId)
      .where('id', '=', person.personId)
      .execute();
  return readSettings(db, person);
}
