import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { announceRooms } from '../live/roomChannel.ts';
import { replaceCheckpoints } from './checkpoints.ts';
import type { FoldedHistory } from './foldHistory.ts';
import { MEASURED_BY_NOW } from './measuredBy.ts';
import type { RoomToAnalyse } from './roomRow.ts';
import { writeMeasures } from './writeMeasures.ts';
import { writeWarnings } from './writeWarnings.ts';

/** What was found of one room, to be written. */
export interface RoomResults {
  readonly room: RoomToAnalyse;
  readonly folded: FoldedHistory;
  /** What came after the last event gone through is still to be done from here on; null: nothing came. */
  readonly dirtyFrom: Date | null;
}

/**
 * Writes what was found of any number of rooms, in the same few statements for all of them. In the transaction that
 * holds the lock on their progress.
 */
export async function writeHistories(trx: Kysely<Tables>, rooms: readonly RoomResults[]): Promise<void> {
  if (rooms.length === 0) return;
  await writeMeasures(trx, rooms);
  await writeWarnings(trx, rooms);
  await replaceCheckpoints(trx, rooms);
  await noteVerdicts(trx, rooms);
  await sql`
    update room_progress p set dirty_from = x.dirty_from, summary = x.summary, limits = x.limits,
      measured_by = ${MEASURED_BY_NOW}
    from json_to_recordset(${JSON.stringify(rooms.map(progressOf))}::json) as x (
      account_id uuid, room_id uuid, dirty_from timestamptz, summary jsonb, limits jsonb
    )
    where p.account_id = x.account_id and p.room_id = x.room_id
  `.execute(trx);
  await announceRooms(
    trx,
    rooms.map(({ room }) => room),
  );
}

/** Of one room that is up to date then. */
export function writeHistory(trx: Kysely<Tables>, room: RoomToAnalyse, folded: FoldedHistory): Promise<void> {
  return writeHistories(trx, [{ room, folded, dirtyFrom: null }]);
}

function progressOf({ room, folded, dirtyFrom }: RoomResults) {
  return {
    account_id: room.accountId,
    room_id: room.roomId,
    dirty_from: dirtyFrom,
    summary: folded.summary,
    limits: folded.limits,
  };
}

/** Keeps when the verdict changed, for those who ask what did so since they last looked. */
async function noteVerdicts(trx: Kysely<Tables>, rooms: readonly RoomResults[]): Promise<void> {
  await sql`
    insert into verdict_changes (account_id, room_id, verdict_before, verdict)
    select p.account_id, p.room_id, coalesce(p.verdict, 'learning'), x.verdict
    from unnest(
      ${rooms.map(({ room }) => room.accountId)}::uuid[], ${rooms.map(({ room }) => room.roomId)}::uuid[],
      ${rooms.map(({ folded }) => folded.summary.verdict)}::text[]
    ) as x (account_id, room_id, verdict)
    join room_progress p on p.account_id = x.account_id and p.room_id = x.room_id
    where coalesce(p.verdict, 'learning') <> x.verdict
  `.execute(trx);
}
