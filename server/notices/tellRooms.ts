import type { FastifyBaseLogger } from 'fastify';
import { type Kysely, type Selectable, sql, type Transaction } from 'kysely';
import type { ToldWarningTable } from '../../migrations/noticeTables.ts';
import type { Tables } from '../../migrations/tables.ts';
import { inTransaction, isGivenUp } from '../database/inTransaction.ts';
import { compareTold, type Standing, type Told } from './compareTold.ts';
import { enqueueMails, enqueueWebhooks } from './enqueue.ts';
import { SETTLE_S } from './markRooms.ts';
import { type StandingRow, type TellableRoom, warningNotice } from './warningNotice.ts';

/** A room that is gone through again and again is looked at after so long all the same. */
const LONGEST_SETTLE_MS = 15 * 60_000;
/** What a stroke said longer ago is history: noted as told, and told to nobody. */
const HISTORY_AFTER_MS = 7 * 86_400_000;
/** One that cannot be told, for a fault of ours, holds up no other. */
const LEFT_FOR_MS = 10 * 60_000;

interface DueRoom extends TellableRoom {
  readonly marked_at: Date;
  readonly busy: boolean;
  readonly deleted: boolean;
}

/** Looks at every marked room that is due, and writes what is to be told of it. One that cannot be told is left for later. */
export async function tellRooms(
  db: Kysely<Tables>,
  log: Pick<FastifyBaseLogger, 'error'>,
  now: Date,
): Promise<void> {
  for (let more = true; more; ) {
    try {
      more = await inTransaction(db, (trx) => tellNext(trx, now));
    } catch (error) {
      if (!(error instanceof RoomNotTold)) throw error;
      log.error({ err: error.cause, roomId: error.room.room_id }, 'A room could not be told of.');
      await lookAgain(db, error.room, new Date(now.getTime() + LEFT_FOR_MS));
    }
  }
}

class RoomNotTold extends Error {
  readonly room: DueRoom;

  constructor(room: DueRoom, cause: unknown) {
    super('A room could not be told of.', { cause });
    this.name = 'RoomNotTold';
    this.room = room;
  }
}

/** Answers whether there was one. Any number of processes may look: each room is held by one until it is told. */
async function tellNext(trx: Transaction<Tables>, now: Date): Promise<boolean> {
  const { rows } = await sql<DueRoom>`
    select r.account_id, r.room_id, r.marked_at, m.name as room, c.id as coach_id, c.name as coach,
      c.deleted_at is not null as deleted,
      exists (
        select from room_progress p
        where p.account_id = r.account_id and p.room_id = r.room_id and p.dirty_from is not null
      ) as busy
    from rooms_to_tell r
    join rooms m on m.account_id = r.account_id and m.id = r.room_id
    join coaches c on c.account_id = m.account_id and c.id = m.coach_id
    where r.due_at <= ${now.toISOString()}::timestamptz
    order by r.due_at limit 1 for update of r skip locked
  `.execute(trx);
  const [room] = rows;
  if (room === undefined) return false;
  if (room.busy && now.getTime() - room.marked_at.getTime() < LONGEST_SETTLE_MS)
    await lookAgain(trx, room, new Date(now.getTime() + SETTLE_S * 1000));
  else
    await tellRoom(trx, room, now).catch((error: unknown) => {
      // What Postgres gave up for another's sake is done again at once.
      throw isGivenUp(error) ? error : new RoomNotTold(room, error);
    });
  return true;
}

async function tellRoom(trx: Transaction<Tables>, room: DueRoom, now: Date): Promise<void> {
  const [warnings, toldBefore] = await Promise.all([standingOf(trx, room), toldOf(trx, room)]);
  const { told, news, lookAgainAt } = compareTold(warnings.map(standing), toldBefore, now);
  await writeTold(trx, room, told);
  for (const one of news) {
    const row = warnings.find(({ id }) => id === one.standing?.warningId);
    if (room.deleted || (row !== undefined && isHistory(row, now))) continue;
    const notice = warningNotice(room, one, row, now);
    const key = `warning ${one.told.warningId} ${one.number}`;
    await enqueueMails(trx, key, notice, now);
    await enqueueWebhooks(trx, key, notice, now);
  }
  await lookAgain(trx, room, lookAgainAt);
}

async function lookAgain(db: Kysely<Tables>, room: DueRoom, at: Date | null): Promise<void> {
  await (at === null
    ? sql`delete from rooms_to_tell where account_id = ${room.account_id} and room_id = ${room.room_id}`
    : sql`update rooms_to_tell set due_at = ${at.toISOString()}::timestamptz
        where account_id = ${room.account_id} and room_id = ${room.room_id}`
  ).execute(db);
}

async function standingOf(trx: Transaction<Tables>, room: DueRoom): Promise<StandingRow[]> {
  const { rows } = await sql<StandingRow>`
    select w.*, s.placed_at as latest_at
    from warnings w
    left join strokes s on s.account_id = w.account_id and s.id = w.latest_stroke_id
    where w.account_id = ${room.account_id} and w.room_id = ${room.room_id}
    order by w.opened_at, w.id
  `.execute(trx);
  return rows;
}

function isHistory({ latest_at, opened_at, cleared_at }: StandingRow, now: Date): boolean {
  const said = cleared_at ?? latest_at ?? opened_at;
  return now.getTime() - said.getTime() > HISTORY_AFTER_MS;
}

function standing(row: StandingRow): Standing {
  const { id: warningId, kind, severity, side, direction, opened_at: openedAt, cleared_at: clearedAt } = row;
  return { warningId, kind, severity, side, direction, openedAt, clearedAt };
}

async function toldOf(trx: Transaction<Tables>, room: DueRoom): Promise<Told[]> {
  const rows = await trx
    .selectFrom('told_warnings')
    .selectAll()
    .where('account_id', '=', room.account_id)
    .where('room_id', '=', room.room_id)
    .orderBy('opened_at')
    .orderBy('warning_id')
    .execute();
  return rows.map(toldFrom);
}

function toldFrom(row: Selectable<ToldWarningTable>): Told {
  const { kind, severity, side, direction, open, revision } = row;
  const times = { openedAt: row.opened_at, clearedAt: row.cleared_at, missingSince: row.missing_since };
  return { warningId: row.warning_id, kind, severity, side, direction, open, revision, ...times };
}

/** All of the room's anew: they are few, and an id may have changed. */
async function writeTold(trx: Transaction<Tables>, room: DueRoom, told: readonly Told[]): Promise<void> {
  const { account_id, room_id } = room;
  await trx
    .deleteFrom('told_warnings')
    .where('account_id', '=', account_id)
    .where('room_id', '=', room_id)
    .execute();
  if (told.length === 0) return;
  await trx
    .insertInto('told_warnings')
    .values(
      told.map(({ warningId, kind, severity, side, direction, open, revision, ...times }) => ({
        account_id,
        room_id,
        warning_id: warningId,
        kind,
        severity,
        side,
        direction,
        open,
        revision,
        opened_at: times.openedAt,
        cleared_at: times.clearedAt,
        missing_since: times.missingSince,
      })),
    )
    .execute();
}
