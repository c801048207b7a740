import type { Transaction } from 'kysely';
import type { PoolClient } from 'pg';
import type { z } from 'zod';
import { decodeStroke } from '../../../ingest/json/stroke.ts';
import { markRoomDirty } from '../../../ingest/roomProgress.ts';
import { prepareStroke, storeStrokes } from '../../../ingest/storeStrokes.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { AccountInScope } from '../../access/scopes/scope.ts';
import { newToken } from '../../access/tokens/tokens.ts';
import { OperatorError } from '../../operatorError.ts';
import { columnsOf } from '../../things/rooms.ts';
import { readJson } from '../readJson.ts';
import { readAll, readTar } from '../readTar.ts';
import { EXPORTED, type ExportedStroke, ExportHead, kindOf } from './format.ts';

const LARGEST_FILE_BYTES = 1024 * 1024 * 1024;

export interface ImportedCounts {
  coaches: number;
  rooms: number;
  services: number;
  stored: number;
  /** Were there already. */
  duplicate: number;
  /** Loggers that are new here, each with its new token: the old ones are not exported. */
  loggers: { id: string; name: string; token: string }[];
}

/**
 * Takes an export into an account, all or nothing, with the ids that it had. What is there already stays as it is, so
 * the same export twice changes nothing the second time.
 */
export async function importExport(
  trx: Transaction<Tables>,
  client: PoolClient,
  accountId: AccountInScope,
  file: string,
): Promise<ImportedCounts> {
  const counts: ImportedCounts = { coaches: 0, rooms: 0, services: 0, stored: 0, duplicate: 0, loggers: [] };
  const into: Into = { trx, client, accountId, counts };
  let head: ExportHead | null = null;
  await readTar(file, async (name, bytes) => {
    if (name === 'export.json') head = await read(ExportHead, name, bytes);
    const kind = kindOf(name);
    if (kind === null) return;
    if (head === null) throw new OperatorError('It does not begin with export.json.');
    await take(into, kind, name, bytes);
  });
  if (head === null) throw new OperatorError('It is no export of this program: export.json is missing.');
  return counts;
}

interface Into {
  readonly trx: Transaction<Tables>;
  readonly client: PoolClient;
  readonly accountId: AccountInScope;
  readonly counts: ImportedCounts;
}

async function take(
  into: Into,
  kind: keyof typeof EXPORTED,
  name: string,
  bytes: AsyncIterable<Buffer>,
): Promise<void> {
  switch (kind) {
    case 'coach':
      return takeCoach(into, await read(EXPORTED.coach, name, bytes));
    case 'loggers':
      return takeLoggers(into, await read(EXPORTED.loggers, name, bytes));
    case 'room':
      return takeRoom(into, await read(EXPORTED.room, name, bytes));
    case 'services':
      return takeServices(into, await read(EXPORTED.services, name, bytes));
    case 'strokes':
      return takeStrokes(into, name, await read(EXPORTED.strokes, name, bytes));
  }
}

type Read<Kind extends keyof typeof EXPORTED> = z.infer<(typeof EXPORTED)[Kind]>;

async function takeCoach({ trx, accountId, counts }: Into, coach: Read<'coach'>): Promise<void> {
  const { id, name, model, year, notes, createdAt } = coach;
  const { numInsertedOrUpdatedRows } = await trx
    .insertInto('coaches')
    .values({ account_id: accountId, id, name, model, year, notes, created_at: createdAt })
    .onConflict((conflict) => conflict.columns(['account_id', 'id']).doNothing())
    .executeTakeFirstOrThrow();
  counts.coaches += Number(numInsertedOrUpdatedRows);
}

async function takeLoggers({ trx, accountId, counts }: Into, loggers: Read<'loggers'>): Promise<void> {
  for (const { id, coachId, name, sensor, clockOffsetS, createdAt } of loggers) {
    const token = newToken('logger', accountId);
    const { numInsertedOrUpdatedRows } = await trx
      .insertInto('loggers')
      .values({
        account_id: accountId,
        id,
        coach_id: coachId,
        name,
        sensor,
        clock_offset_s: clockOffsetS,
        token_hash: token.hash,
        created_at: createdAt,
      })
      .onConflict((conflict) => conflict.columns(['account_id', 'id']).doNothing())
      .executeTakeFirstOrThrow();
    if (numInsertedOrUpdatedRows === 1n) counts.loggers.push({ id, name, token: token.text });
  }
}

async function takeRoom({ trx, accountId, counts }: Into, room: Read<'room'>): Promise<void> {
  const { id, coachId: coach_id, name, drive, sides, createdAt: created_at } = room;
  const { numInsertedOrUpdatedRows } = await trx
    .insertInto('rooms')
    .values({ ...columnsOf(room), name, drive, sides, account_id: accountId, id, coach_id, created_at })
    .onConflict((conflict) => conflict.columns(['account_id', 'id']).doNothing())
    .executeTakeFirstOrThrow();
  counts.rooms += Number(numInsertedOrUpdatedRows);
}

async function takeServices({ trx, accountId, counts }: Into, services: Read<'services'>): Promise<void> {
  for (const { id, roomId, kind, at, side, notes, createdAt } of services) {
    const { numInsertedOrUpdatedRows } = await trx
      .insertInto('services')
      .values({ account_id: accountId, id, room_id: roomId, kind, at, side, notes, created_at: createdAt })
      .onConflict((conflict) => conflict.columns(['account_id', 'id']).doNothing())
      .executeTakeFirstOrThrow();
    if (numInsertedOrUpdatedRows !== 1n) continue;
    counts.services++;
    await markRoomDirty(trx, accountId, roomId, new Date(at));
  }
}

async function takeStrokes(into: Into, name: string, strokes: readonly ExportedStroke[]): Promise<void> {
  const { trx, client, accountId, counts } = into;
  const prepared = strokes.map(({ id, senderId, loggerId, sent }, index) => {
    const prepared = prepareStroke(
      { accountId, senderId, loggerId, coachId: null },
      decodeStroke(sent, `/${index}/sent`),
    );
    return { ...prepared, row: { ...prepared.row, id } };
  });
  if (prepared.length === 0) return;
  const outcomes = await storeStrokes(client, prepared);
  for (const [index, outcome] of outcomes.entries()) {
    if (outcome.outcome === 'duplicate') counts.duplicate++;
    else if (outcome.outcome !== 'stored')
      throw new OperatorError(`${name}: the stroke ${strokes[index].id} is of no room that was imported.`);
    else {
      counts.stored++;
      const { excluded, note, placedAt, placedBy } = strokes[index];
      if (!excluded && note === null && placedBy === 'sender') continue;
      const { room_id } = prepared[index].row;
      if (room_id !== null) await markRoomDirty(trx, accountId, room_id, new Date(placedAt));
      await trx
        .updateTable('strokes')
        .set({ excluded, note, placed_at: placedAt, placed_by: placedBy })
        .where('account_id', '=', accountId)
        .where('id', '=', outcome.strokeId)
        .execute();
    }
  }
}

async function read<Schema extends z.ZodType>(
  schema: Schema,
  name: string,
  bytes: AsyncIterable<Buffer>,
): Promise<z.infer<Schema>> {
  const complaints = { noJson: `${name} is no JSON.`, unfit: `${name} cannot be read` };
  return readJson(schema, await readAll(bytes, LARGEST_FILE_BYTES), complaints);
}
