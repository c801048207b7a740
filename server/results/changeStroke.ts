import type { Kysely, Selectable, Transaction, Updateable } from 'kysely';
import { HAS_TRACE, markRoomDirty } from '../../ingest/roomProgress.ts';
import { parseTimestamp } from '../../ingest/timestamp.ts';
import type { StrokeTable } from '../../migrations/strokeTables.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { invalidField, notFound, ProblemError } from '../problems.ts';
import type { Stroke, StrokePatch } from '../schemas/stroke.ts';
import { keepKeys } from '../things/keepKeys.ts';
import { findStroke, strokeView } from './strokeView.ts';

/**
 * Changes a stroke, and has the rooms concerned gone through again from the earlier of its two places. A time that a
 * person gives stands, whatever the logger's offset. Another direction or room means that its samples are read
 * differently, so it is measured again.
 */
export async function changeStroke(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  strokeId: string,
  patch: StrokePatch,
): Promise<Stroke> {
  return unlessOvertaken(db, async (trx) => {
    const before = await findStroke(trx, accountId, strokeId);
    const startedAt = patch.startedAt === undefined ? null : readTime(patch.startedAt);
    const roomId = patch.roomId ?? before.room_id;
    const moves = roomId !== before.room_id;
    if (moves) {
      await checkRoom(trx, before, roomId);
      await forgetMeasures(trx, before);
    }
    await markBothRooms(trx, before, roomId, startedAt ?? before.placed_at);
    await refuseOvertaken(trx, accountId, before);
    // The mark of that room is ours: its sides stay as they are until we are done.
    if (moves) await checkRoom(trx, before, roomId);
    const changes = changesOf(before, patch, startedAt);
    if (changes.analysis === null) await refuseUnmeasurable(trx, before);
    const after = await trx
      .updateTable('strokes')
      .set(changes)
      .where('account_id', '=', accountId)
      .where('id', '=', strokeId)
      .returningAll()
      .executeTakeFirstOrThrow(() => notFound('stroke'));
    return strokeView(after);
  });
}

/** Its key stays, so that the stroke does not come back when its sender sends it again. */
export async function removeStroke(
  db: Kysely<Tables>,
  accountId: AccountInScope,
  strokeId: string,
): Promise<void> {
  await awaitWriters(db, accountId, strokeId);
  await unlessOvertaken(db, async (trx) => {
    const stroke = await findStroke(trx, accountId, strokeId);
    await forgetMeasures(trx, stroke);
    await markRoomDirty(trx, accountId, stroke.room_id, stroke.placed_at);
    await refuseOvertaken(trx, accountId, stroke);
    await keepKeys(trx, accountId, { strokeId });
    await trx.deleteFrom('strokes').where('account_id', '=', accountId).where('id', '=', strokeId).execute();
  });
}

/**
 * Waits until nobody writes of a stroke, and then holds nothing of it. Whoever writes its first measures needs both the stroke and
 * its room's progress, and would wait in a ring with somebody who held one of them and wanted the other.
 */
async function awaitWriters(db: Kysely<Tables>, accountId: AccountInScope, strokeId: string): Promise<void> {
  await db
    .selectFrom('strokes')
    .select('id')
    .where('account_id', '=', accountId)
    .where('id', '=', strokeId)
    .forUpdate()
    .execute();
}

/** Somebody else moved the stroke between the look for it and the mark of its room. */
class Overtaken extends ProblemError {
  constructor() {
    super('conflict', 'Somebody else moved this stroke at the same moment. Look again.');
  }
}

const TRIES = 10;

/** Changes a stroke from where it is by now: of two changes at once the second goes on from the first. */
async function unlessOvertaken<Result>(
  db: Kysely<Tables>,
  change: (trx: Transaction<Tables>) => Promise<Result>,
): Promise<Result> {
  for (let tried = 1; ; tried++) {
    try {
      return await inTransaction(db, change);
    } catch (error) {
      if (tried === TRIES || !(error instanceof Overtaken)) throw error;
    }
  }
}

