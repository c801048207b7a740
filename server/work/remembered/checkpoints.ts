import { type Kysely, sql } from 'kysely';
import { ANALYSIS_VERSION } from '../../../analysis/room/fold.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { type FoldStart, type Place, startAtCheckpoint } from './foldStart.ts';
import { packState } from './packedState.ts';

/** The room's state at a place of its history, kept so that an on-time stroke need not go through all of that. */
export interface Checkpoint extends Place {
  /** The state as JSON text. */
  readonly state: string;
}

/** One is kept at the end of each so many events, and one at the latest event or, of a busy room, some before it. */
const EVENTS_APART = 32;
/**
 * Of those further back than this, some two years of a room, every eighth stays. A state takes the place of forty strokes without
 * their samples. A stroke that comes so late has at most 256 others gone through again, which takes a tenth of a second.
 */
const CLOSE_EVENTS = 128;
const OLD_KEEP_ONE_IN = 8;

/** The latest one before a time, made by this version of the analysis. */
export async function latestCheckpoint(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
  before: Date,
): Promise<FoldStart | null> {
  const row = await db
    .selectFrom('room_checkpoints')
    .select(['at', 'events', 'state'])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('at', '<', before)
    .where('analysis_version', '=', ANALYSIS_VERSION)
    .orderBy('at', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row === undefined ? null : startAtCheckpoint(row);
}

interface CheckpointsOfRoom {
  readonly room: { readonly accountId: string; readonly roomId: string };
  /** `from` is where the work began, `checkpoints` what it made, in order of time. */
  readonly folded: { readonly from: FoldStart | null; readonly checkpoints: readonly Checkpoint[] };
}

/** Of each room, replaces all checkpoints after the latest one up to where the work began. */
export async function replaceCheckpoints(
  db: Kysely<Tables>,
  rooms: readonly CheckpointsOfRoom[],
): Promise<void> {
  await sql`
    delete from room_checkpoints c
    using json_to_recordset(${JSON.stringify(rooms.map(outdatedOf))}::json)
      as x (account_id uuid, room_id uuid, since timestamptz, included boolean)
    where c.account_id = x.account_id and c.room_id = x.room_id
      and c.at >= coalesce(x.since, '-infinity') and (x.included or c.at > x.since)
  `.execute(db);
  await thinOut(db, rooms);
  await insert(
    db,
    rooms.flatMap(({ room, folded: { checkpoints } }) => {
      const close = (checkpoints.at(-1)?.events ?? 0) - CLOSE_EVENTS;
      const kept = checkpoints.filter(({ events }) => events >= close || isKeptOfOld(events));
      return kept.map((checkpoint) => ({ room, checkpoint }));
    }),
  );
}

/** Their states go as one string of bytes, one after the other. */
async function insert(
  db: Kysely<Tables>,
  made: readonly { readonly room: CheckpointsOfRoom['room']; readonly checkpoint: Checkpoint }[],
): Promise<void> {
  if (made.length === 0) return;
  const states = made.map(({ checkpoint }) => packState(checkpoint.state));
  let end = 0;
  const rows = made.map(({ room, checkpoint: { at, events } }, i) => {
    const from = end;
    end += states[i].length;
    return { account_id: room.accountId, room_id: room.roomId, at, events, from, bytes: states[i].length };
  });
  await sql`
    insert into room_checkpoints (account_id, room_id, at, events, analysis_version, state)
    select x.account_id, x.room_id, x.at, x.events, ${ANALYSIS_VERSION},
      substring(${Buffer.concat(states)}::bytea from x."from" + 1 for x.bytes)
    from json_to_recordset(${JSON.stringify(rows)}::json)
      as x (account_id uuid, room_id uuid, at timestamptz, events integer, "from" integer, bytes integer)
  `.execute(db);
}

/** That one gives way where a later one of its stretch takes its place. */
function outdatedOf({ room, folded: { from, checkpoints } }: CheckpointsOfRoom) {
  const saved = from?.saved ?? null;
  const givesWay =
    saved !== null && checkpoints.length > 0 && stretchOf(saved.events) === stretchOf(checkpoints[0].events);
  return {
    account_id: room.accountId,
    room_id: room.roomId,
    since: saved?.at ?? null,
    included: saved === null || givesWay,
  };
}

/** Of a room that came to another stretch, only some of the old ones stay. */
async function thinOut(db: Kysely<Tables>, rooms: readonly CheckpointsOfRoom[]): Promise<void> {
  const thinned = rooms.flatMap(({ room, folded: { from, checkpoints } }) => {
    const events = checkpoints.at(-1)?.events;
    if (from === null || events === undefined || stretchOf(from.saved.events) === stretchOf(events))
      return [];
    return [{ account_id: room.accountId, room_id: room.roomId, below: events - CLOSE_EVENTS }];
  });
  if (!thinned.some(({ below }) => below > 0)) return;
  await sql`
    delete from room_checkpoints c
    using json_to_recordset(${JSON.stringify(thinned)}::json) as x (account_id uuid, room_id uuid, below integer)
    where c.account_id = x.account_id and c.room_id = x.room_id and c.events < x.below
      and (c.events / ${sql.lit(EVENTS_APART)}) % ${sql.lit(OLD_KEEP_ONE_IN)} <> 0
  `.execute(db);
}

/** Said in SQL above as well. */
function isKeptOfOld(events: number): boolean {
  return stretchOf(events) % OLD_KEEP_ONE_IN === 0;
}

/** Of each stretch of events the last checkpoint is the one that stays. */
export function stretchOf(events: number): number {
  return Math.floor(events / EVENTS_APART);
}
