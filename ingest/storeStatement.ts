import { placedAt, placedBy } from './placing.ts';

/**
 * Stores any number of strokes, their samples and their rooms' need of analysis, all or nothing, in one round trip:
 * $1 the strokes as JSON, $2 their packed samples one after the other.
 *
 * Strokes go in by order of sender and key, rooms by their own, so that two such statements at once never wait for
 * each other in a ring. Of the same key twice in one statement the first counts. The rows answered say whether the room is
 * one that the sender may send to, whether it has those sides, and the id if it was stored here. A known stroke without an
 * id is an earlier one sent again, or one that was removed. This statement does not look into `strokes` for those: its plan
 * is kept, and one made while that table was small would be slow later.
 *
 * A stroke may bring its analysis, by what its sender knows of the room (`measured_by`); where that is not what
 * it is now, the room is answered. An analysis may be stored that was overtaken while this statement waited for the
 * room's progress: the last part, which holds it, marks it to be made again.
 */
export const STORE_STATEMENT = `
with input as (
  select * from json_to_recordset($1::json) as x (
    n integer, account_id uuid, id uuid, room_id uuid, coach_id uuid, sender_id uuid, logger_id uuid, key text,
    direction text, started_at timestamptz, recorded_sides text[], has_supply boolean, ambient_c double precision,
    side_rates_hz double precision[], supply_rate_hz double precision,
    trace_from integer, trace_bytes integer, measured_by text, analysis jsonb
  )
), known as (
  select i.*,
    r.id is not null and (i.coach_id is null or i.coach_id = r.coach_id) as room_known,
    array(select side from unnest(i.recorded_sides) as side where side <> all (r.sides)) as unknown_sides,
    (select true from removed_strokes d
      where d.account_id = i.account_id and d.sender_id = i.sender_id and d.key = i.key) is true as removed,
    p.measured_by as measured_by_now,
    case when p.measured_by is not null and p.measured_by is distinct from i.measured_by then to_json(r) end as room
  from input i
  left join rooms r on r.account_id = i.account_id and r.id = i.room_id
  left join room_progress p on p.account_id = r.account_id and p.room_id = r.id
), accepted as (
  select distinct on (account_id, sender_id, key) * from known
  where room_known and unknown_sides = '{}' and not removed
  order by account_id, sender_id, key, n
), stored as (
  insert into strokes (account_id, id, room_id, sender_id, logger_id, key, direction, started_at, placed_at, placed_by,
    recorded_sides, side_rates_hz, has_supply, supply_rate_hz, ambient_c, analysis)
  select a.account_id, a.id, a.room_id, a.sender_id, a.logger_id, a.key, a.direction, a.started_at,
    ${placedAt('a.started_at', 'l.clock_offset_s', 'now()')}, ${placedBy('a.started_at', 'l.clock_offset_s', 'now()')},
    a.recorded_sides, a.side_rates_hz, a.has_supply, a.supply_rate_hz, a.ambient_c, a.analysis
  from accepted a left join loggers l on l.account_id = a.account_id and l.id = a.logger_id
  order by a.account_id, a.sender_id, a.key
  on conflict do nothing
  returning account_id, id, room_id, placed_at, received_at
), kept as (
  insert into traces (account_id, stroke_id, received_at, trace)
  select s.account_id, s.id, s.received_at, substring($2::bytea from a.trace_from + 1 for a.trace_bytes)
  from stored s join accepted a on a.account_id = s.account_id and a.id = s.id
), progress as (
  insert into room_progress as p (account_id, room_id, dirty_from, revision, measured_by)
  select account_id, room_id, min(placed_at), 1,
    case when min(measured_by) = max(measured_by) then min(measured_by) when min(measured_by) is not null then '' end
  from (
    select s.account_id, s.room_id, s.placed_at, case when a.analysis is not null then a.measured_by end as measured_by
    from stored s join accepted a on a.account_id = s.account_id and a.id = s.id
  ) measured
  group by account_id, room_id order by account_id, room_id
  on conflict (account_id, room_id) do update
  set dirty_from = least(p.dirty_from, excluded.dirty_from), revision = p.revision + 1,
    remeasure_from = case when excluded.measured_by is null or excluded.measured_by = p.measured_by
      then p.remeasure_from else least(p.remeasure_from, excluded.dirty_from) end
)
select k.n, k.room_known, k.unknown_sides, s.id, k.measured_by_now, k.room
from known k
left join accepted a on a.n = k.n
left join stored s on s.account_id = a.account_id and s.id = a.id`;
