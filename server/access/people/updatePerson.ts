import type { Kysely, Updateable } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';

/** Changes what is kept of one person. Columns that are undefined stay as they are; an update of none would be no SQL. */
export async function updatePerson(
  db: Kysely<Tables>,
  { accountId, personId }: { readonly accountId: string; readonly personId: string },
  change: Updateable<Tables['people']>,
): Promise<void> {
  if (Object.values(change).every((value) => value === undefined)) return;
  await db
    .updateTable('people')
    .set(change)
    .where('account_id', '=', accountId)
    .where('id', '=', personId)
    .execute();
}
