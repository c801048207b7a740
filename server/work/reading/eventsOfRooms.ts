import { type Kysely, sql } from 'kysely';
import type { RoomEvent } from '../../../analysis/history.ts';
import { orderEvents } from '../../../analysis/room/fold.ts';
import type { Tables } from '../../../migrations/tables.ts';
import { STROKE_EVENT_COLUMNS, type StrokeEventRow, strokeEvent } from '../../results/strokeEvent.ts';
import type { DirtyRoom } from './readDirtyRooms.ts';
import { type ServiceEventRow, serviceEvent } from './roomEvents.ts';

/** The events of one room after its checkpoint, in the one order of events. */
export interface EventsOfRoom {
  readonly dirty: DirtyRoom;
  readonly events: readonly RoomEvent[];
  /** Which versions of which rows they are: the same again as long as nothing changes among them. */
  readonly fingerprint: string;
}

/** SQL of a row's part in the fingerprint. */
export const ROW_VERSION = `id::text || ' ' || xmin::text`;

type Versioned<Row> = Row & { readonly room_id: string; readonly row_version: string };

/**
 * Reads the events of many rooms at once. Left out are rooms of which more than `most` strokes are to be gone through,
 * or one that was not measured yet.
 */
export async function eventsOfRooms(
  db: Kysely<Tables>,
  rooms: readonly DirtyRoom[],
  most: number,
): Promise<EventsOfRoom[]> {
  const keys = sql`unnest(
    ${rooms.map(({ room }) => room.accountId)}::uuid[], ${rooms.map(({ room }) => room.roomId)}::uuid[],
    ${rooms.map(({ from }) => from?.at.toISOString() ?? '-infinity')}::timestamptz[]
  ) as k (account_id, room_id, after)`;
  const strokes = await sql<Versioned<StrokeEventRow>>`
    select s.* from ${keys} cross join lateral (
      select room_id, ${sql.raw(STROKE_EVENT_COLUMNS.join())}, ${sql.raw(ROW_VERSION)} as row_version
      from strokes
      where account_id = k.account_id and room_id = k.room_id and placed_at > k.after
      order by placed_at, id limit ${most + 1}
    ) s
  `.execute(db);
  const services = await sql<Versioned<ServiceEventRow>>`
    select s.* from ${keys} cross join lateral (
      select room_id, id, at, kind, side, ${sql.raw(ROW_VERSION)} as row_version from services
      where account_id = k.account_id and room_id = k.room_id and date_trunc('milliseconds', at) > k.after
      order by at, id
    ) s
  `.execute(db);
  const strokesOf = byRoom(strokes.rows);
  const servicesOf = byRoom(services.rows);
  return rooms.flatMap((dirty) => {
    const own = strokesOf.get(dirty.room.roomId) ?? [];
    const work = servicesOf.get(dirty.room.roomId) ?? [];
    if (own.length > most || own.some(({ analysis }) => analysis === null)) return [];
    const events = [...own.map(strokeEvent), ...work.map(serviceEvent)].sort(orderEvents);
    return [{ dirty, events, fingerprint: fingerprintOf([...own, ...work]) }];
  });
}

/** Of versions in the order in which they were read: strokes, then services, each by time and id. */
function fingerprintOf(rows: readonly { readonly row_version: string }[]): string {
  return rows.map(({ row_version }) => row_version).join(',');
}

function byRoom<Row extends { readonly room_id: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const rooms = new Map<string, Row[]>();
  for (const row of rows) {
    const own = rooms.get(row.room_id);
    if (own === undefined) rooms.set(row.room_id, [row]);
    else own.push(row);
  }
  return rooms;
}
