import { type Kysely, sql } from 'kysely';

/**
 * What was found of a room, apart from how far the analysis has come with it. The latter is written anew with every
 * stroke, and its rows stay in their pages if they are small; what was found is long, is written once a round, and
 * stands outside its rows, so that the lot can go through the verdicts of all rooms in a few pages.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  `create table room_results (
    account_id uuid not null,
    room_id uuid not null,
    verdict text generated always as (summary ->> 'verdict') stored,
    summary jsonb not null,
    limits jsonb,
    primary key (account_id, room_id),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  ) with (toast_tuple_target = 128)`,
  `insert into room_results (account_id, room_id, summary, limits)
    select account_id, room_id, summary, limits from room_progress where summary is not null`,
  "comment on column room_results.summary is 'RoomSummary of analysis/history.ts'",
  "select protect_by_account('room_results')",
  'alter table room_progress drop column verdict, drop column summary, drop column limits',
  'alter table room_progress set (fillfactor = 50)',
];
