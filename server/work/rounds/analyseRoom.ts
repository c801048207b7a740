import type { Kysely } from 'kysely';
import { holdRooms } from '../../../ingest/holdRooms.ts';
import { forgetAnalyses } from '../../../ingest/roomProgress.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { RoomKey } from '../../database/roomChannel.ts';
import { UnmeasuredStroke } from '../../results/strokeEvent.ts';
import type { AnalysisLog } from '../inHand/analysisLog.ts';
import { SET_ASIDE_REASONS } from '../inHand/setAsideReasons.ts';
import type { StrokeInHand } from '../inHand/strokeInHand.ts';
import { Turns, WorkStopped } from '../inHand/turns.ts';
import { type FoldedHistory, foldHistory, UnjudgedStroke } from '../judging/foldHistory.ts';
import { holdPeers, preparePublication, publishNormals } from '../lending/publishNormals.ts';
import { measureBatch } from '../measuring/measureBatch.ts';
import { type RoomToAnalyse, readRoom } from '../reading/readRoom.ts';
import { writeHistory } from '../writing/writeHistory.ts';
import { holdingRoom } from './claimRooms.ts';

/** `busy`: another worker has the room; `stopped`: the service is going down and the room is still marked. */
type AnalysisOutcome = 'done' | 'busy' | 'stopped';

/**
 * Brings one room's results up to date: measures its new strokes, goes through its events from the last checkpoint
 * before the earliest change, and writes what follows, all at once.
 *
 * The history is read without holding anything up. Every change of it raises the room's revision first. If that
 * moved while the events were gone through, nothing is written. They are gone through again, this time holding the room's
 * progress, so that senders to this room wait for the moment it takes.
 */
export async function analyseRoom(
  db: Kysely<Tables>,
  room: RoomKey,
  log: AnalysisLog,
  stopping: AbortSignal,
  hand?: StrokeInHand,
): Promise<AnalysisOutcome> {
  return db.connection().execute(async (connection) => {
    try {
      const work = () => inRounds(connection, room, log, new Turns(stopping, hand));
      return (await holdingRoom(connection, room, work)) ?? 'busy';
    } catch (error) {
      if (error instanceof WorkStopped) return 'stopped';
      throw error;
    }
  });
}

async function inRounds(
  db: Kysely<Tables>,
  { accountId, roomId }: RoomKey,
  log: AnalysisLog,
  turns: Turns,
): Promise<'done'> {
  for (let holding = false; ; ) {
    await turns.next();
    const room = await readRoom(db, accountId, roomId);
    if (room === null) return 'done';
    if (await measureBatch(db, [room], log, turns)) continue;
    try {
      if (await (holding ? roundHolding(db, room, log, turns) : roundFree(db, room, turns))) return 'done';
      holding = true;
    } catch (error) {
      if (error instanceof UnjudgedStroke) await setAside(db, room, error, log);
      else if (!(error instanceof UnmeasuredStroke)) throw error;
    }
  }
}

/** Answers whether the room is up to date now. */
async function roundFree(db: Kysely<Tables>, room: RoomToAnalyse, turns: Turns): Promise<boolean> {
  const before = await readProgress(db, room, false);
  if (before.dirtyFrom === null) return true;
  if (before.remeasureFrom !== null) return false;
  const folded = await foldHistory(db, room, before.dirtyFrom, turns);
  return db.transaction().execute(async (trx) => {
    await holdRooms(trx, [room]);
    const publication = await preparePublication(trx, room, folded);
    const now = await readProgress(trx, room, true);
    if (now.revision !== before.revision || !(await isSameRoom(trx, room))) return false;
    if (publication.isOvertaken) return false;
    await writeHistory(trx, room, folded);
    await publishNormals(trx, room, publication);
    return true;
  });
}

async function roundHolding(
  db: Kysely<Tables>,
  room: RoomToAnalyse,
  log: AnalysisLog,
  turns: Turns,
): Promise<boolean> {
  return db.transaction().execute(async (trx) => {
    await holdRooms(trx, [room]);
    await holdPeers(trx, room);
    const { dirtyFrom, remeasureFrom } = await readProgress(trx, room, true);
    if (dirtyFrom === null) return true;
    if (!(await isSameRoom(trx, room))) return false;
    if (remeasureFrom !== null) await forgetMismeasured(trx, room, remeasureFrom);
    while (await measureBatch(trx, [room], log, turns));
    const folded: FoldedHistory = await foldHistory(trx, room, dirtyFrom, turns);
    const publication = await preparePublication(trx, room, folded);
    await writeHistory(trx, room, folded);
    await publishNormals(trx, room, publication);
    return true;
  });
}

async function isSameRoom(trx: Kysely<Tables>, room: RoomToAnalyse): Promise<boolean> {
  return (await readRoom(trx, room.accountId, room.roomId))?.version === room.version;
}

interface Progress {
  readonly dirtyFrom: Date | null;
  readonly revision: string | null;
  readonly remeasureFrom: Date | null;
}

async function readProgress(db: Kysely<Tables>, room: RoomToAnalyse, hold: boolean): Promise<Progress> {
  const row = await db
    .selectFrom('room_progress')
    .select(['dirty_from', 'revision', 'remeasure_from'])
    .where('account_id', '=', room.accountId)
    .where('room_id', '=', room.roomId)
    .$if(hold, (query) => query.forUpdate())
    .executeTakeFirst();
  return {
    dirtyFrom: row?.dirty_from ?? null,
    revision: row?.revision ?? null,
    remeasureFrom: row?.remeasure_from ?? null,
  };
}

/** Strokes that were measured by what was known of the room before it was changed, while it was being changed. */
async function forgetMismeasured(
  trx: Kysely<Tables>,
  { accountId, roomId }: RoomToAnalyse,
  from: Date,
): Promise<void> {
  await forgetAnalyses(trx, accountId, roomId, from);
  await trx
    .updateTable('room_progress')
    .set({ remeasure_from: null })
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .execute();
}

/** Marks the stroke that the analysis stumbled over as unusable, so that the room goes on without it. */
async function setAside(
  db: Kysely<Tables>,
  room: RoomToAnalyse,
  error: UnjudgedStroke,
  log: AnalysisLog,
): Promise<void> {
  log.error({ err: error, strokeId: error.strokeId }, 'A stroke could not be judged.');
  await db
    .updateTable('strokes')
    .set({ analysis: JSON.stringify({ status: 'unusable', reason: SET_ASIDE_REASONS.judging }) })
    .where('account_id', '=', room.accountId)
    .where('id', '=', error.strokeId)
    .execute();
}
