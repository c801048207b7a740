import { placedAt, placedBy } from './placing.ts';

/**
 * Stores any number of strokes, their samples and their rooms' need of analysis, all or nothing, in one round trip:
 * $1 the strokes as JSON, $2 their packed samples one after the other.
 *
 * Strokes go in by order of sender and key, rooms by their own, so that two such statements at once never wait for
 * each other in a ring. Of the same key twice in one statement the first counts. The rows answered say
 * whether the room is one that the sender may send to, whether it has those sides, and the id if it was stored here;
 * a known stroke without an id is an earlier one sent again. There is no look into `strokes` for those: the plan of
 * this statement is kept, and one made while that table was small would be slow later.
 */
export const STORE_STATEMENT = `
with input as (
  select * from json_to_recordset($1::json) as x (
    n integer, account_id uuid, id uuid, room_id uuid, coach_id uuid, sender_id uuid, logger_id uuid, key text,
    direction text, started_at timestamptz, recorded_sides text[], has_supply boolean, ambient_c double precision,
    trace_from integer, trace_bytes integer
  )
), known as (
  select i.*,
    r.id is not null and (i.coach_id is null or i.coach_id = r.coach_id) as room_known,
    array(select side from unnest(i.recorded_sides) as side where side <> all (r.sides)) as unknown_sides
  from input i left join rooms r on r.account_id = i.account_id and r.id = i.room_id
), accepted as (
  select distinct on (account_id, sender_id, key) * from known
  where room_known and unknown_sides = '{}'
  order by account_id, sender_id, key, n
), stored as (
  insert into strokes (account_id, id, room_id, sender_id, logger_id, key, direction, started_at, placed_at, placed_by,
    recorded_sides, has_supply, ambient_c)
  select a.account_id, a.id, a.room_id, a.sender_id, a.logger_id, a.key, a.direction, a.started_at,
    ${placedAt('a.started_at', 'l.clock_offset_s', 'now()')}, ${placedBy('a.started_at', 'l.clock_offset_s', 'now()')},
    a.recorded_sides, a.has_supply, a.ambient_c
  from accepted a left join loggers l on l.account_id = a.account_id and l.id = a.logger_id
  order by a.account_id, a.sender_id, a.key
  on conflict do nothing
  returning account_id, id, room_id, placed_at, received_at
), kept as (
  insert into traces (account_id, stroke_id, received_at, trace)
  select s.account_id, s.id, s.received_at, substring($2::bytea from a.trace_from + 1 for a.trace_bytes)
  from stored s join accepted a on a.account_id = s.account_id and a.id = s.id
), progress as (
  insert into room_progress as p (account_id, room_id, dirty_from, revision)
  select account_id, room_id, min(placed_at), 1 from stored group by account_id, room_id order by account_id, room_id
  on conflict (account_id, room_id) do update
  set dirty_from = least(p.dirty_from, excluded.dirty_from), revision = p.revision + 1
)
select k.n, k.room_known, k.unknown_sides, s.id
from known k
left join accepted a on a.n = k.n
left join stored s on s.account_id = a.account_id and s.id = a.id`;
