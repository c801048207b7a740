import { type Kysely, sql } from 'kysely';
import type { Verdict } from '../../analysis/warning.ts';
import type { Tables } from '../../migrations/tables.ts';
import { announceRoom } from '../live/roomChannel.ts';
import { replaceCheckpoints } from './checkpoints.ts';
import type { FoldedHistory } from './foldHistory.ts';
import type { MeasureRow } from './measureRows.ts';
import type { RoomToAnalyse } from './roomRow.ts';
import { writeWarnings } from './writeWarnings.ts';

const ROWS_AT_A_TIME = 1000;

/** Writes what was found and clears the room's mark. In the transaction that holds the lock on its progress. */
export async function writeHistory(
  trx: Kysely<Tables>,
  room: RoomToAnalyse,
  folded: FoldedHistory,
): Promise<void> {
  const { accountId, roomId } = room;
  await replaceMeasures(trx, room, folded);
  await writeWarnings(trx, accountId, roomId, folded);
  await replaceCheckpoints(trx, accountId, roomId, folded.from, folded.checkpoints);
  await noteVerdict(trx, room, folded.summary.verdict);
  await trx
    .updateTable('room_progress')
    .set({
      dirty_from: null,
      summary: JSON.stringify(folded.summary),
      limits: JSON.stringify(folded.limits),
    })
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .execute();
  await announceRoom(trx, room);
}

/** Keeps when the verdict changed, for those who ask what did so since they last looked. */
async function noteVerdict(trx: Kysely<Tables>, room: RoomToAnalyse, verdict: Verdict): Promise<void> {
  await sql`
    insert into verdict_changes (account_id, room_id, verdict_before, verdict)
    select account_id, room_id, coalesce(summary ->> 'verdict', 'learning'), ${verdict}
    from room_progress
    where account_id = ${room.accountId} and room_id = ${room.roomId}
      and coalesce(summary ->> 'verdict', 'learning') <> ${verdict}
  `.execute(trx);
}

/** By stroke, not by time: a stroke that was moved to another time leaves no row behind. */
async function replaceMeasures(
  trx: Kysely<Tables>,
  room: RoomToAnalyse,
  folded: FoldedHistory,
): Promise<void> {
  for (let i = 0; i < folded.strokeIds.length; i += ROWS_AT_A_TIME) {
    await sql`
      delete from measures where account_id = ${room.accountId}
        and stroke_id = any(${folded.strokeIds.slice(i, i + ROWS_AT_A_TIME)}::uuid[])
    `.execute(trx);
  }
  for (let i = 0; i < folded.measures.length; i += ROWS_AT_A_TIME) {
    await insertMeasures(trx, room, folded.measures.slice(i, i + ROWS_AT_A_TIME));
  }
}

async function insertMeasures(
  trx: Kysely<Tables>,
  room: RoomToAnalyse,
  rows: readonly MeasureRow[],
): Promise<void> {
  await sql`
    insert into measures
      (account_id, room_id, side, direction, placed_at, stroke_id, value, expected, adjusted, beyond)
    select ${room.accountId}::uuid, ${room.roomId}::uuid, x.*
    from json_to_recordset(${JSON.stringify(rows)}::json) as x (
      side text, direction text, placed_at timestamptz, stroke_id uuid, value double precision[],
      expected double precision[], adjusted double precision[], beyond boolean[]
    )
  `.execute(trx);
}
