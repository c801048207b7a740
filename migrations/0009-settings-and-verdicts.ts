import { type Kysely, sql } from 'kysely';

/** How each person wants things shown, when they last looked over the coaches, and when which verdict was said. */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  `alter table people
    add column units text check (units in ('metric', 'us')),
    add column time_zone text,
    add column locale text,
    add column looked_at timestamptz,
    add column looked_before_at timestamptz`,
  "comment on column people.units is 'null: as is usual where the device is'",
  "comment on column people.time_zone is 'by its IANA name; null: that of the device'",
  "comment on column people.locale is 'a BCP 47 language tag; null: that of the device'",
  "comment on column people.looked_at is 'when the overview was last looked at'",
  "comment on column people.looked_before_at is 'when it was last looked at on an earlier visit'",
  `create table verdict_changes (
    account_id uuid not null,
    room_id uuid not null,
    changed_at timestamptz not null default clock_timestamp(),
    verdict_before text not null,
    verdict text not null,
    primary key (account_id, room_id, changed_at),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,
  "select protect_by_account('verdict_changes')",
  'create index verdict_changes_by_time on verdict_changes (account_id, changed_at)',
  "comment on column verdict_changes.changed_at is 'when it was worked out, not when the stroke ran'",
];
