import { type Kysely, sql } from 'kysely';

/**
 * The first schema. Every table that grows has `account_id` first in its keys, so that it can be distributed by it;
 * `directory` and `sign_in_failures`, which are asked before an account is known, are the exceptions.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  `create table accounts (
    id uuid primary key,
    name text not null,
    created_at timestamptz not null default now()
  )`,
  `create table people (
    account_id uuid not null references accounts (id) on delete cascade,
    id uuid not null,
    email text not null,
    name text not null,
    role text not null check (role in ('dealer', 'technician', 'owner')),
    password_hash text,
    created_at timestamptz not null default now(),
    primary key (account_id, id)
  )`,
  `create table directory (
    email text primary key check (email = lower(email)),
    account_id uuid not null,
    person_id uuid not null,
    foreign key (account_id, person_id) references people (account_id, id) on delete cascade
  )`,
  `create table sign_in_failures (
    email text not null,
    failed_at timestamptz not null default now()
  )`,
  'create index sign_in_failures_by_email on sign_in_failures (email, failed_at)',
  `create table sessions (
    account_id uuid not null,
    token_hash bytea not null,
    person_id uuid not null,
    created_at timestamptz not null default now(),
    last_seen_at timestamptz not null default now(),
    expires_at timestamptz not null,
    primary key (account_id, token_hash),
    foreign key (account_id, person_id) references people (account_id, id) on delete cascade
  )`,
  `create table coaches (
    account_id uuid not null references accounts (id) on delete cascade,
    id uuid not null,
    name text not null,
    model text,
    year integer,
    notes text,
    created_at timestamptz not null default now(),
    updated_at timestamptz not null default now(),
    primary key (account_id, id)
  )`,
  `create table rooms (
    account_id uuid not null,
    id uuid not null,
    coach_id uuid not null,
    name text not null,
    drive text not null check (drive in ('in-wall', 'through-frame', 'cable', 'other')),
    sides text[] not null check (cardinality(sides) > 0),
    travel_metres double precision,
    gear_teeth integer,
    rack_pitch_mm double precision,
    rated_amps double precision,
    nominal_volts double precision not null default 12,
    positive_direction text not null default 'extend' check (positive_direction in ('extend', 'retract')),
    created_at timestamptz not null default now(),
    updated_at timestamptz not null default now(),
    primary key (account_id, id),
    foreign key (account_id, coach_id) references coaches (account_id, id) on delete cascade
  )`,
  'create index rooms_by_coach on rooms (account_id, coach_id, id)',
  `create table loggers (
    account_id uuid not null,
    id uuid not null,
    coach_id uuid not null,
    name text not null,
    sensor text not null check (sensor in ('clamp', 'shunt')),
    token_hash bytea not null,
    last_seen_at timestamptz,
    created_at timestamptz not null default now(),
    updated_at timestamptz not null default now(),
    primary key (account_id, id),
    unique (account_id, token_hash),
    foreign key (account_id, coach_id) references coaches (account_id, id) on delete cascade
  )`,
  'create index loggers_by_coach on loggers (account_id, coach_id, id)',
  `create table services (
    account_id uuid not null,
    id uuid not null,
    room_id uuid not null,
    kind text not null,
    at timestamptz not null,
    side text,
    notes text,
    recorded_by uuid,
    created_at timestamptz not null default now(),
    updated_at timestamptz not null default now(),
    primary key (account_id, id),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,
  'create index services_by_room on services (account_id, room_id, at, id)',
  `create table strokes (
    account_id uuid not null,
    id uuid not null,
    room_id uuid not null,
    sender_id uuid not null,
    logger_id uuid,
    key text not null,
    direction text check (direction in ('extend', 'retract')),
    started_at timestamptz not null,
    received_at timestamptz not null default now(),
    recorded_sides text[] not null,
    has_supply boolean not null,
    ambient_c double precision,
    excluded boolean not null default false,
    note text,
    analysis jsonb,
    primary key (account_id, id),
    unique (account_id, sender_id, key),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,
  'create index strokes_by_room on strokes (account_id, room_id, started_at, id)',
  `create table traces (
    account_id uuid not null,
    stroke_id uuid not null,
    received_at timestamptz not null,
    trace bytea not null,
    primary key (account_id, stroke_id, received_at),
    foreign key (account_id, stroke_id) references strokes (account_id, id) on delete cascade
  ) partition by range (received_at)`,
  'alter table traces alter column trace set storage external',
  'create table traces_default partition of traces default',
  `create table measures (
    account_id uuid not null,
    room_id uuid not null,
    side text not null,
    direction text not null,
    started_at timestamptz not null,
    stroke_id uuid not null,
    value double precision[] not null,
    expected double precision[] not null,
    adjusted double precision[] not null,
    beyond boolean[] not null,
    primary key (account_id, room_id, side, direction, started_at, stroke_id),
    foreign key (account_id, stroke_id) references strokes (account_id, id) on delete cascade
  )`,
  'create index measures_by_stroke on measures (account_id, stroke_id)',
  `create table room_progress (
    account_id uuid not null,
    room_id uuid not null,
    dirty_from timestamptz,
    revision bigint not null default 0,
    summary jsonb,
    limits jsonb,
    primary key (account_id, room_id),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,
  'create index room_progress_dirty on room_progress (account_id, room_id) where dirty_from is not null',
  `create table room_checkpoints (
    account_id uuid not null,
    room_id uuid not null,
    at timestamptz not null,
    events integer not null,
    analysis_version integer not null,
    state jsonb not null,
    primary key (account_id, room_id, at),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,
  `create table warnings (
    account_id uuid not null,
    id uuid not null,
    room_id uuid not null,
    kind text not null,
    severity text not null check (severity in ('watch', 'service', 'stop')),
    side text,
    direction text,
    position double precision,
    pattern text,
    opened_at timestamptz not null,
    cleared_at timestamptz,
    first_stroke_id uuid not null,
    latest_stroke_id uuid not null,
    headline text not null,
    evidence jsonb not null,
    checks jsonb not null,
    cautions jsonb not null,
    acknowledged_at timestamptz,
    acknowledged_by uuid,
    acknowledgement_note text,
    primary key (account_id, id),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,
  'create index warnings_by_room on warnings (account_id, room_id, opened_at, id)',
  'create index warnings_by_account on warnings (account_id, opened_at, id)',
  `create table idempotency_keys (
    account_id uuid not null references accounts (id) on delete cascade,
    caller_id uuid not null,
    key_hash bytea not null,
    request_hash bytea not null,
    answer bytea,
    created_at timestamptz not null default now(),
    primary key (account_id, caller_id, key_hash)
  )`,
  "comment on column rooms.travel_metres is 'metres from fully in to fully out'",
  "comment on column rooms.rack_pitch_mm is 'millimetres from tooth to tooth of the rack'",
  "comment on column rooms.rated_amps is 'amperes that a healthy side stays under while running'",
  "comment on column rooms.nominal_volts is 'volts'",
  "comment on column strokes.ambient_c is 'degrees Celsius'",
  "comment on column strokes.direction is 'as given, else told by the sign of the current; null: cannot be told'",
  "comment on column measures.value is 'one value a measure, in the order of analysis/measures.ts; SI units'",
  "comment on column room_progress.dirty_from is 'results from this time on are still to be made; null: none'",
  "comment on column traces.trace is 'the very samples; layout in ingest/traceCodec.ts'",
];
