import { type Kysely, type Selectable, sql } from 'kysely';
import type { RoomEvent, ServiceEvent } from '../../../analysis/history.ts';
import { orderEvents } from '../../../analysis/room/fold.ts';
import type { ServiceKind } from '../../../analysis/trace.ts';
import type { Tables } from '../../../migrations/tables.ts';
import type { ServiceTable } from '../../../migrations/thingTables.ts';
import { STROKE_EVENT_COLUMNS, strokeEvent } from '../../results/strokeEvent.ts';

/** Strokes read at a time: their analyses are some kilobytes each. */
const STROKES_AT_A_TIME = 500;

/**
 * The room's events after a time (all of them for null), in the one order of events, some hundred strokes at a time.
 * Throws `UnmeasuredStroke` on meeting one.
 */
export async function* roomEvents(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
  after: Date | null,
): AsyncGenerator<RoomEvent[]> {
  const services = await readServices(db, accountId, roomId, after);
  let last: { at: Date; id: string } | null = after && {
    at: after,
    id: 'ffffffff-ffff-ffff-ffff-ffffffffffff',
  };
  for (;;) {
    const strokes = await readStrokes(db, accountId, roomId, last);
    const full = strokes.length === STROKES_AT_A_TIME;
    const until = full ? strokes[strokes.length - 1].atMs : Number.POSITIVE_INFINITY;
    const due = services.splice(0, services.findLastIndex((service) => service.atMs <= until) + 1);
    yield [...strokes, ...due].sort(orderEvents);
    if (!full) return;
    const end = strokes[strokes.length - 1];
    last = { at: new Date(end.atMs), id: end.strokeId };
  }
}

async function readStrokes(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
  after: { at: Date; id: string } | null,
) {
  const rows = await db
    .selectFrom('strokes')
    .select(STROKE_EVENT_COLUMNS)
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .$if(after !== null, (query) =>
      query.where(
        sql<boolean>`(placed_at, id) > (${after?.at.toISOString()}::timestamptz, ${after?.id}::uuid)`,
      ),
    )
    .orderBy('placed_at')
    .orderBy('id')
    .limit(STROKES_AT_A_TIME)
    .execute();
  return rows.map(strokeEvent);
}

async function readServices(db: Kysely<Tables>, accountId: string, roomId: string, after: Date | null) {
  const rows = await db
    .selectFrom('services')
    .select(['id', 'at', 'kind', 'side'])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    // Events are told apart to the millisecond; a service may have been given to the microsecond.
    .$if(after !== null, (query) =>
      query.where(sql<boolean>`date_trunc('milliseconds', at) > ${after?.toISOString()}::timestamptz`),
    )
    .orderBy('at')
    .execute();
  return rows.map(serviceEvent).sort(orderEvents);
}

export type ServiceEventRow = Pick<Selectable<ServiceTable>, 'id' | 'at' | 'kind' | 'side'>;

export function serviceEvent(row: ServiceEventRow): ServiceEvent {
  return {
    type: 'service',
    serviceId: row.id,
    atMs: row.at.getTime(),
    // The kinds are checked on the way in.
    kind: row.kind as ServiceKind,
    side: row.side,
  };
}
