import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { announceRooms } from '../../database/roomChannel.ts';
import type { FoldedHistory } from '../judging/foldHistory.ts';
import { MEASURED_BY_NOW } from '../measuring/measuredBy.ts';
import type { RoomToAnalyse } from '../reading/readRoom.ts';
import { replaceCheckpoints } from '../remembered/checkpoints.ts';
import { writeMeasures } from './writeMeasures.ts';
import { writeWarnings } from './writeWarnings.ts';

/** What was found of one room, to be written. */
export interface RoomResults {
  readonly room: RoomToAnalyse;
  readonly folded: FoldedHistory;
}

/** How far the results of one room have come. */
interface RoomDone {
  readonly room: RoomToAnalyse;
  /** What came after the last event gone through is still to be done from here on; null: nothing came. */
  readonly dirtyFrom: Date | null;
}

/**
 * Writes what was found of any number of rooms, in the same few statements for all of them. Answers the version of their
 * rows in `room_results`.
 */
export async function writeHistories(
  trx: Kysely<Tables>,
  rooms: readonly RoomResults[],
): Promise<string | null> {
  if (rooms.length === 0) return null;
  await writeMeasures(trx, rooms);
  await writeWarnings(trx, rooms);
  await replaceCheckpoints(trx, rooms);
  await noteVerdicts(trx, rooms);
  const written = await sql<{ version: string }>`
    insert into room_results (account_id, room_id, summary, limits)
    select * from json_to_recordset(${JSON.stringify(rooms.map(resultsOf))}::json) as x (
      account_id uuid, room_id uuid, summary jsonb, limits jsonb
    )
    on conflict (account_id, room_id) do update set summary = excluded.summary, limits = excluded.limits
    returning xmin::text as version
  `.execute(trx);
  return written.rows[0].version;
}

/** Says of rooms how far they have come, and tells who watches them. In the transaction that holds their progress. */
export async function finishRooms(trx: Kysely<Tables>, rooms: readonly RoomDone[]): Promise<void> {
  const rows = rooms.map(({ room, dirtyFrom }) => ({
    account_id: room.accountId,
    room_id: room.roomId,
    dirty_from: dirtyFrom,
  }));
  await sql`
    update room_progress p set dirty_from = x.dirty_from, measured_by = ${MEASURED_BY_NOW}
    from json_to_recordset(${JSON.stringify(rows)}::json) as x (
      account_id uuid, room_id uuid, dirty_from timestamptz
    )
    where p.account_id = x.account_id and p.room_id = x.room_id
  `.execute(trx);
  await announceRooms(
    trx,
    rooms.map(({ room }) => room),
  );
}

/** Of one room that is up to date then. In the transaction that holds its progress. */
export async function writeHistory(
  trx: Kysely<Tables>,
  room: RoomToAnalyse,
  folded: FoldedHistory,
): Promise<void> {
  await writeHistories(trx, [{ room, folded }]);
  await finishRooms(trx, [{ room, dirtyFrom: null }]);
}

function resultsOf({ room, folded }: RoomResults) {
  return {
    account_id: room.accountId,
    room_id: room.roomId,
    summary: folded.summary,
    limits: folded.limits,
  };
}

/** Keeps when the verdict changed, for those who ask what did so since they last looked. */
async function noteVerdicts(trx: Kysely<Tables>, rooms: readonly RoomResults[]): Promise<void> {
  await sql`
    insert into verdict_changes (account_id, room_id, verdict_before, verdict)
    select x.account_id, x.room_id, coalesce(o.verdict, 'learning'), x.verdict
    from unnest(
      ${rooms.map(({ room }) => room.accountId)}::uuid[], ${rooms.map(({ room }) => room.roomId)}::uuid[],
      ${rooms.map(({ folded }) => folded.summary.verdict)}::text[]
    ) as x (account_id, room_id, verdict)
    left join room_results o on o.account_id = x.account_id and o.room_id = x.room_id
    where coalesce(o.verdict, 'learning') <> x.verdict
  `.execute(trx);
}
