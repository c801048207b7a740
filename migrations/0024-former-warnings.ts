import { type Kysely, sql } from 'kysely';

/**
 * The id of a warning follows from the stroke that opened it, and another stroke opens it once an earlier one arrives
 * late: whoever holds the id of before, from a list, a message or a link, is led to the warning that has its place.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  `create table former_warnings (
    account_id uuid not null,
    id uuid not null,
    room_id uuid not null,
    kind text not null,
    side text,
    direction text,
    opened_at timestamptz not null,
    last_at timestamptz not null,
    primary key (account_id, id),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,
  'create index former_warnings_by_room on former_warnings (account_id, room_id)',
  "select protect_by_account('former_warnings')",
  `comment on table former_warnings is
    'what stood as a warning until the history of its room was gone through anew and opened it elsewhere, or nowhere'`,
  "comment on column former_warnings.last_at is 'when it was cleared, else its latest stroke'",
];
