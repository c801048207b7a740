import { type Kysely, sql } from 'kysely';

/** Telling people and their programs of warnings: what each wants to be told, what was told, and what is on its way. */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const SEVERITY = "in ('watch', 'service', 'stop')";
const EVENTS = `('warning.opened', 'warning.worse', 'warning.cleared', 'logger.silent')`;

/** A trigger that notes what a person did with a webhook (migration 0012). */
const notes = (on: string, act: string, when = 'true') =>
  `create trigger note_${act.replaceAll('-', '_')} after ${on} on webhooks for each row
    when (pg_trigger_depth() = 0 and current_setting('slideload.person', true) <> '' and ${when})
    execute function note_act('${act}', 'none', 'url,events,severity,enabled')`;

const STATEMENTS = [
  `alter table people
    add column notices_from text check (notices_from ${SEVERITY}),
    add column notices_cleared boolean not null default true,
    add column quiet_from time,
    add column quiet_to time,
    add column digest boolean not null default false,
    add column silent_after_days smallint check (silent_after_days between 1 and 365),
    add column mail_paused_at timestamptz,
    add column mail_paused_because text,
    add column unsubscribe_key bytea not null default uuid_send(gen_random_uuid()) || uuid_send(gen_random_uuid()),
    add check ((quiet_from is null) = (quiet_to is null)),
    add check ((mail_paused_at is null) = (mail_paused_because is null))`,
  "comment on column people.notices_from is 'the least severity of warnings that it is mailed; null: none'",
  "comment on column people.quiet_from is 'nothing is mailed from then to quiet_to, in its time zone'",
  "comment on column people.silent_after_days is 'mailed of loggers not heard for so long; null: of none'",
  "comment on column people.mail_paused_at is 'its mailbox was refused for good then: nothing is mailed until it says so'",
  "comment on column people.unsubscribe_key is 'signs the links by which its mails end'",

  `create table told_warnings (
    account_id uuid not null,
    room_id uuid not null,
    warning_id uuid not null,
    kind text not null,
    side text,
    direction text,
    opened_at timestamptz not null,
    cleared_at timestamptz,
    severity text not null check (severity ${SEVERITY}),
    open boolean not null,
    revision integer not null default 0,
    missing_since timestamptz,
    primary key (account_id, room_id, warning_id),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,
  "comment on column told_warnings.severity is 'the highest that was told'",
  "comment on column told_warnings.revision is 'how often something was told of it'",
  "comment on column told_warnings.missing_since is 'since then it does not follow from the history any more'",
  // What stood before anybody could be told is old news.
  `insert into told_warnings (account_id, room_id, warning_id, kind, side, direction, opened_at, cleared_at, severity, open)
    select account_id, room_id, id, kind, side, direction, opened_at, cleared_at, severity, cleared_at is null
    from warnings`,

  `create table rooms_to_tell (
    account_id uuid not null,
    room_id uuid not null,
    marked_at timestamptz not null default now(),
    due_at timestamptz not null,
    primary key (account_id, room_id),
    foreign key (account_id, room_id) references rooms (account_id, id) on delete cascade
  )`,

  `create table mail_notices (
    account_id uuid not null,
    person_id uuid not null,
    key text not null,
    notice jsonb not null,
    state text not null default 'waiting' check (state in ('waiting', 'sent', 'dropped', 'failed')),
    message uuid,
    reason text,
    attempts smallint not null default 0,
    made_at timestamptz not null default now(),
    due_at timestamptz not null default now(),
    ended_at timestamptz,
    primary key (account_id, person_id, key),
    foreign key (account_id, person_id) references people (account_id, id) on delete cascade
  )`,
  "create index mail_notices_waiting on mail_notices (account_id, person_id, due_at) where state = 'waiting'",
  "comment on column mail_notices.account_id is 'of the person who is told'",
  "comment on column mail_notices.message is 'the message that it goes in: the same one each time it is tried'",
  "comment on column mail_notices.key is 'names the thing that is told: one row, one telling'",

  `create table webhooks (
    account_id uuid not null references accounts (id),
    id uuid not null,
    url text not null,
    events text[] not null check (events <@ array[${EVENTS.slice(1, -1)}]),
    severity text not null check (severity ${SEVERITY}),
    enabled boolean not null default true,
    disabled_because text,
    secret bytea not null,
    failures smallint not null default 0,
    try_at timestamptz not null default now(),
    created_at timestamptz not null default now(),
    updated_at timestamptz not null default now(),
    primary key (account_id, id)
  )`,
  "comment on column webhooks.secret is 'the key of its signatures, which cannot be made from a hash of it'",
  "comment on column webhooks.try_at is 'nothing is sent to it before: it is being sent something, or did not answer well'",
  "comment on column webhooks.failures is 'how often it did not answer well in a row'",
  notes('insert', 'webhook-added'),
  notes(
    'update',
    'webhook-changed',
    '(old.url, old.events, old.severity, old.enabled) is distinct from (new.url, new.events, new.severity, new.enabled)',
  ),
  notes('delete', 'webhook-removed'),

  `create table webhook_deliveries (
    account_id uuid not null,
    webhook_id uuid not null,
    id uuid not null,
    key text not null,
    event text not null,
    body text not null,
    state text not null default 'waiting' check (state in ('waiting', 'sent', 'dropped', 'failed')),
    status smallint,
    error text,
    attempts smallint not null default 0,
    made_at timestamptz not null default now(),
    due_at timestamptz not null default now(),
    ended_at timestamptz,
    primary key (account_id, webhook_id, id),
    unique (account_id, webhook_id, key),
    foreign key (account_id, webhook_id) references webhooks (account_id, id) on delete cascade
  )`,
  "create index webhook_deliveries_waiting on webhook_deliveries (account_id, webhook_id, due_at) where state = 'waiting'",
  "comment on column webhook_deliveries.body is 'the very text that is signed'",
  "comment on column webhook_deliveries.status is 'of the last answer; null: there was none'",

  `select protect_by_account(name::regclass) from unnest(array[
    'told_warnings', 'rooms_to_tell', 'mail_notices', 'webhooks', 'webhook_deliveries'
  ]) name`,
];
