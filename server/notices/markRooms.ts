import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import type { RoomKey } from '../database/roomChannel.ts';
import { placeOfSeverity } from '../results/severityOrder.ts';

/** What holds for less than this is told to nobody: late strokes may yet explain it. */
export const SETTLE_S = 60;

/**
 * Marks rooms whose warnings differ from what was told of them, to be looked at when they had time to settle. In the
 * transaction that changed the warnings: whoever looks at such a room right now is waited for, as it may not have seen
 * the change.
 */
export async function markRooms(trx: Kysely<Tables>, rooms: readonly RoomKey[]): Promise<void> {
  await sql`
    insert into rooms_to_tell as r (account_id, room_id, due_at)
    select k.account_id, k.room_id, now() + make_interval(secs => ${SETTLE_S})
    from unnest(
      ${rooms.map(({ accountId }) => accountId)}::uuid[], ${rooms.map(({ roomId }) => roomId)}::uuid[]
    ) as k (account_id, room_id)
    where exists (
      select from warnings w
      left join told_warnings t on t.account_id = w.account_id and t.room_id = w.room_id and t.warning_id = w.id
      where w.account_id = k.account_id and w.room_id = k.room_id and case
        when t.warning_id is null then w.cleared_at is null
        when t.open <> (w.cleared_at is null) then true
        else t.open and ${placeOfSeverity(sql.ref('w.severity'))} > ${placeOfSeverity(sql.ref('t.severity'))}
      end
    ) or exists (
      select from told_warnings t
      where t.account_id = k.account_id and t.room_id = k.room_id and t.open and t.missing_since is null
        and not exists (
          select from warnings w where w.account_id = t.account_id and w.id = t.warning_id
        )
    )
    order by k.account_id, k.room_id
    on conflict (account_id, room_id) do update set due_at = least(r.due_at, excluded.due_at),
      -- One that waits for what stays away begins anew.
      marked_at = case when r.due_at > excluded.due_at then excluded.marked_at else r.marked_at end
  `.execute(trx);
}
