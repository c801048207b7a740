import type { Kysely, Selectable, Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import { markRoomDirty } from '../../ingest/roomProgress.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { ServiceTable } from '../../migrations/thingTables.ts';
import type { PersonCaller } from '../access/scopes/caller.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { type PageAsked, pageByTime } from '../paging.ts';
import { invalidField, notFound, ProblemError } from '../problems.ts';
import type { Service, ServiceBody, ServiceSeen } from '../schemas/service.ts';
import { holdRoom, type RoomRow } from './rooms.ts';

type ServiceRow = Selectable<ServiceTable>;

export function serviceOf(row: ServiceRow): Service {
  return {
    id: row.id,
    roomId: row.room_id,
    // Only kinds of the schema are ever written.
    kind: row.kind as Service['kind'],
    at: row.at.toISOString(),
    side: row.side,
    notes: row.notes,
    createdAt: row.created_at.toISOString(),
    updatedAt: row.updated_at.toISOString(),
  };
}

function serviceSeen(caller: PersonCaller, row: ServiceRow): ServiceSeen {
  return { ...serviceOf(row), mayChange: mayChange(caller, row) };
}

export async function createService(
  trx: Transaction<Tables>,
  caller: PersonCaller,
  roomId: string,
  body: ServiceBody,
): Promise<ServiceSeen> {
  checkSide(await holdRoom(trx, caller.accountId, roomId), body.side);
  await markRoomDirty(trx, caller.accountId, roomId, new Date(body.at));
  const row = await trx
    .insertInto('services')
    .values({
      account_id: caller.accountId,
      id: newId(),
      room_id: roomId,
      recorded_by: caller.personId,
      ...body,
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  return serviceSeen(caller, row);
}

export async function findService(
  db: Kysely<Tables>,
  caller: PersonCaller,
  id: string,
): Promise<ServiceSeen> {
  return serviceSeen(caller, await rowOf(db, caller.accountId, id).executeTakeFirstOrThrow(noSuchService));
}

/** Newest work first. */
export function listServices(db: Kysely<Tables>, caller: PersonCaller, roomId: string, asked: PageAsked) {
  const query = db
    .selectFrom('services')
    .selectAll()
    .where('account_id', '=', caller.accountId)
    .where('room_id', '=', roomId);
  return pageByTime(query, 'at', { list: `services/${roomId}`, ...asked }, (row) => serviceSeen(caller, row));
}

export async function changeService(
  trx: Transaction<Tables>,
  caller: PersonCaller,
  id: string,
  change: Partial<ServiceBody>,
): Promise<ServiceSeen> {
  const { before, room } = await holdRow(trx, caller.accountId, id);
  refuseOthersWork(caller, before);
  checkSide(room, change.side);
  const at = change.at === undefined ? before.at : new Date(change.at);
  const earlier = new Date(Math.min(at.getTime(), before.at.getTime()));
  await markRoomDirty(trx, caller.accountId, before.room_id, earlier);
  const row = await trx
    .updateTable('services')
    .set({ ...change, updated_at: new Date() })
    .where('account_id', '=', caller.accountId)
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow(noSuchService);
  return serviceSeen(caller, row);
}

export async function removeService(
  trx: Transaction<Tables>,
  caller: PersonCaller,
  id: string,
): Promise<void> {
  const { before } = await holdRow(trx, caller.accountId, id);
  refuseOthersWork(caller, before);
  await markRoomDirty(trx, caller.accountId, before.room_id, before.at);
  await trx.deleteFrom('services').where('account_id', '=', caller.accountId).where('id', '=', id).execute();
}

/** For whoever changes it: its time, from which the room is marked, is nobody else's to change meanwhile. */
async function holdRow(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<{ readonly before: ServiceRow; readonly room: RoomRow }> {
  const { room_id } = await rowOf(trx, accountId, id).executeTakeFirstOrThrow(noSuchService);
  // A service stays in its room.
  const room = await holdRoom(trx, accountId, room_id);
  return { before: await rowOf(trx, accountId, id).forUpdate().executeTakeFirstOrThrow(noSuchService), room };
}

const noSuchService = () => notFound('service');

function rowOf(db: Kysely<Tables>, accountId: AccountInScope, id: string) {
  return db.selectFrom('services').selectAll().where('account_id', '=', accountId).where('id', '=', id);
}

/** Owners change what they recorded themselves, and nothing else. */
function mayChange(caller: PersonCaller, service: ServiceRow): boolean {
  return caller.role !== 'owner' || service.recorded_by === caller.personId;
}

function refuseOthersWork(caller: PersonCaller, service: ServiceRow): void {
  if (!mayChange(caller, service))
    throw new ProblemError('not-allowed', 'An owner changes only services that it recorded itself.');
}

function checkSide({ sides }: RoomRow, side: string | null | undefined): void {
  if (side !== undefined && side !== null && !sides.includes(side))
    throw invalidField('/side', `The room's sides are: ${sides.join(', ')}.`);
}
