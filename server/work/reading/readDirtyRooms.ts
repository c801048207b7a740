import { type Kysely, type Selectable, sql } from 'kysely';
import { ANALYSIS_VERSION } from '../../../analysis/room/fold.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { RoomTable } from '../../../migrations/thingTables.ts';
import type { RoomKey } from '../../database/roomChannel.ts';
import { describeRoom } from '../../things/describeRoom.ts';
import { peersOf } from '../../things/peers.ts';
import { type FoldStart, startAtCheckpoint } from '../remembered/foldStart.ts';
import type { RoomMemory } from '../remembered/roomMemory.ts';
import type { RoomToAnalyse } from './readRoom.ts';

/** A room whose results are out of date, and what is needed to go on with it. */
export interface DirtyRoom {
  readonly room: RoomToAnalyse;
  readonly dirtyFrom: Date;
  /** Moves with every change of the room's history. */
  readonly revision: string;
  /** The latest known state before the change. */
  readonly from: FoldStart | null;
  /** Some of its strokes may have been measured by what is no longer so. */
  readonly isMismeasured: boolean;
}

type Row = Selectable<RoomTable> & {
  model: string | null;
  version: string;
  dirty_from: Date;
  revision: string;
  mismeasured: boolean;
  remembered: boolean;
  at: Date | null;
  events: number;
  state: Buffer;
};

/** Reads many rooms at once; those that are up to date or gone by now are left out. What `memory` has of them it gives. */
export async function readDirtyRooms(
  db: Kysely<Tables>,
  keys: readonly RoomKey[],
  memory: RoomMemory,
): Promise<DirtyRoom[]> {
  const remembered = keys.map(({ roomId }) => memory.look(roomId));
  const { rows } = await sql<Row>`
    select r.*, o.model, r.xmin::text as version, p.dirty_from, p.revision,
      p.remeasure_from is not null as mismeasured, f.room_id is not null as remembered, c.at, c.events, c.state
    from unnest(
      ${keys.map(({ accountId }) => accountId)}::uuid[], ${keys.map(({ roomId }) => roomId)}::uuid[],
      ${remembered.map((one) => one?.at.toISOString() ?? null)}::timestamptz[],
      ${remembered.map((one) => one?.resultsVersion ?? null)}::text[]
    ) as k (account_id, room_id, at, results_version)
    join room_progress p on p.account_id = k.account_id and p.room_id = k.room_id and p.dirty_from is not null
    join rooms r on r.account_id = k.account_id and r.id = k.room_id
    join coaches o on o.account_id = r.account_id and o.id = r.coach_id
    left join room_results f on f.account_id = k.account_id and f.room_id = k.room_id
      and f.xmin::text = k.results_version and k.at < p.dirty_from
    left join lateral (
      select at, events, state from room_checkpoints c
      where c.account_id = k.account_id and c.room_id = k.room_id and c.at < p.dirty_from
        and c.analysis_version = ${ANALYSIS_VERSION} and f.room_id is null
      order by c.at desc limit 1
    ) c on true
  `.execute(db);
  const starts = new Map(
    rows.map((row) => [row.id, row.remembered ? memory.take(row.id) : checkpointOf(row)]),
  );
  // Whatever is left of it no longer holds.
  for (const { roomId } of keys) memory.forget(roomId);
  return rows.map((row) => ({
    room: {
      accountId: row.account_id,
      roomId: row.id,
      description: describeRoom(row),
      peers: peersOf(row),
      version: row.version,
    },
    dirtyFrom: row.dirty_from,
    revision: row.revision,
    from: starts.get(row.id) ?? null,
    isMismeasured: row.mismeasured,
  }));
}

function checkpointOf({ at, events, state }: Row): FoldStart | null {
  return at && startAtCheckpoint({ at, events, state });
}
