import type { Kysely, Selectable, Transaction } from 'kysely';
import { v7 as newId } from 'uuid';
import { BEGINNING, markRoomDirty, remeasureRoom } from '../../ingest/roomProgress.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { RoomTable } from '../../migrations/thingTables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { type PageAsked, pageById } from '../paging.ts';
import { notFound } from '../problems.ts';
import type { Room, RoomBody } from '../schemas/room.ts';
import { holdCoach } from './coaches.ts';
import { describeRoom } from './describeRoom.ts';
import { keepKeys } from './keepKeys.ts';
import { isSameName } from './peers.ts';
import { queueWithdrawal } from './queueWithdrawal.ts';
import { refuseToLoseSides } from './refuseToLoseSides.ts';

export type RoomRow = Selectable<RoomTable>;

export function roomOf(row: RoomRow): Room {
  return {
    id: row.id,
    coachId: row.coach_id,
    name: row.name,
    ...describeRoom(row),
    createdAt: row.created_at.toISOString(),
    updatedAt: row.updated_at.toISOString(),
  };
}

/** Fields that are not named stay out. */
export function columnsOf(fields: Partial<RoomBody>) {
  return {
    name: fields.name,
    drive: fields.drive,
    sides: fields.sides,
    travel_metres: fields.travelMetres,
    gear_teeth: fields.gearTeeth,
    rack_pitch_mm: fields.rackPitchMm,
    rated_amps: fields.ratedAmps,
    nominal_volts: fields.nominalVolts,
    positive_direction: fields.positiveDirection,
  };
}

export async function createRoom(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  coachId: string,
  body: RoomBody,
): Promise<Room> {
  await holdCoach(trx, accountId, coachId);
  const { name, drive, sides } = body;
  const row = await trx
    .insertInto('rooms')
    .values({ ...columnsOf(body), name, drive, sides, account_id: accountId, id: newId(), coach_id: coachId })
    .returningAll()
    .executeTakeFirstOrThrow();
  return roomOf(row);
}

/** A room of the account; to everyone else it does not exist. */
export async function findRoom(db: Kysely<Tables>, accountId: AccountInScope, id: string): Promise<RoomRow> {
  return rowOf(db, accountId, id).executeTakeFirstOrThrow(noSuchRoom);
}

/**
 * The same, kept from being removed until the transaction ends. Before anything else that hangs on the room is locked, its
 * progress too: whoever removes a room holds it first, so that neither waits for the other in a ring.
 */
export async function holdRoom(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<RoomRow> {
  return rowOf(trx, accountId, id).forKeyShare().executeTakeFirstOrThrow(noSuchRoom);
}

const noSuchRoom = () => notFound('room');

function rowOf(db: Kysely<Tables>, accountId: AccountInScope, id: string) {
  return db.selectFrom('rooms').selectAll().where('account_id', '=', accountId).where('id', '=', id);
}

/** In the order in which they were created. */
export function listRooms(db: Kysely<Tables>, accountId: AccountInScope, coachId: string, asked: PageAsked) {
  const query = db
    .selectFrom('rooms')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('coach_id', '=', coachId);
  return pageById(query, { list: `rooms/${coachId}`, ...asked }, roomOf);
}

/** What the measuring of each stroke depends on, and what only the judging does. */
const MEASURED_BY = ['drive', 'sides', 'travelMetres', 'positiveDirection', 'nominalVolts'] as const;
const JUDGED_BY = ['gearTeeth', 'rackPitchMm', 'ratedAmps'] as const;

/** Changes a room; what its results depend on makes them anew. */
export async function changeRoom(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
  change: Partial<RoomBody>,
): Promise<Room> {
  // What it changes from is nobody else's to change meanwhile: else what hangs on it would stay as it is.
  const before = roomOf(await rowOf(trx, accountId, id).forNoKeyUpdate().executeTakeFirstOrThrow(noSuchRoom));
  const { sides } = change;
  if (sides !== undefined && before.sides.some((side) => !sides.includes(side)))
    await refuseToLoseSides(trx, accountId, id, sides);
  const differs = (field: keyof RoomBody) =>
    change[field] !== undefined && JSON.stringify(change[field]) !== JSON.stringify(before[field]);
  // By its name a room finds its like in other coaches of the model.
  const isRenamed = change.name !== undefined && !isSameName(change.name, before.name);
  if (MEASURED_BY.some(differs)) await remeasureRoom(trx, accountId, id);
  else if (JUDGED_BY.some(differs) || isRenamed) await markRoomDirty(trx, accountId, id, BEGINNING);
  const row = await trx
    .updateTable('rooms')
    .set({ ...columnsOf(change), updated_at: new Date() })
    .where('account_id', '=', accountId)
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow();
  return roomOf(row);
}

/** With its strokes, services and warnings; the keys of its strokes stay known. */
export async function removeRoom(
  trx: Transaction<Tables>,
  accountId: AccountInScope,
  id: string,
): Promise<void> {
  await queueWithdrawal(trx, accountId, [id]);
  // Whoever stores a stroke there, or moves one to it, is done or waits: no stroke goes without its key.
  await rowOf(trx, accountId, id).forUpdate().executeTakeFirstOrThrow(noSuchRoom);
  await keepKeys(trx, accountId, { roomId: id });
  await trx.deleteFrom('rooms').where('account_id', '=', accountId).where('id', '=', id).execute();
}
