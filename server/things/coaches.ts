import type { Kysely, Selectable, Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import type { CoachTable, Tables } from '../../migrations/tables.ts';
import { type AccountInScope, type Scope, visitsOf } from '../access/scope.ts';
import { notFound } from '../problems.ts';
import type { Coach, CoachBody } from '../schemas/coach.ts';
import { oneMoreThan, type Page, pageFrom } from './page.ts';

export type CoachRow = Selectable<CoachTable>;

export function coachOf(row: CoachRow): Coach {
  return {
    id: row.id,
    name: row.name,
    model: row.model,
    year: row.year,
    notes: row.notes,
    createdAt: row.created_at.toISOString(),
    updatedAt: row.updated_at.toISOString(),
  };
}

export async function createCoach(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  body: CoachBody,
): Promise<Coach> {
  const row = await trx
    .insertInto('coaches')
    .values({ account_id: accountId, id: newId(), ...body })
    .returningAll()
    .executeTakeFirstOrThrow();
  return coachOf(row);
}

export async function findCoach(db: Kysely<Tables>, accountId: AccountInScope, id: string): Promise<Coach> {
  const row = await db
    .selectFrom('coaches')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .executeTakeFirst();
  if (row === undefined) throw notFound('coach');
  return coachOf(row);
}

/** Those of the account and those that are visited, in the order in which they were created, which their ids follow. */
export async function listCoaches(
  db: Kysely<Tables>,
  person: Scope,
  page: { limit: number; afterId: string | null },
): Promise<Page<CoachRow>> {
  let query = db
    .selectFrom('coaches')
    .selectAll()
    .where(({ eb, or }) =>
      or([
        eb('account_id', '=', person.accountId),
        ...visitsOf(person).map((visit) =>
          eb('account_id', '=', visit.accountId).and('id', '=', visit.coachId),
        ),
      ]),
    );
  if (page.afterId !== null) query = query.where('id', '>', page.afterId);
  return pageFrom(await query.orderBy('id').limit(oneMoreThan(page.limit)).execute(), page.limit);
}

export async function changeCoach(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  id: string,
  change: Partial<CoachBody>,
): Promise<Coach> {
  const row = await db
    .updateTable('coaches')
    .set({ ...change, updated_at: new Date() })
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirst();
  if (row === undefined) throw notFound('coach');
  return coachOf(row);
}

/** With its rooms, loggers and all that was recorded of them. */
export async function removeCoach(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<void> {
  const { numDeletedRows } = await trx
    .deleteFrom('coaches')
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
  if (numDeletedRows === 0n) throw notFound('coach');
}

/** Throws the 404 problem unless the account has this coach; until the transaction ends nobody removes it. */
export async function holdCoach(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<void> {
  const row = await trx
    .selectFrom('coaches')
    .select('id')
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .forKeyShare()
    .executeTakeFirst();
  if (row === undefined) throw notFound('coach');
}
