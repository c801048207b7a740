import type { Kysely } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import type { AccountInScope } from '../../access/scopes/scope.ts';
import { OperatorError } from '../../operatorError.ts';
import { coachOf } from '../../things/coaches.ts';
import { loggerOf } from '../../things/loggers.ts';
import { roomOf } from '../../things/rooms.ts';
import { type AddEntry, jsonEntry } from '../archive.ts';
import type { Progress } from '../progress.ts';
import { EXPORT_VERSION, type ExportHead, README } from './format.ts';
import { writeRoom } from './writeRoom.ts';

interface ExportedCounts {
  coaches: number;
  rooms: number;
  strokes: number;
}

interface ExportAsked {
  readonly accountId: AccountInScope;
  /** null: all coaches of the account. */
  readonly coachId: string | null;
  readonly now: Date;
}

/** Writes one coach of an account, or all of them, into an open archive. Throws `OperatorError` where there is no such coach. */
export async function writeExport(
  db: Kysely<Tables>,
  { accountId, coachId, now }: ExportAsked,
  add: AddEntry,
  progress: Progress,
): Promise<ExportedCounts> {
  const { name } = await db
    .selectFrom('accounts')
    .select('name')
    .where('id', '=', accountId)
    .executeTakeFirstOrThrow();
  // A command sees deleted ones too: to whoever takes the export in they would be there again.
  let query = db
    .selectFrom('coaches')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('deleted_at', 'is', null);
  if (coachId !== null) query = query.where('id', '=', coachId);
  const coaches = await query.orderBy('id').execute();
  if (coachId !== null && coaches.length === 0)
    throw new OperatorError(`The account has no coach ${coachId}.`);
  const counts = { coaches: coaches.length, rooms: 0, strokes: 0 };
  progress.begin('Coaches', coaches.length);
  const head: ExportHead = {
    format: 'slideload-export',
    version: EXPORT_VERSION,
    exportedAt: now.toISOString(),
    account: name,
    coaches: coaches.map(({ id }) => id),
  };
  await add('README.txt', Buffer.from(README));
  await add('export.json', jsonEntry(head));
  for (const coach of coaches) {
    const folder = `coaches/${coach.id}`;
    await add(`${folder}/coach.json`, jsonEntry(coachOf(coach)));
    const loggers = await db
      .selectFrom('loggers')
      .selectAll()
      .where('account_id', '=', accountId)
      .where('coach_id', '=', coach.id)
      .orderBy('id')
      .execute();
    await add(`${folder}/loggers.json`, jsonEntry(loggers.map(loggerOf)));
    const rooms = await db
      .selectFrom('rooms')
      .selectAll()
      .where('account_id', '=', accountId)
      .where('coach_id', '=', coach.id)
      .orderBy('id')
      .execute();
    for (const room of rooms) {
      const at = `${folder}/rooms/${room.id}`;
      await add(`${at}/room.json`, jsonEntry(roomOf(room)));
      counts.strokes += await writeRoom(db, accountId, room.id, at, add);
      counts.rooms++;
    }
    progress.add(1);
  }
  progress.end();
  return counts;
}
