import { type Kysely, sql } from 'kysely';

/**
 * What a person removed stays removed: a logger that never heard its answer sends a stroke again, days later too, and
 * its key must be answered as that of a stroke which is there. A key goes from here with the room or the logger.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  `create table removed_strokes (
    account_id uuid not null,
    sender_id uuid not null,
    key text not null,
    stroke_id uuid not null,
    room_id uuid not null,
    logger_id uuid,
    removed_at timestamptz not null default now(),
    primary key (account_id, sender_id, key),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade,
    foreign key (account_id, logger_id) references loggers (account_id, id) on delete cascade
  )`,
  'create index removed_strokes_by_room on removed_strokes (account_id, room_id)',
  'create index removed_strokes_by_logger on removed_strokes (account_id, logger_id)',
  "select protect_by_account('removed_strokes')",
  `create policy for_senders on removed_strokes for select
    using (sender_id = any ((select senders_in_scope())::uuid[]))`,
  // Whoever stores a stroke while it is being removed waits for that, and then saw nothing of it when it began. What is
  // asked here sees it. Asked row by row, as the plan is kept: one made for a small table would read all of a large one.
  `create function refuse_removed_strokes() returns trigger language plpgsql as $$
    begin
      if exists (
        select from stored s where (
          select true from removed_strokes r
          where r.account_id = s.account_id and r.sender_id = s.sender_id and r.key = s.key
        )
      ) then
        raise exception 'A stroke was removed while it was sent again.' using errcode = 'serialization_failure';
      end if;
      return null;
    end $$`,
  `create trigger removed_stay_removed after insert on strokes referencing new table as stored
    for each statement execute function refuse_removed_strokes()`,
  "comment on table removed_strokes is 'what people removed, so that it does not come back when it is sent again'",
  "comment on column removed_strokes.logger_id is 'null: a person sent it'",
];
