import { type Kysely, sql } from 'kysely';
import { BEGINNING, markRoomsDirty } from '../../../ingest/roomProgress.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { takeTurn } from '../../database/takeTurn.ts';
import type { RoomToAnalyse } from '../reading/readRoom.ts';
import { borrowFor, channelsOf, type Lending, MOST_LENDERS, sameLent } from './borrowFor.ts';

type Room = Pick<RoomToAnalyse, 'accountId' | 'roomId'>;

/** One row of `lent_normals`; `normal` as JSON text. */
interface LentRow {
  readonly place: number;
  readonly direction: string;
  readonly peers: string;
  readonly namesakes: string;
  readonly learnt_at: string | null;
  readonly normal: string | null;
}

/** What is to be written of what a room lends, and the rooms whose results hang on what changes. */
interface Publication {
  readonly gone: readonly LentRow[];
  readonly made: readonly LentRow[];
  readonly borrowers: readonly string[];
  /** What the room was lent changed while its events were gone through. */
  readonly isOvertaken: boolean;
}

const NOTHING: Publication = { gone: [], made: [], borrowers: [], isOvertaken: false };

/**
 * Keeps all rooms of the model from lending and borrowing until the transaction ends: one that begins to borrow and one
 * that begins to lend must see each other. To be taken before any room's progress is held.
 */
export async function holdPeers(trx: Kysely<Tables>, room: RoomToAnalyse): Promise<void> {
  if (room.peers !== null) await hold(trx, room, await readRows(trx, room), room.peers.peers);
}

/**
 * Compares what the room lends now with what it lent, and takes hold of the progress of those who must be gone through
 * anew for it, in the order of rooms as everybody does who marks several.
 */
export async function preparePublication(
  trx: Kysely<Tables>,
  room: RoomToAnalyse,
  folded: Lending,
): Promise<Publication> {
  if (folded.isSettled || room.peers === null) return NOTHING;
  await holdPeers(trx, room);
  const publication = await compare(trx, room, rowsOf(room, folded));
  const isOvertaken = !sameLent(await borrowFor(trx, room, folded.lends), folded.lent);
  return { ...publication, isOvertaken };
}

/** Writes it, and has those who borrowed or may borrow from now on gone through from their beginning. */
export async function publishNormals(
  trx: Kysely<Tables>,
  { accountId, roomId }: Room,
  { gone, made, borrowers }: Publication,
): Promise<void> {
  if (gone.length + made.length === 0) return;
  const changed = [...gone, ...made].map(({ place, direction }) => ({ place, direction }));
  await sql`
    delete from lent_normals l
    using json_to_recordset(${JSON.stringify(changed)}::json) as x (place smallint, direction text)
    where l.account_id = ${accountId} and l.room_id = ${roomId} and l.place = x.place and l.direction = x.direction
  `.execute(trx);
  await sql`
    insert into lent_normals (account_id, room_id, place, direction, peers, namesakes, learnt_at, normal)
    select ${accountId}::uuid, ${roomId}::uuid, place, direction, peers, namesakes, learnt_at, normal::json
    from json_to_recordset(${JSON.stringify(made)}::json) as x (
      place smallint, direction text, peers uuid, namesakes uuid, learnt_at timestamptz, normal text
    )
  `.execute(trx);
  await markRoomsDirty(trx, accountId, borrowers, BEGINNING);
}

/** Of a room that lends no more: those who borrowed from it are gone through anew. */
export async function withdrawAll(trx: Kysely<Tables>, room: Room): Promise<void> {
  await hold(trx, room, await readRows(trx, room), null);
  await publishNormals(trx, room, await compare(trx, room, []));
}

async function hold(
  trx: Kysely<Tables>,
  { accountId }: Room,
  rows: readonly LentRow[],
  peers: string | null,
): Promise<void> {
  const all = new Set(rows.map((row) => row.peers));
  if (peers !== null) all.add(peers);
  for (const each of [...all].sort()) {
    await takeTurn(trx, `lend ${accountId} ${each}`);
  }
}

async function compare(trx: Kysely<Tables>, room: Room, now: readonly LentRow[]): Promise<Publication> {
  const before = await readRows(trx, room);
  const key = (row: LentRow) => JSON.stringify(row);
  const [kept, wanted] = [new Set(before.map(key)), new Set(now.map(key))];
  const gone = before.filter((row) => !wanted.has(key(row)));
  const made = now.filter((row) => !kept.has(key(row)));
  const borrowers = await borrowersOf(trx, room, [...gone, ...made]);
  await sql`
    select from room_progress
    where account_id = ${room.accountId} and room_id = any(${[...borrowers, room.roomId]}::uuid[])
    order by room_id for update
  `.execute(trx);
  return { gone, made, borrowers, isOvertaken: false };
}

/**
 * The rooms that a change of these rows concerns: those of the model that still learn, or learnt later. None where
 * enough others had learnt before.
 */
async function borrowersOf(
  trx: Kysely<Tables>,
  { accountId, roomId }: Room,
  rows: readonly LentRow[],
): Promise<string[]> {
  const lent = rows.filter((row) => row.learnt_at !== null).map(({ normal: _, ...row }) => row);
  if (lent.length === 0) return [];
  const found = await sql<{ room_id: string }>`
    select distinct b.room_id
    from json_to_recordset(${JSON.stringify(lent)}::json) as x (
      place smallint, direction text, peers uuid, namesakes uuid, learnt_at timestamptz
    )
    join lent_normals b on b.account_id = ${accountId} and b.peers = x.peers and b.place = x.place
      and b.direction = x.direction and b.room_id <> ${roomId}
      and (b.learnt_at is null or (b.learnt_at, b.room_id) > (x.learnt_at, ${roomId}::uuid))
    join rooms r on r.account_id = b.account_id and r.id = b.room_id
    where (
      select count(*) from (
        select from lent_normals e
        where e.account_id = ${accountId} and e.namesakes = x.namesakes and e.place = x.place
          and e.direction = x.direction and e.room_id <> ${roomId}
          and (e.learnt_at, e.room_id) < (x.learnt_at, ${roomId}::uuid)
        limit ${MOST_LENDERS}
      ) earlier
    ) < ${MOST_LENDERS}
  `.execute(trx);
  return found.rows.map((row) => row.room_id);
}

function rowsOf({ description, peers }: RoomToAnalyse, { lends }: Lending): LentRow[] {
  if (peers === null) return [];
  return channelsOf(description.sides).map(({ place, direction }, n) => {
    const normal = lends[n].normal;
    return {
      place,
      direction,
      peers: peers.peers,
      namesakes: peers.namesakes,
      learnt_at: normal && new Date(normal.learntAtMs).toISOString(),
      normal: normal && JSON.stringify(normal.measures),
    };
  });
}

async function readRows(trx: Kysely<Tables>, { accountId, roomId }: Room): Promise<LentRow[]> {
  const rows = await trx
    .selectFrom('lent_normals')
    .select(['place', 'direction', 'peers', 'namesakes', 'learnt_at', 'normal'])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .execute();
  return rows.map(({ place, direction, peers, namesakes, learnt_at, normal }) => ({
    place,
    direction,
    peers,
    namesakes,
    learnt_at: learnt_at?.toISOString() ?? null,
    normal: normal && JSON.stringify(normal),
  }));
}
