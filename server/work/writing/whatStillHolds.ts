import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import { type EventsOfRoom, ROW_VERSION } from '../reading/eventsOfRooms.ts';

/** A room whose results may be written, and from where on there is more to do. */
interface StillHolds {
  readonly roomId: string;
  readonly dirtyFrom: Date | null;
}

/**
 * Takes hold of the rooms' progress until the transaction ends, and tells of which of them what was read still holds.
 * Strokes that came after the last event meanwhile do no harm: the results are those of everything before them, and
 * the room is out of date from the first of them on. A busy room would else never come to an end.
 */
export async function whatStillHolds(
  trx: Kysely<Tables>,
  rooms: readonly EventsOfRoom[],
): Promise<StillHolds[]> {
  const moved = await lockProgress(trx, rooms);
  const asked = rooms.flatMap(({ dirty: { room, from }, events }) => {
    const revised = moved.get(room.roomId);
    if (revised === undefined) return [];
    return [
      {
        account_id: room.accountId,
        room_id: room.roomId,
        version: room.version,
        revised,
        after: from?.at ?? '-infinity',
        until: new Date(events.at(-1)?.atMs ?? 0),
      },
    ];
  });
  const { rows } = await sql<{ room_id: string; fingerprint: string | null; next: Date | null }>`
    select x.room_id, f.fingerprint, f.next
    from json_to_recordset(${JSON.stringify(asked)}::json) as x (
      account_id uuid, room_id uuid, version text, revised boolean, after timestamptz, until timestamptz
    )
    join rooms r on r.account_id = x.account_id and r.id = x.room_id and r.xmin::text = x.version
    left join lateral (
      select
        concat_ws(',',
          string_agg(${sql.raw(ROW_VERSION)}, ',' order by at, id) filter (where what = 'stroke' and ms <= x.until),
          string_agg(${sql.raw(ROW_VERSION)}, ',' order by at, id) filter (where what = 'service' and ms <= x.until)
        ) as fingerprint,
        min(at) filter (where ms > x.until) as next
      from (
        select id, xmin, placed_at as at, placed_at as ms, 'stroke' as what from strokes
        where account_id = x.account_id and room_id = x.room_id and placed_at > x.after
        union all
        select id, xmin, at, date_trunc('milliseconds', at), 'service' from services
        where account_id = x.account_id and room_id = x.room_id and date_trunc('milliseconds', at) > x.after
      ) events
    ) f on x.revised
  `.execute(trx);
  const found = new Map(rows.map((row) => [row.room_id, row]));
  return rooms.flatMap(({ dirty: { room }, fingerprint }) => {
    const now = found.get(room.roomId);
    if (now === undefined) return [];
    if (!moved.get(room.roomId)) return [{ roomId: room.roomId, dirtyFrom: null }];
    return now.fingerprint === fingerprint ? [{ roomId: room.roomId, dirtyFrom: now.next }] : [];
  });
}

/**
 * Of each room whether its history was changed since it was read. Left out are those that are gone, and those that
 * changed before what was read of them began. In the order of rooms, as senders lock them too.
 */
async function lockProgress(
  trx: Kysely<Tables>,
  rooms: readonly EventsOfRoom[],
): Promise<ReadonlyMap<string, boolean>> {
  const { rows } = await sql<{ room_id: string; dirty_from: Date | null; revision: string }>`
    select p.room_id, p.dirty_from, p.revision from room_progress p
    where (p.account_id, p.room_id) in (
      select * from unnest(
        ${rooms.map(({ dirty }) => dirty.room.accountId)}::uuid[],
        ${rooms.map(({ dirty }) => dirty.room.roomId)}::uuid[]
      )
    )
    order by p.account_id, p.room_id for update
  `.execute(trx);
  const found = new Map(rows.map((row) => [row.room_id, row]));
  return new Map(
    rooms.flatMap(({ dirty }) => {
      const now = found.get(dirty.room.roomId);
      // Marks only ever move back until they are cleared, which is for whoever holds the room.
      if (now?.dirty_from?.getTime() !== dirty.dirtyFrom.getTime()) return [];
      return [[dirty.room.roomId, now.revision !== dirty.revision] as const];
    }),
  );
}
