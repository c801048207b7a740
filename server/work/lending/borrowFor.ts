import { type Kysely, sql } from 'kysely';
import type { LentMeasure, LentNormal } from '../../../analysis/baseline/lending.ts';
import { borrow } from '../../../analysis/baseline/lent.ts';
import type { LentToRoom } from '../../../analysis/room/fold.ts';
import { DIRECTIONS, type Direction } from '../../../analysis/trace.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { RoomToAnalyse } from '../reading/readRoom.ts';

/** One side in one direction of a room, and what it lends; null while it is still learnt. */
interface LentChannel {
  readonly normal: LentNormal | null;
}

/** What a room's history, gone through, says of lending. */
export interface Lending {
  /** What it was lent from the beginning. */
  readonly lent: LentToRoom;
  /** What it lends itself, channel by channel. */
  readonly lends: readonly LentChannel[];
  /** All that it lends was learnt before the events gone through: nothing of it can have changed, nor what it is lent. */
  readonly isSettled: boolean;
}

/** So many rooms lend at most, the first that learnt: a further one of a common model changes nobody's results. */
export const MOST_LENDERS = 32;
/** With so many of the same name among them, the others of the model are not asked. */
const ENOUGH_NAMESAKES = 3;

/** Side by side, each in both directions: the order of a room's channels. */
export function channelsOf(sides: readonly string[]): { place: number; direction: Direction }[] {
  return sides.flatMap((_, place) => DIRECTIONS.map((direction) => ({ place, direction })));
}

/**
 * What rooms of the same coach model lend to a room, in the order of its channels; rooms of other accounts never do. While the
 * room still learns a channel, all that have learnt it lend it. Afterwards only those do that had learnt it before this room had
 * from its own strokes (`lends`): it no longer needs the others, and old results do not move with every new coach on the lot.
 */
export async function borrowFor(
  db: Kysely<Tables>,
  room: RoomToAnalyse,
  lends: readonly LentChannel[],
): Promise<LentToRoom> {
  const channels = channelsOf(room.description.sides).map((channel, n) => ({
    ...channel,
    n,
    learnt_at: lends[n]?.normal?.learntAtMs ?? null,
  }));
  if (room.peers === null) return channels.map(() => null);
  const namesakes = await lenders(db, room, sql`l.namesakes = ${room.peers.namesakes}`, channels);
  const enough = channels.every(({ n }) => (namesakes.get(n)?.length ?? 0) >= ENOUGH_NAMESAKES);
  const all = enough ? namesakes : await lenders(db, room, sql`l.peers = ${room.peers.peers}`, channels);
  return channels.map(({ n }) => {
    const named = namesakes.get(n) ?? [];
    return borrow(named.length >= ENOUGH_NAMESAKES ? named : (all.get(n) ?? []));
  });
}

interface Asked {
  readonly n: number;
  readonly place: number;
  readonly direction: Direction;
  readonly learnt_at: number | null;
}

async function lenders(
  db: Kysely<Tables>,
  { accountId, roomId }: RoomToAnalyse,
  alike: ReturnType<typeof sql<boolean>>,
  channels: readonly Asked[],
): Promise<Map<number, LentNormal[]>> {
  const asked = channels.map((channel) => ({
    ...channel,
    learnt_at: channel.learnt_at === null ? 'infinity' : new Date(channel.learnt_at).toISOString(),
  }));
  const { rows } = await sql<{ n: number; learnt_at: Date; normal: LentMeasure[] }>`
    select x.n, l.learnt_at, l.normal
    from json_to_recordset(${JSON.stringify(asked)}::json) as x (
      n integer, place smallint, direction text, learnt_at timestamptz
    )
    cross join lateral (
      select l.room_id, l.learnt_at, l.normal from lent_normals l
      where l.account_id = ${accountId} and ${alike} and l.place = x.place and l.direction = x.direction
        and (l.learnt_at, l.room_id) < (x.learnt_at, ${roomId}::uuid) and l.room_id <> ${roomId}
      order by l.learnt_at, l.room_id limit ${MOST_LENDERS}
    ) l
    order by x.n, l.learnt_at, l.room_id
  `.execute(db);
  const found = new Map<number, LentNormal[]>();
  for (const { n, learnt_at, normal } of rows) {
    found.set(n, [...(found.get(n) ?? []), { learntAtMs: learnt_at.getTime(), measures: normal }]);
  }
  return found;
}

/** What the room lent when it was last gone through, channel by channel. */
export async function learntBefore(
  db: Kysely<Tables>,
  { accountId, roomId, description, peers }: RoomToAnalyse,
): Promise<LentChannel[]> {
  if (peers === null) return [];
  const rows = await db
    .selectFrom('lent_normals')
    .select(['place', 'direction', 'learnt_at', 'normal'])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .execute();
  return channelsOf(description.sides).map(({ place, direction }) => {
    const row = rows.find((each) => each.place === place && each.direction === direction);
    if (!row?.learnt_at || !row.normal) return { normal: null };
    // Written by `publishNormals` and nobody else.
    return { normal: { learntAtMs: row.learnt_at.getTime(), measures: row.normal as LentMeasure[] } };
  });
}

/** Equal to the last digit, whether or not it was put away as JSON meanwhile. */
export function sameLent(one: LentToRoom, other: LentToRoom): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
