import { type Kysely, sql } from 'kysely';

/**
 * Where a stroke stands in its room's history, told apart from what its sender's clock said; and how long an account
 * keeps its samples.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  'alter table loggers add column clock_offset_s double precision not null default 0',
  `alter table strokes
    add column placed_at timestamptz,
    add column placed_by text not null default 'sender' check (placed_by in ('sender', 'arrival', 'person'))`,
  // Strokes of before whose dates cannot be are placed by their arrival too, and their rooms gone through anew.
  `update strokes set
    placed_by = case when started_at >= '2015-01-01T00:00:00Z' and started_at <= received_at + interval '24 hours'
      then 'sender' else 'arrival' end,
    placed_at = case when started_at >= '2015-01-01T00:00:00Z' and started_at <= received_at + interval '24 hours'
      then started_at else date_trunc('milliseconds', received_at) end`,
  'alter table strokes alter column placed_at set not null',
  `update room_progress p set dirty_from = '0001-01-01T00:00:00Z', revision = revision + 1
    where exists (
      select from strokes s
      where s.account_id = p.account_id and s.room_id = p.room_id and s.placed_by = 'arrival'
    )`,
  'drop index strokes_by_room',
  'create index strokes_by_room on strokes (account_id, room_id, placed_at, id)',
  'alter table measures rename column started_at to placed_at',
  'alter table accounts add column trace_months integer check (trace_months >= 1)',
  `create table retention_runs (
    account_id uuid not null references accounts (id) on delete cascade,
    id uuid not null,
    ran_at timestamptz not null,
    trace_months integer not null,
    removed_before timestamptz not null,
    traces_before bigint not null,
    traces_removed bigint not null,
    bytes_removed bigint not null,
    traces_after bigint not null,
    primary key (account_id, id)
  )`,
  'create index retention_runs_by_removed on retention_runs (account_id, removed_before)',
  "select protect_by_account('retention_runs')",
  // Whoever sends reads its own offset.
  'create policy for_senders on loggers for select using (id = any ((select senders_in_scope())::uuid[]))',
  "comment on column loggers.clock_offset_s is 'seconds to add to what its clock says'",
  "comment on column strokes.started_at is 'as sent, or as a person corrected it'",
  "comment on column strokes.placed_at is 'its place in the history of its room, whole milliseconds'",
  "comment on column strokes.placed_by is 'whose time it is: arrival where the date sent cannot be'",
  "comment on column measures.placed_at is 'of the stroke'",
  "comment on column accounts.trace_months is 'samples are kept for so many months after arrival; null: for ever'",
  "comment on column retention_runs.removed_before is 'samples that arrived before it were removed'",
  "comment on column retention_runs.traces_before is 'traces of the account, counted before the removal'",
  "comment on column retention_runs.traces_after is 'the same, counted after it'",
];