/** The rooms that were marked are those of the stroke as it was read: it must still be where it was. */
async function refuseOvertaken(
  trx: Kysely<Tables>,
  accountId: AccountInScope,
  before: Selectable<StrokeTable>,
): Promise<void> {
  const now = await findStroke(trx, accountId, before.id);
  if (now.room_id === before.room_id && now.placed_at.getTime() === before.placed_at.getTime()) return;
  throw new Overtaken();
}

function changesOf(before: Selectable<StrokeTable>, patch: StrokePatch, startedAt: Date | null) {
  const changes: Updateable<StrokeTable> = { placed_at: before.placed_at };
  if (startedAt !== null) {
    changes.started_at = startedAt;
    changes.placed_at = startedAt;
    changes.placed_by = 'person';
  }
  if (patch.excluded !== undefined) changes.excluded = patch.excluded;
  if (patch.note !== undefined) changes.note = patch.note;
  if (patch.direction !== undefined && patch.direction !== before.direction) {
    changes.direction = patch.direction;
    changes.analysis = null;
  }
  if (patch.roomId !== undefined && patch.roomId !== before.room_id) {
    changes.room_id = patch.roomId;
    changes.analysis = null;
  }
  return changes;
}

/** Without its samples it would lose the measures that it has. */
async function refuseUnmeasurable(
  trx: Kysely<Tables>,
  { account_id, id }: Selectable<StrokeTable>,
): Promise<void> {
  const kept = await trx
    .selectFrom('strokes as s')
    .select('s.id')
    .where('s.account_id', '=', account_id)
    .where('s.id', '=', id)
    .where(HAS_TRACE)
    .executeTakeFirst();
  if (kept !== undefined) return;
  throw new ProblemError(
    'conflict',
    'The samples of this stroke were removed, so it cannot be measured again.',
  );
}

/** In the order of rooms, as everybody does who marks several: two such changes never wait for each other. */
async function markBothRooms(
  trx: Kysely<Tables>,
  before: Selectable<StrokeTable>,
  roomId: string,
  placedAt: Date,
): Promise<void> {
  const from = placedAt < before.placed_at ? placedAt : before.placed_at;
  for (const id of [...new Set([before.room_id, roomId])].sort()) {
    await markRoomDirty(trx, before.account_id, id, from);
  }
}

/** Another room of the same coach that has the sides which were recorded. */
async function checkRoom(
  trx: Kysely<Tables>,
  stroke: Selectable<StrokeTable>,
  roomId: string,
): Promise<void> {
  const room = await trx
    .selectFrom('rooms')
    .innerJoin('rooms as present', (join) =>
      join
        .onRef('present.account_id', '=', 'rooms.account_id')
        .onRef('present.coach_id', '=', 'rooms.coach_id'),
    )
    .select('rooms.sides')
    .where('rooms.account_id', '=', stroke.account_id)
    .where('rooms.id', '=', roomId)
    .where('present.id', '=', stroke.room_id)
    .executeTakeFirstOrThrow(() => invalidField('/roomId', 'There is no such room in this coach.'));
  const unknown = stroke.recorded_sides.filter((side) => !room.sides.includes(side));
  if (unknown.length > 0) throw invalidField('/roomId', `That room has no side ${unknown.join(', ')}.`);
}

/** Before a room's progress is held, as whoever writes its measures does: else both would wait in a ring. */
async function forgetMeasures(trx: Kysely<Tables>, stroke: Selectable<StrokeTable>): Promise<void> {
  await trx
    .deleteFrom('measures')
    .where('account_id', '=', stroke.account_id)
    .where('stroke_id', '=', stroke.id)
    .execute();
}

/** Whole milliseconds, as every stroke has. */
function readTime(text: string): Date {
  const ms = parseTimestamp(text);
  if (ms === null) throw invalidField('/startedAt', 'Must be a time of RFC 3339.');
  return new Date(ms);
}
