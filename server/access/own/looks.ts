import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { notFound } from '../../problems.ts';
import type { Look } from '../../schemas/settings.ts';
import type { Scope } from '../scopes/scope.ts';

/** Whoever comes back within this is still on the same visit. */
const VISIT_HOURS = 4;

/** When the person last looked over the coaches on a visit before the one that a look now belongs to. */
const LOOKED_BEFORE = sql<Date | null>`case when looked_at > now() - make_interval(hours => ${sql.lit(VISIT_HOURS)})
  then looked_before_at else looked_at end`;

/** When the person last looked over the coaches on an earlier visit; null if it never did. */
export async function lastLook(db: Kysely<Tables>, person: Scope): Promise<Look> {
  const row = await db
    .selectFrom('people')
    .select(LOOKED_BEFORE.as('at'))
    .where('account_id', '=', person.accountId)
    .where('id', '=', person.personId)
    .executeTakeFirst();
  return lookAt(row?.at);
}

/** The same, and notes that the person looks over them now. */
export async function noteLook(db: Kysely<Tables>, person: Scope): Promise<Look> {
  const row = await db
    .updateTable('people')
    .set({ looked_before_at: LOOKED_BEFORE, looked_at: sql`now()` })
    .where('account_id', '=', person.accountId)
    .where('id', '=', person.personId)
    .returning('looked_before_at')
    .executeTakeFirst();
  return lookAt(row?.looked_before_at);
}

/** Of a person's row; undefined without one. */
function lookAt(at: Date | null | undefined): Look {
  if (at === undefined) throw notFound('person');
  return { lastLookAt: at?.toISOString() ?? null };
}
