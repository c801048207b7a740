/** The Postgres channel on which every process learns that pieces came; the payload is `<account> <room>`. */
export const PIECES_CHANNEL = 'live_pieces';

/**
 * Keeps pieces of any number of strokes, all or nothing, in one round trip: $1 the pieces as JSON, $2 their samples
 * one after the other. The rows answered name the strokes whose pieces were kept; those of the others were not: their
 * stroke was taken over by another link, is stored already, or is gone with its room or its logger.
 *
 * The rows of strokes are locked in one order, so that two such statements never wait for each other in a ring. Pieces
 * of one stroke continue those before them without a gap: whoever calls sees to that.
 *
 * Each is looked up by its own keys, which `lateral` and `offset 0` hold the planner to: while these tables are small and
 * new to it, it takes them for single rows and joins them by the account alone, 200 strokes to 200 loggers to all rooms.
 */
export const PIECE_STATEMENT = `
with input as (
  select * from json_to_recordset($1::json) as x (
    account_id uuid, stroke_id uuid, link_id uuid, seq integer, side smallint, first_sample integer,
    from_byte integer, bytes integer
  )
), runs as (
  select account_id, stroke_id, link_id, min(seq) as first_seq, max(seq) as last_seq
  from input group by account_id, stroke_id, link_id
), held as (
  select s.account_id, s.id, s.room_id, r.last_seq
  from (select * from runs order by account_id, stroke_id) r
  cross join lateral (
    select s.account_id, s.id, s.room_id from live_strokes s
    where s.account_id = r.account_id and s.id = r.stroke_id and s.link_id = r.link_id
      and s.next_seq = r.first_seq and s.stored_at is null
      and exists (select from loggers l where l.account_id = s.account_id and l.id = s.logger_id offset 0)
      and exists (
        select from rooms m where m.account_id = s.account_id and m.id = s.room_id and m.deleted_at is null offset 0
      )
    for update of s
  ) s
), advanced as (
  update live_strokes s set next_seq = h.last_seq + 1, touched_at = now()
  from held h where s.account_id = h.account_id and s.id = h.id
  returning s.account_id, s.id, s.link_id, s.room_id
), kept as (
  insert into live_pieces (account_id, stroke_id, seq, side, first_sample, samples)
  select i.account_id, i.stroke_id, i.seq, i.side, i.first_sample,
    substring($2::bytea from i.from_byte + 1 for i.bytes)
  from input i
  join advanced a on a.account_id = i.account_id and a.id = i.stroke_id and a.link_id = i.link_id
), told as (
  select count(pg_notify('${PIECES_CHANNEL}', account_id || ' ' || room_id)) from advanced
)
select a.id, a.link_id from told cross join advanced a`;
