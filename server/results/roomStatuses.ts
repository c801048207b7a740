import { type Kysely, type Selectable, sql } from 'kysely';
import type { RoomSummary } from '../../analysis/history.ts';
import { beginRoom, summariseRoom } from '../../analysis/room/fold.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { RoomTable } from '../../migrations/thingTables.ts';
import type { AccountInScope } from '../access/scopes/scope.ts';
import type { RoomStatus } from '../schemas/results.ts';
import { describeRoom } from '../things/describeRoom.ts';

/** Whose rooms are asked for, and how whoever asks sees them. */
export interface RoomsInSight {
  readonly accountId: AccountInScope;
  /** A grant shows them: rooms beside them do not exist for whoever asks. */
  readonly byGrant: boolean;
}

/**
 * What stands for each of the rooms, in their order. `pending` counts the strokes whose results are still to be made,
 * because they are new or because something before them changed. While a change after the last stroke is being gone through (a
 * service just recorded) it is 1. At 0 every answer is complete.
 */
export async function roomStatuses(
  db: Kysely<Tables>,
  { accountId, byGrant }: RoomsInSight,
  rooms: readonly Selectable<RoomTable>[],
): Promise<RoomStatus[]> {
  if (rooms.length === 0) return [];
  const { rows } = await sql<StatusRow>`
    select r.id, o.summary, coalesce(s.strokes, 0)::integer as strokes, s.last_at,
      case when p.dirty_from is null then 0 else greatest(s.pending, 1) end::integer as pending,
      (
        select count(*) from warnings w
        where w.account_id = ${accountId} and w.room_id = r.id
          and w.cleared_at is null and w.acknowledged_at is null
      )::integer as open_warnings
    from unnest(${rooms.map((room) => room.id)}::uuid[]) as r (id)
    left join room_progress p on p.account_id = ${accountId} and p.room_id = r.id
    left join room_results o on o.account_id = ${accountId} and o.room_id = r.id
    left join lateral (
      select count(*) as strokes, max(placed_at) as last_at,
        count(*) filter (where placed_at >= p.dirty_from) as pending
      from strokes where account_id = ${accountId} and room_id = r.id
    ) s on true
  `.execute(db);
  const byId = new Map(rows.map((row) => [row.id, row]));
  const statuses = rooms.map((room) => statusOf(room, byId.get(room.id)));
  return byGrant ? statuses.map(withoutLenders) : statuses;
}

interface StatusRow {
  readonly id: string;
  /** Written by `writeHistory` and nobody else. */
  readonly summary: RoomSummary | null;
  readonly strokes: number;
  readonly last_at: Date | null;
  readonly pending: number;
  readonly open_warnings: number;
}

function statusOf(room: Selectable<RoomTable>, row: StatusRow | undefined): RoomStatus {
  const summary = row?.summary ?? summariseRoom(beginRoom(room.id, describeRoom(room)));
  const { verdict, headline, borrowed = null } = summary;
  return {
    verdict,
    headline,
    strokes: row?.strokes ?? 0,
    openWarnings: row?.open_warnings ?? 0,
    lastStrokeAt: row?.last_at?.toISOString() ?? null,
    pending: row?.pending ?? 0,
    borrowed,
  };
}

/**
 * A room's status as it is told to whoever sees it by a grant. The rooms that lend it their normal are of coaches that do
 * not exist for that person (contract, section 8), nor does their number: what is borrowed is told, not from how many.
 */
export function withoutLenders(status: RoomStatus): RoomStatus {
  const { borrowed } = status;
  return borrowed === null ? status : { ...status, borrowed: { share: borrowed.share, rooms: null } };
}
