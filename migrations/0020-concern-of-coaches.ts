import { type Kysely, sql } from 'kysely';

/**
 * Each coach knows the place of its most worrying room, so that a page of the lot is read from an index in its order,
 * however many coaches there are. Triggers keep it, whatever path changes a verdict or a room.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

/** After those of every verdict. */
const WITHOUT_ROOMS = 7;

const WORST = `select coalesce(min(concern_of(o.verdict)), ${WITHOUT_ROOMS})
  from rooms r left join room_results o on o.account_id = r.account_id and o.room_id = r.id`;

const STATEMENTS = [
  // A room of which nothing was found yet is learning.
  `create function concern_of(verdict text) returns smallint language sql immutable as $$
    select array_position(
      array['stop', 'service', 'watch', 'unknown', 'learning', 'clear'], coalesce(verdict, 'learning')
    )::smallint $$`,
  "comment on function concern_of is 'the place of a verdict in the order of concern, from 1'",
  `alter table coaches add column concern smallint not null default ${WITHOUT_ROOMS}`,
  "comment on column coaches.concern is 'concern_of its most worrying room; behind all of them without a room'",
  `update coaches c set concern = (${WORST} where r.account_id = c.account_id and r.coach_id = c.id)`,
  'create index coaches_by_concern on coaches (account_id, concern, name, id)',
  'create index coaches_by_name on coaches (account_id, name, id)',
  // Whoever changes another room of the coach waits for the row, and only then looks at what the rooms are.
  `create function weigh_coach(of_account uuid, coach uuid) returns void language plpgsql as $$
    begin
      perform from coaches where account_id = of_account and id = coach for no key update;
      update coaches c set concern = w.worst
      from (${WORST} where r.account_id = of_account and r.coach_id = coach) w (worst)
      where c.account_id = of_account and c.id = coach and c.concern <> w.worst;
    end $$`,
  `create function weigh_coach_of_room() returns trigger language plpgsql as $$
    declare touched rooms := coalesce(new, old);
    begin
      perform weigh_coach(touched.account_id, touched.coach_id);
      return null;
    end $$`,
  `create function weigh_coach_of_results() returns trigger language plpgsql as $$
    begin
      perform weigh_coach(r.account_id, r.coach_id) from rooms r
      where r.account_id = new.account_id and r.id = new.room_id;
      return null;
    end $$`,
  `create trigger weigh_coach after insert or delete on rooms
    for each row execute function weigh_coach_of_room()`,
  `create trigger weigh_coach_at_first after insert on room_results
    for each row execute function weigh_coach_of_results()`,
  `create trigger weigh_coach after update on room_results
    for each row when (old.verdict is distinct from new.verdict) execute function weigh_coach_of_results()`,
];
