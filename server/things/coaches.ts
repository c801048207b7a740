import { type Kysely, type Selectable, sql, type Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import { BEGINNING, markRoomsDirty } from '../../ingest/roomProgress.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { CoachTable } from '../../migrations/thingTables.ts';
import { type AccountInScope, type Scope, visitsOf } from '../access/scopes/scope.ts';
import { type PageAsked, pageById } from '../paging.ts';
import { notFound } from '../problems.ts';
import type { Coach, CoachBody } from '../schemas/coach.ts';
import { isSameName } from './peers.ts';
import { queueWithdrawal } from './queueWithdrawal.ts';

type CoachRow = Selectable<CoachTable>;

export function coachOf(row: CoachRow): Coach {
  return {
    id: row.id,
    name: row.name,
    model: row.model,
    year: row.year,
    notes: row.notes,
    createdAt: row.created_at.toISOString(),
    updatedAt: row.updated_at.toISOString(),
    ...(row.deleted_at === null ? {} : { deletedAt: row.deleted_at.toISOString() }),
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
  return coachOf(await rowOf(db, accountId, id).executeTakeFirstOrThrow(noSuchCoach));
}

const noSuchCoach = () => notFound('coach');

function rowOf(db: Kysely<Tables>, accountId: AccountInScope, id: string) {
  return db.selectFrom('coaches').selectAll().where('account_id', '=', accountId).where('id', '=', id);
}

/** Those of the account and those that are visited, in the order in which they were created. */
export function listCoaches(db: Kysely<Tables>, person: Scope, asked: PageAsked) {
  const query = db
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
  return pageById(query, { list: 'coaches', ...asked }, coachOf);
}

/** Changes a coach; as one of another model its rooms lend to and borrow from others. */
export async function changeCoach(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
  change: Partial<CoachBody>,
): Promise<Coach> {
  // Its model is nobody else's to change meanwhile: else rooms could go on with what they borrowed as those of another.
  const before = await rowOf(trx, accountId, id).forNoKeyUpdate().executeTakeFirstOrThrow(noSuchCoach);
  if (change.model !== undefined && !isSameName(change.model, before.model)) {
    const rooms = await roomsOf(trx, accountId, id);
    await markRoomsDirty(trx, accountId, rooms, BEGINNING);
    if (change.model === null) await queueWithdrawal(trx, accountId, rooms);
  }
  const row = await trx
    .updateTable('coaches')
    .set({ ...change, updated_at: new Date() })
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow();
  return coachOf(row);
}

export const DELETED_FOR_DAYS = 30;

/**
 * Puts a coach out of everybody's sight, with all that belongs to it: its rooms take no strokes any more. It can be
 * restored for `DELETED_FOR_DAYS`; then it is removed for good.
 */
export async function deleteCoach(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<void> {
  // Its rooms lend nothing any more.
  await queueWithdrawal(trx, accountId, await roomsOf(trx, accountId, id));
  await setDeleted(trx, accountId, id, true);
}

/** Takes the deletion back: everything is as it was. */
export async function restoreCoach(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<Coach> {
  await setDeleted(trx, accountId, id, false);
  await markRoomsDirty(trx, accountId, await roomsOf(trx, accountId, id), BEGINNING);
  return findCoach(trx, accountId, id);
}

async function setDeleted(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
  deleted: boolean,
): Promise<void> {
  const { rows } = await sql<{ done: boolean }>`
    select set_coach_deleted(${accountId}, ${id}, ${deleted}) as done
  `.execute(trx);
  if (rows[0]?.done !== true) throw notFound('coach');
}

/** Those that can still be restored, in the order in which they were created; for whoever is no dealer there are none. */
export function listDeletedCoaches(db: Kysely<Tables>, { accountId, role }: Scope, asked: PageAsked) {
  const query = db
    .selectFrom(sql<CoachRow>`deleted_coaches(${accountId})`.as('coach'))
    .selectAll()
    .$if(role !== 'dealer', (all) => all.where(sql<boolean>`false`));
  return pageById(query, { list: 'coaches/deleted', ...asked }, coachOf);
}

async function roomsOf(db: Kysely<Tables>, accountId: AccountInScope, coachId: string): Promise<string[]> {
  const rows = await db
    .selectFrom('rooms')
    .select('id')
    .where('account_id', '=', accountId)
    .where('coach_id', '=', coachId)
    .execute();
  return rows.map((row) => row.id);
}

/** Throws the 404 problem unless the account has this coach; until the transaction ends nobody removes it. */
export async function holdCoach(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<void> {
  await trx
    .selectFrom('coaches')
    .select('id')
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .forKeyShare()
    .executeTakeFirstOrThrow(noSuchCoach);
}
