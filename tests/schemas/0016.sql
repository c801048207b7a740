SET statement_timeout = 0;
SET lock_timeout = 0;
SET idle_in_transaction_session_timeout = 0;
SET client_encoding = 'UTF8';
SET standard_conforming_strings = on;
SELECT pg_catalog.set_config('search_path', '', false);
SET check_function_bodies = false;
SET xmloption = content;
SET client_min_messages = warning;
SET row_security = off;

CREATE FUNCTION public.accounts_in_scope() RETURNS uuid[]
    LANGUAGE sql STABLE
    AS $$
    select case when senders_in_scope() = '{}' then setting_ids('slideload.accounts') else '{}' end $$;

CREATE FUNCTION public.accounts_to_send_to() RETURNS uuid[]
    LANGUAGE sql STABLE
    AS $$
    select case when senders_in_scope() = '{}' then '{}' else setting_ids('slideload.accounts') end $$;

CREATE FUNCTION public.coaches_in_scope() RETURNS uuid[]
    LANGUAGE sql STABLE
    AS $$
    select case when senders_in_scope() = '{}' then setting_ids('slideload.visits') else '{}' end $$;

CREATE FUNCTION public.coaches_to_send_to() RETURNS uuid[]
    LANGUAGE sql STABLE
    AS $$
    select case when senders_in_scope() = '{}' then '{}' else setting_ids('slideload.visits') end $$;

SET default_tablespace = '';

SET default_table_access_method = heap;

CREATE TABLE public.coaches (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    name text NOT NULL,
    model text,
    year integer,
    notes text,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    updated_at timestamp with time zone DEFAULT now() NOT NULL,
    deleted_at timestamp with time zone
);

ALTER TABLE ONLY public.coaches FORCE ROW LEVEL SECURITY;

CREATE FUNCTION public.deleted_coaches(of_account uuid) RETURNS SETOF public.coaches
    LANGUAGE plpgsql
    AS $$
    
begin
  perform set_config('slideload.deleted', 'seen', true);
  return query select * from coaches c where c.account_id = of_account and c.deleted_at is not null;
  perform set_config('slideload.deleted', '', true);
end $$;

CREATE FUNCTION public.end_visits_of(person uuid) RETURNS void
    LANGUAGE plpgsql
    AS $$
declare
  before text := coalesce(current_setting('slideload.spanning', true), '');
  
begin
  perform set_config('slideload.spanning', 'function', true);
  delete from grants g where g.person_id = person;
  perform set_config('slideload.spanning', before, true);
  return;
end$$;

CREATE FUNCTION public.name_of(person uuid) RETURNS text
    LANGUAGE plpgsql
    AS $$
declare
  before text := coalesce(current_setting('slideload.spanning', true), '');
  found text;
begin
  perform set_config('slideload.spanning', 'function', true);
  select p.name into found from directory d join people p on p.account_id = d.account_id and p.id = d.person_id
      where d.person_id = person;
  perform set_config('slideload.spanning', before, true);
  return found;
end$$;

CREATE FUNCTION public.note_act() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
declare
  rec jsonb := case tg_op when 'DELETE' then to_jsonb(old) else to_jsonb(new) end;
  fields text[] := string_to_array(tg_argv[2], ',');
  told jsonb := coalesce((select jsonb_object_agg(f, rec -> f) from unnest(fields) f where rec -> f <> 'null'), '{}');
  actor uuid := coalesce(nullif(current_setting('slideload.person', true), '')::uuid, (rec ->> tg_argv[1])::uuid);
  coach uuid := case
    when tg_table_name = 'coaches' then (rec ->> 'id')::uuid
    when rec ? 'coach_id' then (rec ->> 'coach_id')::uuid
    when rec ? 'room_id' then (select r.coach_id from rooms r
      where r.account_id = (rec ->> 'account_id')::uuid and r.id = (rec ->> 'room_id')::uuid)
  end;
begin
  -- A look across accounts removes what others granted: who had it removed is not for them to know.
  if current_setting('slideload.spanning', true) = 'function' then actor := null; end if;
  insert into record (account_id, person_id, person_name, act, thing, thing_id, coach_id, details)
  values (coalesce(rec ->> 'account_id', rec ->> 'id')::uuid, actor, case when actor is not null then name_of(actor) end,
    tg_argv[0], tg_table_name, (rec ->> 'id')::uuid, coach, told);
  return null;
end$$;

CREATE FUNCTION public.note_failure() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
    begin
      insert into record (account_id, act, thing, thing_id, details)
      select d.account_id, 'sign-in-failed', 'people', d.person_id, jsonb_build_object('email', new.email)
      from directory d where d.email = new.email;
      return null;
    end $$;

CREATE FUNCTION public.person_at(address text) RETURNS uuid
    LANGUAGE plpgsql
    AS $$
declare
  before text := coalesce(current_setting('slideload.spanning', true), '');
  found uuid;
begin
  perform set_config('slideload.spanning', 'function', true);
  select d.person_id into found from directory d where d.email = address;
  perform set_config('slideload.spanning', before, true);
  return found;
end$$;

CREATE FUNCTION public.protect_by_account(of_table regclass) RETURNS void
    LANGUAGE plpgsql
    AS $_$
declare
  columns text[] := array(
    select attname::text from pg_attribute where attrelid = of_table and attnum > 0 and not attisdropped
  );
  visible text := case
    when 'coach_id' = any (columns) then 'coach_id = any ((select coaches_in_scope())::uuid[])'
    when 'room_id' = any (columns) then 'room_id = any ((select rooms_in_scope())::uuid[])'
    when 'stroke_id' = any (columns) then format(
      '((select coaches_in_scope()) <> ''{}''
        and exists (select from strokes s where s.account_id = %1$s.account_id and s.id = %1$s.stroke_id))', of_table)
    when of_table = 'coaches'::regclass then 'id = any ((select coaches_in_scope())::uuid[])'
    else 'false'
  end;
begin
  execute format('alter table %s enable row level security, force row level security', of_table);
  execute format(
    'create policy by_account on %s using (%s = any ((select accounts_in_scope())::uuid[])
      or (select spans_accounts()) or %s)',
    of_table, case when 'account_id' = any (columns) then 'account_id' else 'id' end, visible);
end$_$;

CREATE FUNCTION public.refuse_change() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
    begin raise exception 'The record of who did what is only added to.' using errcode = 'insufficient_privilege'; end $$;

CREATE FUNCTION public.rooms_in_scope() RETURNS uuid[]
    LANGUAGE sql STABLE
    AS $$
    select case when senders_in_scope() = '{}' then rooms_of_visits() else '{}' end $$;

CREATE FUNCTION public.rooms_of_visits() RETURNS uuid[]
    LANGUAGE sql STABLE
    AS $$
    select array(
      select r.id from unnest(setting_ids('slideload.visit_accounts'), setting_ids('slideload.visits'))
        as v (account_id, coach_id)
      join rooms r on r.account_id = v.account_id and r.coach_id = v.coach_id
    ) $$;

CREATE FUNCTION public.rooms_to_send_to() RETURNS uuid[]
    LANGUAGE sql STABLE
    AS $$
    select case when senders_in_scope() = '{}' then '{}' else rooms_of_visits() end $$;

CREATE FUNCTION public.sees_deleted() RETURNS boolean
    LANGUAGE sql STABLE
    AS $$ select coalesce(current_setting('slideload.deleted', true), '') <> '' $$;

CREATE FUNCTION public.senders_in_scope() RETURNS uuid[]
    LANGUAGE sql STABLE
    AS $$ select setting_ids('slideload.senders') $$;

CREATE FUNCTION public.set_coach_deleted(of_account uuid, coach uuid, deleted boolean) RETURNS boolean
    LANGUAGE plpgsql
    AS $$
    declare found_one boolean;
    
begin
  perform set_config('slideload.deleted', 'seen', true);
  
      update coaches set deleted_at = case when deleted then now() end
      where account_id = of_account and id = coach and (deleted_at is null) = deleted;
      found_one := found;
      if found_one then
        update rooms set deleted_at = case when deleted then now() end where account_id = of_account and coach_id = coach;
      end if;
  perform set_config('slideload.deleted', '', true);
  return found_one;
end $$;

CREATE FUNCTION public.setting_ids(name text) RETURNS uuid[]
    LANGUAGE sql STABLE
    AS $$ select coalesce(nullif(current_setting(name, true), ''), '{}')::uuid[] $$;

CREATE FUNCTION public.spans_accounts() RETURNS boolean
    LANGUAGE sql STABLE
    AS $$ select coalesce(current_setting('slideload.spanning', true), '') <> '' $$;

CREATE TABLE public.grants (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    coach_id uuid NOT NULL,
    email text NOT NULL,
    role text NOT NULL,
    until timestamp with time zone,
    person_id uuid,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    CONSTRAINT grants_email_check CHECK ((email = lower(email))),
    CONSTRAINT grants_role_check CHECK ((role = ANY (ARRAY['owner'::text, 'technician'::text])))
);

ALTER TABLE ONLY public.grants FORCE ROW LEVEL SECURITY;

CREATE FUNCTION public.visits_of(person uuid) RETURNS SETOF public.grants
    LANGUAGE plpgsql
    AS $$
    declare before text := coalesce(current_setting('slideload.spanning', true), '');
    begin
      perform set_config('slideload.spanning', 'function', true);
      return query select g.* from grants g join coaches c on c.account_id = g.account_id and c.id = g.coach_id
        where g.person_id = person and (g.until is null or g.until > now()) and c.deleted_at is null;
      perform set_config('slideload.spanning', before, true);
    end $$;

CREATE TABLE public.accounts (
    id uuid NOT NULL,
    name text NOT NULL,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    trace_months integer,
    CONSTRAINT accounts_trace_months_check CHECK ((trace_months >= 1))
);

ALTER TABLE ONLY public.accounts FORCE ROW LEVEL SECURITY;

CREATE TABLE public.directory (
    email text NOT NULL,
    account_id uuid NOT NULL,
    person_id uuid NOT NULL,
    CONSTRAINT directory_email_check CHECK ((email = lower(email)))
);

ALTER TABLE ONLY public.directory FORCE ROW LEVEL SECURITY;

CREATE TABLE public.idempotency_keys (
    account_id uuid NOT NULL,
    caller_id uuid NOT NULL,
    key_hash bytea NOT NULL,
    request_hash bytea NOT NULL,
    answer bytea,
    created_at timestamp with time zone DEFAULT now() NOT NULL
);

ALTER TABLE ONLY public.idempotency_keys FORCE ROW LEVEL SECURITY;

CREATE TABLE public.invitations (
    account_id uuid NOT NULL,
    token_hash bytea NOT NULL,
    person_id uuid,
    grant_id uuid,
    expires_at timestamp with time zone NOT NULL,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    CONSTRAINT invitations_check CHECK (((person_id IS NULL) <> (grant_id IS NULL)))
);

ALTER TABLE ONLY public.invitations FORCE ROW LEVEL SECURITY;

CREATE TABLE public.kysely_migration (
    name character varying(255) NOT NULL,
    "timestamp" character varying(255) NOT NULL
);

CREATE TABLE public.kysely_migration_lock (
    id character varying(255) NOT NULL,
    is_locked integer DEFAULT 0 NOT NULL
);

CREATE TABLE public.lent_normals (
    account_id uuid NOT NULL,
    room_id uuid NOT NULL,
    place smallint NOT NULL,
    direction text NOT NULL,
    peers uuid NOT NULL,
    namesakes uuid NOT NULL,
    learnt_at timestamp with time zone,
    normal json,
    CONSTRAINT lent_normals_check CHECK (((learnt_at IS NULL) = (normal IS NULL))),
    CONSTRAINT lent_normals_direction_check CHECK ((direction = ANY (ARRAY['extend'::text, 'retract'::text])))
);

ALTER TABLE ONLY public.lent_normals FORCE ROW LEVEL SECURITY;

CREATE TABLE public.live_pieces (
    account_id uuid NOT NULL,
    stroke_id uuid NOT NULL,
    seq integer NOT NULL,
    side smallint,
    first_sample integer NOT NULL,
    samples bytea NOT NULL
);

ALTER TABLE ONLY public.live_pieces FORCE ROW LEVEL SECURITY;

CREATE TABLE public.live_strokes (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    logger_id uuid NOT NULL,
    key text NOT NULL,
    room_id uuid NOT NULL,
    header jsonb NOT NULL,
    link_id uuid NOT NULL,
    next_seq integer DEFAULT 0 NOT NULL,
    touched_at timestamp with time zone DEFAULT now() NOT NULL,
    stored_at timestamp with time zone
);

ALTER TABLE ONLY public.live_strokes FORCE ROW LEVEL SECURITY;

CREATE TABLE public.loggers (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    coach_id uuid NOT NULL,
    name text NOT NULL,
    sensor text NOT NULL,
    token_hash bytea NOT NULL,
    last_seen_at timestamp with time zone,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    updated_at timestamp with time zone DEFAULT now() NOT NULL,
    clock_offset_s double precision DEFAULT 0 NOT NULL,
    CONSTRAINT loggers_sensor_check CHECK ((sensor = ANY (ARRAY['clamp'::text, 'shunt'::text])))
);

ALTER TABLE ONLY public.loggers FORCE ROW LEVEL SECURITY;

CREATE TABLE public.mail_notices (
    account_id uuid NOT NULL,
    person_id uuid NOT NULL,
    key text NOT NULL,
    notice jsonb NOT NULL,
    state text DEFAULT 'waiting'::text NOT NULL,
    message uuid,
    reason text,
    attempts smallint DEFAULT 0 NOT NULL,
    made_at timestamp with time zone DEFAULT now() NOT NULL,
    due_at timestamp with time zone DEFAULT now() NOT NULL,
    ended_at timestamp with time zone,
    CONSTRAINT mail_notices_state_check CHECK ((state = ANY (ARRAY['waiting'::text, 'sent'::text, 'dropped'::text, 'failed'::text])))
);

ALTER TABLE ONLY public.mail_notices FORCE ROW LEVEL SECURITY;

CREATE TABLE public.measures (
    account_id uuid NOT NULL,
    room_id uuid NOT NULL,
    side text NOT NULL,
    direction text NOT NULL,
    placed_at timestamp with time zone NOT NULL,
    stroke_id uuid NOT NULL,
    value double precision[] NOT NULL,
    expected double precision[] NOT NULL,
    adjusted double precision[] NOT NULL,
    beyond boolean[] NOT NULL
);

ALTER TABLE ONLY public.measures FORCE ROW LEVEL SECURITY;

CREATE TABLE public.password_resets (
    account_id uuid NOT NULL,
    token_hash bytea NOT NULL,
    person_id uuid NOT NULL,
    expires_at timestamp with time zone NOT NULL,
    created_at timestamp with time zone DEFAULT now() NOT NULL
);

ALTER TABLE ONLY public.password_resets FORCE ROW LEVEL SECURITY;

CREATE TABLE public.people (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    email text NOT NULL,
    name text NOT NULL,
    role text NOT NULL,
    password_hash text,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    units text,
    time_zone text,
    locale text,
    looked_at timestamp with time zone,
    looked_before_at timestamp with time zone,
    notices_from text,
    notices_cleared boolean DEFAULT true NOT NULL,
    quiet_from time without time zone,
    quiet_to time without time zone,
    digest boolean DEFAULT false NOT NULL,
    silent_after_days smallint,
    mail_paused_at timestamp with time zone,
    mail_paused_because text,
    unsubscribe_key bytea DEFAULT (uuid_send(gen_random_uuid()) || uuid_send(gen_random_uuid())) NOT NULL,
    CONSTRAINT people_check CHECK (((quiet_from IS NULL) = (quiet_to IS NULL))),
    CONSTRAINT people_check1 CHECK (((mail_paused_at IS NULL) = (mail_paused_because IS NULL))),
    CONSTRAINT people_notices_from_check CHECK ((notices_from = ANY (ARRAY['watch'::text, 'service'::text, 'stop'::text]))),
    CONSTRAINT people_role_check CHECK ((role = ANY (ARRAY['dealer'::text, 'technician'::text, 'owner'::text]))),
    CONSTRAINT people_silent_after_days_check CHECK (((silent_after_days >= 1) AND (silent_after_days <= 365))),
    CONSTRAINT people_units_check CHECK ((units = ANY (ARRAY['metric'::text, 'us'::text])))
);

ALTER TABLE ONLY public.people FORCE ROW LEVEL SECURITY;

CREATE TABLE public.personal_tokens (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    person_id uuid NOT NULL,
    name text NOT NULL,
    token_hash bytea NOT NULL,
    may_change boolean NOT NULL,
    until timestamp with time zone NOT NULL,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    last_seen_at timestamp with time zone
);

ALTER TABLE ONLY public.personal_tokens FORCE ROW LEVEL SECURITY;

CREATE TABLE public.record (
    account_id uuid NOT NULL,
    at timestamp with time zone DEFAULT clock_timestamp() NOT NULL,
    id uuid DEFAULT gen_random_uuid() NOT NULL,
    person_id uuid,
    person_name text,
    act text NOT NULL,
    thing text NOT NULL,
    thing_id uuid,
    coach_id uuid,
    details jsonb DEFAULT '{}'::jsonb NOT NULL
);

ALTER TABLE ONLY public.record FORCE ROW LEVEL SECURITY;

CREATE TABLE public.retention_runs (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    ran_at timestamp with time zone NOT NULL,
    trace_months integer NOT NULL,
    removed_before timestamp with time zone NOT NULL,
    traces_before bigint NOT NULL,
    traces_removed bigint NOT NULL,
    bytes_removed bigint NOT NULL,
    traces_after bigint NOT NULL
);

ALTER TABLE ONLY public.retention_runs FORCE ROW LEVEL SECURITY;

CREATE TABLE public.room_checkpoints (
    account_id uuid NOT NULL,
    room_id uuid NOT NULL,
    at timestamp with time zone NOT NULL,
    events integer NOT NULL,
    analysis_version integer NOT NULL,
    state bytea NOT NULL
);
ALTER TABLE ONLY public.room_checkpoints ALTER COLUMN state SET STORAGE EXTERNAL;

ALTER TABLE ONLY public.room_checkpoints FORCE ROW LEVEL SECURITY;

CREATE TABLE public.room_progress (
    account_id uuid NOT NULL,
    room_id uuid NOT NULL,
    dirty_from timestamp with time zone,
    revision bigint DEFAULT 0 NOT NULL,
    summary jsonb,
    limits jsonb
);

ALTER TABLE ONLY public.room_progress FORCE ROW LEVEL SECURITY;

CREATE TABLE public.rooms (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    coach_id uuid NOT NULL,
    name text NOT NULL,
    drive text NOT NULL,
    sides text[] NOT NULL,
    travel_metres double precision,
    gear_teeth integer,
    rack_pitch_mm double precision,
    rated_amps double precision,
    nominal_volts double precision DEFAULT 12 NOT NULL,
    positive_direction text DEFAULT 'extend'::text NOT NULL,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    updated_at timestamp with time zone DEFAULT now() NOT NULL,
    deleted_at timestamp with time zone,
    CONSTRAINT rooms_drive_check CHECK ((drive = ANY (ARRAY['in-wall'::text, 'through-frame'::text, 'cable'::text, 'other'::text]))),
    CONSTRAINT rooms_positive_direction_check CHECK ((positive_direction = ANY (ARRAY['extend'::text, 'retract'::text]))),
    CONSTRAINT rooms_sides_check CHECK ((cardinality(sides) > 0))
);

ALTER TABLE ONLY public.rooms FORCE ROW LEVEL SECURITY;

CREATE TABLE public.rooms_to_tell (
    account_id uuid NOT NULL,
    room_id uuid NOT NULL,
    marked_at timestamp with time zone DEFAULT now() NOT NULL,
    due_at timestamp with time zone NOT NULL
);

ALTER TABLE ONLY public.rooms_to_tell FORCE ROW LEVEL SECURITY;

CREATE TABLE public.services (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    room_id uuid NOT NULL,
    kind text NOT NULL,
    at timestamp with time zone NOT NULL,
    side text,
    notes text,
    recorded_by uuid,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    updated_at timestamp with time zone DEFAULT now() NOT NULL
);

ALTER TABLE ONLY public.services FORCE ROW LEVEL SECURITY;

CREATE TABLE public.sessions (
    account_id uuid NOT NULL,
    token_hash bytea NOT NULL,
    person_id uuid NOT NULL,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    last_seen_at timestamp with time zone DEFAULT now() NOT NULL,
    expires_at timestamp with time zone NOT NULL,
    id uuid DEFAULT gen_random_uuid() NOT NULL
);

ALTER TABLE ONLY public.sessions FORCE ROW LEVEL SECURITY;

CREATE TABLE public.sign_in_failures (
    email text NOT NULL,
    failed_at timestamp with time zone DEFAULT now() NOT NULL
);

CREATE TABLE public.strokes (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    room_id uuid NOT NULL,
    sender_id uuid NOT NULL,
    logger_id uuid,
    key text NOT NULL,
    direction text,
    started_at timestamp with time zone NOT NULL,
    received_at timestamp with time zone DEFAULT now() NOT NULL,
    recorded_sides text[] NOT NULL,
    has_supply boolean NOT NULL,
    ambient_c double precision,
    excluded boolean DEFAULT false NOT NULL,
    note text,
    analysis jsonb,
    placed_at timestamp with time zone NOT NULL,
    placed_by text DEFAULT 'sender'::text NOT NULL,
    cut_short boolean DEFAULT false NOT NULL,
    CONSTRAINT strokes_direction_check CHECK ((direction = ANY (ARRAY['extend'::text, 'retract'::text]))),
    CONSTRAINT strokes_placed_by_check CHECK ((placed_by = ANY (ARRAY['sender'::text, 'arrival'::text, 'person'::text])))
);

ALTER TABLE ONLY public.strokes FORCE ROW LEVEL SECURITY;

CREATE TABLE public.told_warnings (
    account_id uuid NOT NULL,
    room_id uuid NOT NULL,
    warning_id uuid NOT NULL,
    kind text NOT NULL,
    side text,
    direction text,
    opened_at timestamp with time zone NOT NULL,
    cleared_at timestamp with time zone,
    severity text NOT NULL,
    open boolean NOT NULL,
    revision integer DEFAULT 0 NOT NULL,
    missing_since timestamp with time zone,
    CONSTRAINT told_warnings_severity_check CHECK ((severity = ANY (ARRAY['watch'::text, 'service'::text, 'stop'::text])))
);

ALTER TABLE ONLY public.told_warnings FORCE ROW LEVEL SECURITY;

CREATE TABLE public.traces (
    account_id uuid NOT NULL,
    stroke_id uuid NOT NULL,
    received_at timestamp with time zone NOT NULL,
    trace bytea NOT NULL
)
PARTITION BY RANGE (received_at);
ALTER TABLE ONLY public.traces ALTER COLUMN trace SET STORAGE EXTERNAL;

ALTER TABLE ONLY public.traces FORCE ROW LEVEL SECURITY;

CREATE TABLE public.traces_2026_11 (
    account_id uuid NOT NULL,
    stroke_id uuid NOT NULL,
    received_at timestamp with time zone NOT NULL,
    trace bytea NOT NULL
);
ALTER TABLE ONLY public.traces_2026_11 ALTER COLUMN trace SET STORAGE EXTERNAL;

ALTER TABLE ONLY public.traces_2026_11 FORCE ROW LEVEL SECURITY;

CREATE TABLE public.traces_2026_12 (
    account_id uuid NOT NULL,
    stroke_id uuid NOT NULL,
    received_at timestamp with time zone NOT NULL,
    trace bytea NOT NULL
);
ALTER TABLE ONLY public.traces_2026_12 ALTER COLUMN trace SET STORAGE EXTERNAL;

ALTER TABLE ONLY public.traces_2026_12 FORCE ROW LEVEL SECURITY;

CREATE TABLE public.traces_2027_01 (
    account_id uuid NOT NULL,
    stroke_id uuid NOT NULL,
    received_at timestamp with time zone NOT NULL,
    trace bytea NOT NULL
);
ALTER TABLE ONLY public.traces_2027_01 ALTER COLUMN trace SET STORAGE EXTERNAL;

ALTER TABLE ONLY public.traces_2027_01 FORCE ROW LEVEL SECURITY;

CREATE TABLE public.traces_default (
    account_id uuid NOT NULL,
    stroke_id uuid NOT NULL,
    received_at timestamp with time zone NOT NULL,
    trace bytea NOT NULL
);
ALTER TABLE ONLY public.traces_default ALTER COLUMN trace SET STORAGE EXTERNAL;

ALTER TABLE ONLY public.traces_default FORCE ROW LEVEL SECURITY;

CREATE TABLE public.verdict_changes (
    account_id uuid NOT NULL,
    room_id uuid NOT NULL,
    changed_at timestamp with time zone DEFAULT clock_timestamp() NOT NULL,
    verdict_before text NOT NULL,
    verdict text NOT NULL
);

ALTER TABLE ONLY public.verdict_changes FORCE ROW LEVEL SECURITY;

CREATE TABLE public.warnings (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    room_id uuid NOT NULL,
    kind text NOT NULL,
    severity text NOT NULL,
    side text,
    direction text,
    "position" double precision,
    pattern text,
    opened_at timestamp with time zone NOT NULL,
    cleared_at timestamp with time zone,
    first_stroke_id uuid NOT NULL,
    latest_stroke_id uuid NOT NULL,
    headline text NOT NULL,
    evidence jsonb NOT NULL,
    checks jsonb NOT NULL,
    cautions jsonb NOT NULL,
    acknowledged_at timestamp with time zone,
    acknowledged_by uuid,
    acknowledgement_note text,
    CONSTRAINT warnings_severity_check CHECK ((severity = ANY (ARRAY['watch'::text, 'service'::text, 'stop'::text])))
);

ALTER TABLE ONLY public.warnings FORCE ROW LEVEL SECURITY;

CREATE TABLE public.webhook_deliveries (
    account_id uuid NOT NULL,
    webhook_id uuid NOT NULL,
    id uuid NOT NULL,
    key text NOT NULL,
    event text NOT NULL,
    body text NOT NULL,
    state text DEFAULT 'waiting'::text NOT NULL,
    status smallint,
    error text,
    attempts smallint DEFAULT 0 NOT NULL,
    made_at timestamp with time zone DEFAULT now() NOT NULL,
    due_at timestamp with time zone DEFAULT now() NOT NULL,
    ended_at timestamp with time zone,
    CONSTRAINT webhook_deliveries_state_check CHECK ((state = ANY (ARRAY['waiting'::text, 'sent'::text, 'dropped'::text, 'failed'::text])))
);

ALTER TABLE ONLY public.webhook_deliveries FORCE ROW LEVEL SECURITY;

CREATE TABLE public.webhooks (
    account_id uuid NOT NULL,
    id uuid NOT NULL,
    url text NOT NULL,
    events text[] NOT NULL,
    severity text NOT NULL,
    enabled boolean DEFAULT true NOT NULL,
    disabled_because text,
    secret bytea NOT NULL,
    failures smallint DEFAULT 0 NOT NULL,
    try_at timestamp with time zone DEFAULT now() NOT NULL,
    created_at timestamp with time zone DEFAULT now() NOT NULL,
    updated_at timestamp with time zone DEFAULT now() NOT NULL,
    CONSTRAINT webhooks_events_check CHECK ((events <@ ARRAY['warning.opened'::text, 'warning.worse'::text, 'warning.cleared'::text, 'logger.silent'::text])),
    CONSTRAINT webhooks_severity_check CHECK ((severity = ANY (ARRAY['watch'::text, 'service'::text, 'stop'::text])))
);

ALTER TABLE ONLY public.webhooks FORCE ROW LEVEL SECURITY;

ALTER TABLE ONLY public.traces ATTACH PARTITION public.traces_2026_11 FOR VALUES FROM ('2026-11-01 00:00:00+00') TO ('2026-12-01 00:00:00+00');

ALTER TABLE ONLY public.traces ATTACH PARTITION public.traces_2026_12 FOR VALUES FROM ('2026-12-01 00:00:00+00') TO ('2027-01-01 00:00:00+00');

ALTER TABLE ONLY public.traces ATTACH PARTITION public.traces_2027_01 FOR VALUES FROM ('2027-01-01 00:00:00+00') TO ('2027-02-01 00:00:00+00');

ALTER TABLE ONLY public.traces ATTACH PARTITION public.traces_default DEFAULT;

INSERT INTO public.accounts VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', 'keeper', '2026-11-26 02:52:57.07039+00', NULL);

INSERT INTO public.coaches VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-3fdc-7374-ad8d-1435ff55fbc7', 'Alder 7', 'Long Trailer', 2024, NULL, '2026-11-26 02:52:58.20466+00', '2026-11-26 02:52:58.20466+00', NULL);

INSERT INTO public.directory VALUES ('keeper@example.com', '01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-3b90-72dc-a06d-cbb88725e91b');

INSERT INTO public.invitations VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '\x58ec752a9747b647632c01c2e9c393ab7e1d96efd6b5ec232922373ad8376d97', '01a215c5-403c-71dc-aad1-d21ae6a5abaa', NULL, '2026-12-03 02:52:58.305+00', '2026-11-26 02:52:58.300703+00');

INSERT INTO public.kysely_migration VALUES ('0001-first-tables', '2026-11-26T02:52:55.900Z');
INSERT INTO public.kysely_migration VALUES ('0002-grants-and-invitations', '2026-11-26T02:52:55.965Z');
INSERT INTO public.kysely_migration VALUES ('0003-row-level-security', '2026-11-26T02:52:56.004Z');
INSERT INTO public.kysely_migration VALUES ('0004-placing-and-retention', '2026-11-26T02:52:56.036Z');
INSERT INTO public.kysely_migration VALUES ('0005-live-strokes', '2026-11-26T02:52:56.074Z');
INSERT INTO public.kysely_migration VALUES ('0006-lent-normals', '2026-11-26T02:52:56.094Z');
INSERT INTO public.kysely_migration VALUES ('0007-tokens-and-resets', '2026-11-26T02:52:56.129Z');
INSERT INTO public.kysely_migration VALUES ('0009-settings-and-verdicts', '2026-11-26T02:52:56.148Z');
INSERT INTO public.kysely_migration VALUES ('0012-record-and-deleted-coaches', '2026-11-26T02:52:56.194Z');
INSERT INTO public.kysely_migration VALUES ('0014-notices', '2026-11-26T02:52:56.305Z');
INSERT INTO public.kysely_migration VALUES ('0016-packed-checkpoints', '2026-11-26T02:52:56.317Z');

INSERT INTO public.kysely_migration_lock VALUES ('migration_lock', 0);

INSERT INTO public.lent_normals VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 0, 'extend', 'bd79cffb-9f1d-8649-836b-c1de0a2a5af1', '94468367-9114-8b72-a122-81889e3d5120', '2026-03-15 16:00:00+00', '[{"conditions":[-0.1,-4],"value":2.1258479,"variance":0.000050898844,"slopeInformation":[0,0,0,19646.812],"slopeScores":[0,0],"scale":0.020178968},{"conditions":[-0.1,-4],"value":2.1494339,"variance":0.000050898844,"slopeInformation":[0,0,0,19646.812],"slopeScores":[0,0],"scale":0.020178968},{"conditions":[-0.1,-4],"value":3.2422486,"variance":0.0005579876,"slopeInformation":[0,0,0,1792.1545],"slopeScores":[0,2.6221835],"scale":0.06681243},{"conditions":[-0.1,-4],"value":2.8324775,"variance":0.00053835855,"slopeInformation":[0,0,0,1857.4981],"slopeScores":[0,0],"scale":0.065626735},{"conditions":[-0.1,-4],"value":2.2721259,"variance":0.000048344293,"slopeInformation":[0,0,0,20684.965],"slopeScores":[0,0],"scale":0.019666071},{"conditions":[-0.1,-4],"value":4.5898699,"variance":0.000088992939,"slopeInformation":[0,0,0,11236.847],"slopeScores":[0,0.35639582],"scale":0.02668227},{"conditions":[-0.1,-4],"value":7.1155986,"variance":0.000088995487,"slopeInformation":[0,0,0,11236.525],"slopeScores":[0,0.35638562],"scale":0.026682652},{"conditions":[-0.1,-4],"value":0.50603865,"variance":0.0000077142857,"slopeInformation":[0,0,0,129629.63],"slopeScores":[0,0],"scale":0.007855844},{"conditions":[-0.1,-4],"value":0,"variance":0.0012053571,"slopeInformation":[0,0,0,829.62963],"slopeScores":[0,0],"scale":0.098198051},{"conditions":[-0.1,-4],"value":-1.9686212,"variance":0.0012093343,"slopeInformation":[0,0,0,826.90119],"slopeScores":[0,0.21883445],"scale":0.098359924},{"conditions":[-0.1,-4],"value":-1.0281645,"variance":0.0023182958,"slopeInformation":[0,0,0,431.35135],"slopeScores":[0,-0.77582516],"scale":0.13618504},{"conditions":[-0.1,-4],"value":0.00029821458,"variance":0.000065873685,"slopeInformation":[0,0,0,15180.569],"slopeScores":[0,-5.6621016],"scale":0.022956251},{"conditions":[-0.1,-4],"value":0.000081690155,"variance":0.000065843245,"slopeInformation":[0,0,0,15187.587],"slopeScores":[0,-5.9218099],"scale":0.022950947},{"conditions":[-0.1,-4],"value":-1.9774236,"variance":0.0049433929,"slopeInformation":[0,0,0,202.29021],"slopeScores":[0,-1.2680948],"scale":0.19886464}]');
INSERT INTO public.lent_normals VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 0, 'retract', 'bd79cffb-9f1d-8649-836b-c1de0a2a5af1', '94468367-9114-8b72-a122-81889e3d5120', '2026-03-16 16:00:00+00', '[{"conditions":[-0.1,-3],"value":2.1258479,"variance":0.00005090068,"slopeInformation":[0,0,0,19646.103],"slopeScores":[0,0],"scale":0.020179332},{"conditions":[-0.1,-3],"value":2.1494339,"variance":0.00005090068,"slopeInformation":[0,0,0,19646.103],"slopeScores":[0,0],"scale":0.020179332},{"conditions":[-0.1,-3],"value":3.2407855,"variance":0.00054972618,"slopeInformation":[0,0,0,1819.0875],"slopeScores":[0,0],"scale":0.066315982},{"conditions":[-0.1,-3],"value":2.8324775,"variance":0.00053835945,"slopeInformation":[0,0,0,1857.495],"slopeScores":[0,0],"scale":0.065626791},{"conditions":[-0.1,-3],"value":2.2721259,"variance":0.000048344429,"slopeInformation":[0,0,0,20684.907],"slopeScores":[0,0],"scale":0.019666099},{"conditions":[-0.1,-3],"value":4.5900603,"variance":0.000089011274,"slopeInformation":[0,0,0,11234.532],"slopeScores":[0,-0.35659385],"scale":0.026685018},{"conditions":[-0.1,-3],"value":7.1157889,"variance":0.000089013191,"slopeInformation":[0,0,0,11234.29],"slopeScores":[0,-0.35658617],"scale":0.026685306},{"conditions":[-0.1,-3],"value":0.50603865,"variance":0.0000077142857,"slopeInformation":[0,0,0,129629.63],"slopeScores":[0,0],"scale":0.007855844},{"conditions":[-0.1,-3],"value":0,"variance":0.0012053571,"slopeInformation":[0,0,0,829.62963],"slopeScores":[0,0],"scale":0.098198051},{"conditions":[-0.1,-3],"value":-1.969237,"variance":0.0012092695,"slopeInformation":[0,0,0,826.94552],"slopeScores":[0,-0.29036085],"scale":0.098357288},{"conditions":[-0.1,-3],"value":-1.0416912,"variance":0.0021852872,"slopeInformation":[0,0,0,457.60575],"slopeScores":[0,-7.012941],"scale":0.13222064},{"conditions":[-0.1,-3],"value":-0.00033559909,"variance":0.000065871247,"slopeInformation":[0,0,0,15181.131],"slopeScores":[0,2.8315916],"scale":0.022955827},{"conditions":[-0.1,-3],"value":-0.00028956794,"variance":0.00006593405,"slopeInformation":[0,0,0,15166.67],"slopeScores":[0,3.4719636],"scale":0.022966767},{"conditions":[-0.1,-3],"value":-1.9739395,"variance":0.0049345498,"slopeInformation":[0,0,0,202.65273],"slopeScores":[0,-2.0087348],"scale":0.19868668}]');
INSERT INTO public.lent_normals VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 1, 'extend', 'bd79cffb-9f1d-8649-836b-c1de0a2a5af1', '94468367-9114-8b72-a122-81889e3d5120', '2026-03-15 16:00:00+00', '[{"conditions":[-0.1,-4],"value":2.1016922,"variance":0.000050898844,"slopeInformation":[0,0,0,19646.812],"slopeScores":[0,0],"scale":0.020178968},{"conditions":[-0.1,-4],"value":2.1258479,"variance":0.000050898844,"slopeInformation":[0,0,0,19646.812],"slopeScores":[0,0],"scale":0.020178968},{"conditions":[-0.1,-4],"value":3.2185226,"variance":0.00055869812,"slopeInformation":[0,0,0,1789.8754],"slopeScores":[0,2.6816272],"scale":0.066854955},{"conditions":[-0.1,-4],"value":2.8086491,"variance":0.00053835855,"slopeInformation":[0,0,0,1857.4981],"slopeScores":[0,0],"scale":0.065626736},{"conditions":[-0.1,-4],"value":2.2721259,"variance":0.000048344293,"slopeInformation":[0,0,0,20684.965],"slopeScores":[0,0],"scale":0.019666071},{"conditions":[-0.1,-4],"value":4.5657183,"variance":0.000088992754,"slopeInformation":[0,0,0,11236.87],"slopeScores":[0,0.36510466],"scale":0.026682242},{"conditions":[-0.1,-4],"value":7.0914469,"variance":0.000088995302,"slopeInformation":[0,0,0,11236.548],"slopeScores":[0,0.36509421],"scale":0.026682624},{"conditions":[-0.1,-4],"value":0.49396135,"variance":0.0000077142857,"slopeInformation":[0,0,0,129629.63],"slopeScores":[0,0],"scale":0.007855844},{"conditions":[-0.1,-4],"value":0,"variance":0.0012053571,"slopeInformation":[0,0,0,829.62963],"slopeScores":[0,0],"scale":0.098198051},{"conditions":[-0.1,-4],"value":-1.9686212,"variance":0.0012093343,"slopeInformation":[0,0,0,826.90119],"slopeScores":[0,0.21883445],"scale":0.098359924},{"conditions":[-0.1,-4],"value":-0.99751392,"variance":0.0027330235,"slopeInformation":[0,0,0,365.89514],"slopeScores":[0,-0.65809614],"scale":0.14786544},{"conditions":[-0.1,-4],"value":0.00030570638,"variance":0.000065885824,"slopeInformation":[0,0,0,15177.772],"slopeScores":[0,-5.7994979],"scale":0.022958366},{"conditions":[-0.1,-4],"value":0.000062445846,"variance":0.000065845478,"slopeInformation":[0,0,0,15187.072],"slopeScores":[0,-6.0664104],"scale":0.022951336},{"conditions":[-0.1,-4],"value":-1.9629219,"variance":0.0048418185,"slopeInformation":[0,0,0,206.53397],"slopeScores":[0,-1.2946976],"scale":0.19681094}]');
INSERT INTO public.lent_normals VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 1, 'retract', 'bd79cffb-9f1d-8649-836b-c1de0a2a5af1', '94468367-9114-8b72-a122-81889e3d5120', '2026-03-16 16:00:00+00', '[{"conditions":[-0.1,-3],"value":2.1016922,"variance":0.00005090068,"slopeInformation":[0,0,0,19646.103],"slopeScores":[0,0],"scale":0.020179332},{"conditions":[-0.1,-3],"value":2.1258479,"variance":0.00005090068,"slopeInformation":[0,0,0,19646.103],"slopeScores":[0,0],"scale":0.020179332},{"conditions":[-0.1,-3],"value":3.2170244,"variance":0.00055040821,"slopeInformation":[0,0,0,1816.8334],"slopeScores":[0,0],"scale":0.066357107},{"conditions":[-0.1,-3],"value":2.8086491,"variance":0.00053835946,"slopeInformation":[0,0,0,1857.495],"slopeScores":[0,0],"scale":0.065626791},{"conditions":[-0.1,-3],"value":2.2721259,"variance":0.000048344429,"slopeInformation":[0,0,0,20684.907],"slopeScores":[0,0],"scale":0.019666099},{"conditions":[-0.1,-3],"value":4.5659133,"variance":0.00008901146,"slopeInformation":[0,0,0,11234.508],"slopeScores":[0,-0.3653128],"scale":0.026685046},{"conditions":[-0.1,-3],"value":7.091642,"variance":0.000089013377,"slopeInformation":[0,0,0,11234.266],"slopeScores":[0,-0.36530494],"scale":0.026685333},{"conditions":[-0.1,-3],"value":0.49396135,"variance":0.0000077142857,"slopeInformation":[0,0,0,129629.63],"slopeScores":[0,0],"scale":0.007855844},{"conditions":[-0.1,-3],"value":0,"variance":0.0012053571,"slopeInformation":[0,0,0,829.62963],"slopeScores":[0,0],"scale":0.098198051},{"conditions":[-0.1,-3],"value":-1.969237,"variance":0.0012092695,"slopeInformation":[0,0,0,826.94552],"slopeScores":[0,-0.29036085],"scale":0.098357288},{"conditions":[-0.1,-3],"value":-1.0263659,"variance":0.0023123631,"slopeInformation":[0,0,0,432.45804],"slopeScores":[0,0],"scale":0.13601068},{"conditions":[-0.1,-3],"value":-0.0003439056,"variance":0.000065883388,"slopeInformation":[0,0,0,15178.333],"slopeScores":[0,2.8987703],"scale":0.022957942},{"conditions":[-0.1,-3],"value":-0.00030726558,"variance":0.000065954515,"slopeInformation":[0,0,0,15161.964],"slopeScores":[0,3.3946881],"scale":0.022970331},{"conditions":[-0.1,-3],"value":-1.9666887,"variance":0.0048636673,"slopeInformation":[0,0,0,205.60617],"slopeScores":[0,-0.54718775],"scale":0.1972545}]');

INSERT INTO public.loggers VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-3fdc-7374-ad8d-1435ff55fbc7', 'Board', 'clamp', '\x288745e7fc21200137d964f7e422a52fbae0cccf5f4061fed7203843f174d3c1', '2026-11-26 02:52:58.380458+00', '2026-11-26 02:52:58.272238+00', '2026-11-26 02:52:58.272238+00', 0);

INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-01 16:00:00+00', '019caa20-c400-7164-bc02-a43424ba5de7', '{8.38,8.58,25.18,17.009999999999998,9.7,98.491,1231.1374999999982,0.5060386473429952,0,0.13936669947687272,0.34999999999999964,0.0014910728028322035,-0.0010166405473854296,0.14203960186535924}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-01 16:00:00+00', '019caa20-c400-7164-bc02-a43424ba5de7', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.49396135265700475,0,0.13936669947687289,0.34999999999999964,0.0015275149795016475,-0.001041487486024048,0.14203960186535938}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-02 16:00:00+00', '019caf47-2000-7358-9424-52f82314375e', '{8.38,8.58,25.78,16.98,9.7,98.541,1231.7624999999982,0.5060386473429952,0,0.13966207253758814,0.34499999999999886,0.0014916467780430869,-0.0021018659145152874,0.13509204733437388}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-02 16:00:00+00', '019caf47-2000-7358-9424-52f82314375e', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.49396135265700475,0,0.13966207253758833,0.34499999999999886,0.001528117359412899,-0.0021532562791731456,0.13509204733437458}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-03 16:00:00+00', '019cb46d-7c00-767c-9dcb-c450f5855ccf', '{8.38,8.58,25.78,16.98,9.7,98.44099999999999,1230.5124999999982,0.5060386473429952,0,0.13966207253758814,0.34500000000000064,-0.0008953327171902102,0.0018584936705315698,0.1312949046772901}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-03 16:00:00+00', '019cb46d-7c00-767c-9dcb-c450f5855ccf', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.49396135265700475,0,0.13966207253758833,0.3899999999999997,-0.0009164186752330813,0.00181895221902325,0.13913613962364504}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-04 16:00:00+00', '019cb993-d800-7191-b509-153eeceef682', '{8.38,8.58,25.48,16.98,9.7,98.516,1231.4499999999982,0.5060386473429952,0,0.13936669947687272,0.3500000000000014,-0.0014922211953172291,0.0010174235422617279,0.14203960186535908}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-04 16:00:00+00', '019cb993-d800-7191-b509-153eeceef682', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.49396135265700475,0,0.13936669947687289,0.3500000000000014,-0.0015287202146127233,0.0010423092372357798,0.14203960186535952}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-05 16:00:00+00', '019cbeba-3400-7179-8d82-1f55d46fbf5f', '{8.38,8.58,25.78,16.98,9.7,98.46599999999998,1230.8249999999982,0.5060386473429952,0,0.14005493427717797,0.3899999999999988,0.0005968310198108207,2.7128682718442352e-05,0.1421302071199898}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-05 16:00:00+00', '019cbeba-3400-7179-8d82-1f55d46fbf5f', '{8.18,8.38,25.18,16.580000000000002,9.7,96.11600000000006,1201.4499999999991,0.49396135265700475,0,0.14005493427717816,0.3899999999999997,0.000611427782489593,2.7792171931315513e-05,0.14213020711998986}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-06 16:00:00+00', '019cc3e0-9000-70ce-8d37-04b2d4aab472', '{8.38,8.58,25.18,17.009999999999998,9.7,98.491,1231.1374999999982,0.5060386473429952,0,0.13936669947687272,0.34999999999999964,-0.0014910728028324155,-0.0010166405473854296,0.1420396018653589}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-06 16:00:00+00', '019cc3e0-9000-70ce-8d37-04b2d4aab472', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.49396135265700475,0,0.13936669947687289,0.34999999999999964,-0.0015275149795016475,-0.0010414874860238308,0.14203960186535955}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-07 16:00:00+00', '019cc906-ec00-7660-a817-094d4dc52da1', '{8.38,8.58,25.78,16.98,9.7,98.541,1231.7624999999982,0.5060386473429952,0,0.13966207253758814,0.34499999999999886,-0.001491646778043087,-0.002101865914515076,0.13509204733437408}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-07 16:00:00+00', '019cc906-ec00-7660-a817-094d4dc52da1', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.49396135265700475,0,0.13966207253758833,0.34499999999999886,-0.001528117359413116,-0.0021532562791731456,0.13509204733437444}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-08 16:00:00+00', '019cce2d-4800-72a5-9749-e557431e2fe1', '{8.38,8.58,25.78,16.98,9.7,98.44099999999999,1230.5124999999982,0.5060386473429952,0,0.13966207253758814,0.34500000000000064,0.0008953327171902102,0.001858493670531782,0.13129490467728977}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-08 16:00:00+00', '019cce2d-4800-72a5-9749-e557431e2fe1', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.49396135265700475,0,0.13966207253758833,0.3899999999999997,0.0009164186752330813,0.001818952219023033,0.1391361396236453}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-09 16:00:00+00', '019cd353-a400-750e-9abe-1c4bd78d48cf', '{8.38,8.58,25.48,16.98,9.7,98.516,1231.4499999999982,0.5060386473429952,0,0.13936669947687272,0.3500000000000014,0.0014922211953174412,0.0010174235422617279,0.14203960186535927}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-09 16:00:00+00', '019cd353-a400-750e-9abe-1c4bd78d48cf', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.49396135265700475,0,0.13936669947687289,0.3500000000000014,0.0015287202146127233,0.0010423092372355625,0.1420396018653593}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-10 16:00:00+00', '019cd87a-0000-76f7-a0ba-a4606669acd6', '{8.38,8.58,25.78,16.98,9.7,98.46599999999998,1230.8249999999982,0.5060386473429952,0,0.14005493427717797,0.3899999999999988,-0.0005968310198110326,2.7128682718654388e-05,0.14213020711998936}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-10 16:00:00+00', '019cd87a-0000-76f7-a0ba-a4606669acd6', '{8.18,8.38,25.18,16.580000000000002,9.7,96.11600000000006,1201.4499999999991,0.49396135265700475,0,0.14005493427717816,0.3899999999999997,-0.0006114277824895929,2.7792171931315506e-05,0.14213020711998983}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-11 16:00:00+00', '019cdda0-5c00-754d-a6ae-f352122d759a', '{8.38,8.58,25.18,17.009999999999998,9.7,98.491,1231.1374999999982,0.5060386473429952,0,0.13936669947687272,0.34999999999999964,0.0014910728028322035,-0.0010166405473854296,0.14203960186535924}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-11 16:00:00+00', '019cdda0-5c00-754d-a6ae-f352122d759a', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.49396135265700475,0,0.13936669947687289,0.34999999999999964,0.0015275149795016475,-0.001041487486024048,0.14203960186535938}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-12 16:00:00+00', '019ce2c6-b800-71fa-be61-4ef28b3e2ba6', '{8.38,8.58,25.78,16.98,9.7,98.541,1231.7624999999982,0.5060386473429952,0,0.13966207253758814,0.34499999999999886,0.0014916467780430869,-0.0021018659145152874,0.13509204733437388}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-12 16:00:00+00', '019ce2c6-b800-71fa-be61-4ef28b3e2ba6', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.49396135265700475,0,0.13966207253758833,0.34499999999999886,0.001528117359412899,-0.0021532562791731456,0.13509204733437458}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-13 16:00:00+00', '019ce7ed-1400-7023-a15c-7927d93a3059', '{8.38,8.58,25.78,16.98,9.7,98.44099999999999,1230.5124999999982,0.5060386473429952,0,0.13966207253758814,0.34500000000000064,-0.0008953327171902102,0.0018584936705315698,0.1312949046772901}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-13 16:00:00+00', '019ce7ed-1400-7023-a15c-7927d93a3059', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.49396135265700475,0,0.13966207253758833,0.3899999999999997,-0.0009164186752330813,0.00181895221902325,0.13913613962364504}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-14 16:00:00+00', '019ced13-7000-75ba-af74-dbcc4d33e41f', '{8.38,8.58,25.48,16.98,9.7,98.516,1231.4499999999982,0.5060386473429952,0,0.13936669947687272,0.3500000000000014,-0.0014922211953172291,0.0010174235422617279,0.14203960186535908}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-14 16:00:00+00', '019ced13-7000-75ba-af74-dbcc4d33e41f', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.49396135265700475,0,0.13936669947687289,0.3500000000000014,-0.0015287202146127233,0.0010423092372357798,0.14203960186535952}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-15 16:00:00+00', '019cf239-cc00-709d-9175-1b25cbac3e9c', '{8.38,8.58,25.78,16.98,9.7,98.46599999999998,1230.8249999999982,0.5060386473429952,0,0.14005493427717797,0.3899999999999988,0.0005968310198108207,2.7128682718442352e-05,0.1421302071199898}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-15 16:00:00+00', '019cf239-cc00-709d-9175-1b25cbac3e9c', '{8.18,8.38,25.18,16.580000000000002,9.7,96.11600000000006,1201.4499999999991,0.49396135265700475,0,0.14005493427717816,0.3899999999999997,0.000611427782489593,2.7792171931315513e-05,0.14213020711998986}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-16 16:00:00+00', '019cf760-2800-74f4-b5b2-11e2f0d57b25', '{8.38,8.58,25.18,17.009999999999998,9.7,98.491,1231.1374999999982,0.5060386473429952,0,0.13936669947687272,0.34999999999999964,-0.0014910728028324155,-0.0010166405473854296,0.1420396018653589}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-16 16:00:00+00', '019cf760-2800-74f4-b5b2-11e2f0d57b25', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.49396135265700475,0,0.13936669947687289,0.34999999999999964,-0.0015275149795016475,-0.0010414874860238308,0.14203960186535955}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-17 16:00:00+00', '019cfc86-8400-70fc-9ead-56113f7e0c63', '{8.38,8.58,25.78,16.98,9.7,98.541,1231.7624999999982,0.5060386473429952,0,0.13966207253758814,0.34499999999999886,-0.001491646778043087,-0.002101865914515076,0.13509204733437408}', '{8.41194066727772,8.612702974372642,25.689802889766185,17.053021624549537,9.708189354689216,98.89973155605614,1236.2453806839358,0.5060386473429953,0,0.14029338639846792,0.359407676874008,0.0003195859525851296,0.00010402256436314075,0.13913002403333505}', '{8.230456108487527,8.426887041864315,25.49380738173147,16.789639640301296,9.577515802732405,95.75900315535688,1205.9882048293248,0.5060386473429954,0,0.1364891071546499,0.3367043582404052,-0.0015983767951123621,-0.002213516484435958,0.1317430365998344}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-17 16:00:00+00', '019cfc86-8400-70fc-9ead-56113f7e0c63', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.49396135265700475,0,0.13966207253758833,0.34499999999999886,-0.001528117359413116,-0.0021532562791731456,0.13509204733437444}', '{8.211178360182823,8.41194066727772,25.08745860959535,16.651478212057725,9.708189354689216,96.53974274726131,1206.7455507395448,0.49396135265700475,0,0.1402933863984682,0.37060650407166223,0.000327596577724364,8.532469713475743e-05,0.14115998585008524}', '{8.034025175110735,8.230456108487527,24.900527396087334,16.394123853851497,9.577515802732405,93.47540374452576,1177.2285700759037,0.4939613526570048,0,0.13648910715465004,0.33667559879990466,-0.0016374384461221257,-0.0022676317637926524,0.13174174866172444}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-18 16:00:00+00', '019d01ac-e000-7017-b162-019a351dcc85', '{8.38,8.58,25.78,16.98,9.7,98.44099999999999,1230.5124999999982,0.5060386473429952,0,0.13966207253758814,0.34500000000000064,0.0008953327171902102,0.001858493670531782,0.13129490467728977}', '{8.411944924350978,8.612707333046703,25.652380157012992,17.052892324116602,9.708192019333218,98.91958283785745,1236.4930117108306,0.5060386473429953,0,0.1402135160802422,0.35478777445811527,-0.00034631743567751345,-0.0003026748018756152,0.13962452419042443}', '{8.26175949907345,8.458937530077563,25.58876289903326,16.854103204583428,9.585562714840396,96.06257519385235,1209.815364509354,0.5060386473429953,0,0.13709167736867453,0.3375587477268397,0.0009380102870616316,0.0019108564218763583,0.12864632389341804}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-18 16:00:00+00', '019d01ac-e000-7017-b162-019a351dcc85', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.49396135265700475,0,0.13966207253758833,0.3899999999999997,0.0009164186752330813,0.001818952219023033,0.1391361396236453}', '{8.21118251565525,8.411944924350978,25.05004188879209,16.651351949885083,9.708192019333218,96.55959277441552,1206.9931782271808,0.4939613526570047,0,0.14021351608024232,0.3600264528961009,-0.00035487837625803654,-0.00032008090479964746,0.1406189284606116}', '{8.064581468069303,8.26175949907345,24.99320689611626,16.457068890767278,9.585562714840396,93.76930856702563,1180.933886016871,0.49396135265700475,0,0.13709167736867478,0.382593526311687,0.0009601092005000895,0.0018701504883022978,0.13640798715019944}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-19 16:00:00+00', '019d06d3-3c00-71ab-9ba2-8350f5c49360', '{8.38,8.58,25.48,16.98,9.7,98.516,1231.4499999999982,0.5060386473429952,0,0.13936669947687272,0.3500000000000014,0.0014922211953174412,0.0010174235422617279,0.14203960186535927}', '{8.346333860735415,8.545530372924757,25.504489006195715,16.914902378942383,9.691216142364862,98.03912262797616,1225.48403313709,0.5060386473429953,0,0.13895018846685908,0.35439600785195063,8.766454718629605e-05,-0.00017083726630017513,0.13730025020709785}', '{8.297657207501882,8.495691985723901,25.38995337053362,16.91956193165605,9.59435667981769,96.57898966851101,1216.3189817176471,0.5060386473429953,0,0.13748549999402754,0.34514701620256494,0.0014606151010298975,0.000990633373164215,0.13994468477955768}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-19 16:00:00+00', '019d06d3-3c00-71ab-9ba2-8350f5c49360', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.49396135265700475,0,0.13936669947687289,0.3500000000000014,0.0015287202146127233,0.0010423092372355625,0.1420396018653593}', '{8.147137348546014,8.346333860735415,24.90699390062369,16.516592102493103,9.691216142364862,95.69984023602706,1196.2431234009705,0.4939613526570047,0,0.13895018846685916,0.3642008805969375,8.99907159224811e-05,-0.0001940500824423321,0.13908490087341238}', '{8.099622429279911,8.297657207501882,24.792087545324016,16.520986533923093,9.59435667981769,94.27520101412948,1187.3049921846164,0.49396135265700475,0,0.13748549999402782,0.3452044545006576,0.0014963536930776903,0.0010144442445261823,0.139959097905049}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-20 16:00:00+00', '019d0bf9-9800-75e6-8821-9415409a5dac', '{8.38,8.58,25.78,16.98,9.7,98.46599999999998,1230.8249999999982,0.5060386473429952,0,0.14005493427717797,0.3899999999999988,-0.0005968310198110326,2.7128682718654388e-05,0.14213020711998936}', '{8.346317862215608,8.545513992578721,25.47044791204999,16.914774344208404,9.691210305260713,98.04562951522786,1225.5659168127672,0.5060386473429955,0,0.13886553356162995,0.34989611619036176,-0.0001955065551633577,-5.1546706417191084e-05,0.1372893120721094}', '{8.32777061558611,8.526524090898441,25.78565035568122,16.984326752641365,9.60219078485239,96.93040479078705,1220.747742785704,0.5060386473429952,0,0.1387764897946073,0.3858589166411567,-0.0005908110984945785,2.5946800802814013e-05,0.14072829314502927}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-20 16:00:00+00', '019d0bf9-9800-75e6-8821-9415409a5dac', '{8.18,8.38,25.18,16.580000000000002,9.7,96.11600000000006,1201.4499999999991,0.49396135265700475,0,0.14005493427717816,0.3899999999999997,-0.0006114277824895929,2.7792171931315506e-05,0.14213020711998983}', '{8.147121731852454,8.346317862215608,24.872959070263896,16.516467086460253,9.691210305260713,95.70635519839976,1196.3250949912165,0.4939613526570049,0,0.13886553356162995,0.3596260869171533,-0.00020046826320721983,-7.184500045178599e-05,0.13907388324896267}', '{8.129017140273815,8.32777061558611,25.185498103586472,16.58422540843564,9.60219078485239,94.61711334679748,1191.614002254232,0.4939613526570048,0,0.13877648979460752,0.38599585510731393,-0.0006052647569005769,2.629581278456211e-05,0.14073802748149805}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-21 16:00:00+00', '019d111f-f400-74f5-b8f0-f443a333d44a', '{9.98,10.18,29.98,20.21,9.7,117.29099999999984,1466.1374999999978,0.5495594713656388,0,0.13936669947687216,0.34999999999999787,0.0012521002972729516,-0.0008537047481406893,0.14203960186535877}', '{8.4089614897375,8.609652694743163,25.697157747236545,17.0509834049176,9.707668002105585,98.88392334392178,1236.048646223594,0.506038647342995,0,0.14024835595159302,0.3572826615261918,0.00023864037041524793,-4.3089909428975317e-05,0.13912437036540276}', '{9.81922630772446,10.016004390043557,29.64761726122891,19.986101125053878,9.580053496507304,114.12347140521742,1437.2708493532205,0.5495594713656391,0,0.13628621438762012,0.3418611764941798,0.001252127024481965,-0.0008536995092317083,0.138631617344592}', '{t,t,f,f,f,t,t,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-21 16:00:00+00', '019d111f-f400-74f5-b8f0-f443a333d44a', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.45044052863436124,0,0.13936669947687289,0.34999999999999964,0.0015275149795016475,-0.001041487486024048,0.14203960186535938}', '{8.208270284731837,8.4089614897375,25.094835562625246,16.64945272735457,9.707668002105585,96.52454786629534,1206.5564621917079,0.4939613526570046,0,0.14024835595159318,0.36616708988090574,0.0002446369290053636,-6.113523512649518e-05,0.14074584404872886}', '{8.048223566852311,8.24500164917144,24.30747789463,16.42598404763621,9.580053496507304,93.54464250801371,1178.101105184127,0.45044052863436124,0,0.1362862143876209,0.34176934608830967,0.0015275423489883326,-0.0010414808511150122,0.13863360826042437}', '{f,f,f,f,f,f,f,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-22 16:00:00+00', '019d1646-5000-7054-8a4a-81ba398cc3fa', '{9.98,10.18,30.580000000000002,20.18,9.7,117.34099999999997,1466.7624999999978,0.5495594713656388,0,0.13966207253758764,0.3449999999999971,0.0012525050100201467,-0.0017648934232100532,0.13509204733437363}', '{8.408966245725349,8.609657564239066,25.697028971016202,17.05089664735418,9.707670841037014,98.88400609288001,1236.0492006305792,0.5060386473429953,0,0.14024832237044269,0.35728213144255494,-0.00023864168919181106,-4.3089650930713065e-05,0.13912397962081255}', '{9.853100979380452,10.050557912834966,30.356284132432204,20.03252072870576,9.587595978762725,114.62607309126055,1443.6050917777602,0.549559471365639,0,0.13718656560598336,0.3385663437227012,0.0012524888300122859,-0.0017648902516976177,0.1324919687197057}', '{t,t,f,f,f,t,t,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-22 16:00:00+00', '019d1646-5000-7054-8a4a-81ba398cc3fa', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.45044052863436124,0,0.13966207253758833,0.34499999999999886,0.001528117359412899,-0.0021532562791731456,0.13509204733437458}', '{8.208274927211587,8.408966245725349,25.094709794513207,16.649368007807976,9.707670841037014,96.52462864087478,1206.5570033707208,0.49396135265700464,0,0.14024832237044285,0.36616617269635354,-0.0002446382794737369,-6.113490774666356e-05,0.14074542645873633}', '{8.07598857828983,8.273445511744306,24.99578193039291,16.458830148152558,9.587595978762725,93.96542211797671,1183.4040734568284,0.45044052863436135,0,0.13718656560598402,0.33849434829155683,0.0015281007905885839,-0.002153252262555936,0.1324936391917156}', '{f,f,f,f,f,f,f,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'extend', '2026-03-23 16:00:00+00', '019d1b6c-ac00-71d2-bcc6-608e8373a266', '{9.98,10.18,30.580000000000002,20.18,9.7,117.24099999999987,1465.5124999999978,0.5495594713656388,0,0.13966207253758764,0.3449999999999971,-0.0007517459906879002,0.0015604424352159303,0.1312949046772896}', '{8.351168704015183,8.55048060625897,25.659829032425208,17.037050065830993,9.692062283601713,98.1007723070553,1226.255455670275,0.506038647342995,0,0.1389649815216701,0.35364447487545425,0.00027918931510759263,-7.55124354991928e-05,0.13789373967593643}', '{9.887178526398763,10.085318376627175,30.472272379077772,20.10900750699156,9.595175573146246,114.98549561167663,1448.1316753917795,0.5495594713656389,0,0.1378015968468218,0.3401638367907057,-0.000751729811096923,0.0015604456066466601,0.1293956353253186}', '{t,t,f,f,f,t,t,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'extend', '2026-03-23 16:00:00+00', '019d1b6c-ac00-71d2-bcc6-608e8373a266', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.45044052863436124,0,0.13966207253758833,0.3899999999999997,-0.0009164186752330813,0.00181895221902325,0.13913613962364504}', '{8.150838932426351,8.350125947889037,24.858804611992923,16.51975457518689,9.691942265168764,95.73853252776676,1196.7277727991143,0.493069105485338,0,0.13893419465659745,0.3613113347465886,0.0003506250478950214,-0.0001421199985053045,0.139499237405501}', '{8.108131342911006,8.306374163031093,25.094937123984536,16.522211090898757,9.595912678546657,94.27795539675952,1187.3402875686756,0.450689940738518,0,0.13783936109493583,0.38475863799393784,-0.0009456732296837493,0.0018413232815236646,0.13711795939068872}', '{f,f,f,f,f,f,f,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'front', 'retract', '2026-03-24 16:00:00+00', '019d2093-0800-7363-800a-2f23da528739', '{9.98,10.18,30.28,20.18,9.7,117.31599999999997,1466.4499999999978,0.5495594713656388,0,0.13936669947687216,0.34999999999999787,-0.0012529099844800116,0.0008542568075999917,0.14203960186535836}', '{8.351155782281252,8.550467376130435,25.501923132668374,16.921503707855255,9.692363735855166,98.10049566637804,1226.2524718617074,0.5060386473429954,0,0.13899981015232854,0.3539351074502982,-0.00023864960010916612,-4.308810028207649e-05,0.13777861746326653}', '{9.921308584271264,10.120132403595335,30.28844523075472,20.185702549152204,9.60273762471077,115.5169536094862,1454.8282622703668,0.5495594713656389,0,0.13812604742467863,0.3467211912848892,-0.0012529182535705172,0.0008542584284637905,0.1406660802635451}', '{t,t,f,f,f,t,t,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', 'rear', 'retract', '2026-03-24 16:00:00+00', '019d2093-0800-7363-800a-2f23da528739', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.45044052863436124,0,0.13936669947687289,0.3500000000000014,-0.0015287202146127233,0.0010423092372357798,0.14203960186535952}', '{8.150827173556957,8.350113901516792,24.911775758126996,16.517022927094903,9.691937341464476,95.74165215104085,1196.7672547954298,0.49306910661070263,0,0.13895771126836806,0.36085263152839986,-9.816677482388887e-05,-0.00023398116498186557,0.13888476977754463}', '{8.134712879084807,8.333605614514733,24.886849442480113,16.58517898375095,9.603229686887202,94.71305547098119,1192.8226486806698,0.4506068022679101,0,0.13814580515940675,0.3468822494828725,-0.0015556350599390755,0.001074100081125805,0.14070004137195363}', '{f,f,f,f,f,f,f,t,f,f,f,f,f,f}');

INSERT INTO public.people VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-3b90-72dc-a06d-cbb88725e91b', 'keeper@example.com', 'keeper', 'dealer', '$argon2id$v=19$m=19456,t=2,p=1$Qs+7LhTiIcbjBcA/rB+KhQ$X7/T5M57BfhYMux2bhldbwJ1UTeF/xvmtpb7RBj7UUg', '2026-11-26 02:52:57.07039+00', NULL, NULL, NULL, NULL, NULL, NULL, true, NULL, NULL, false, NULL, NULL, NULL, '\x5c988a791a7c45e68e91af00416285fb228d56ef061443bf920a9a985b2c9c4c');
INSERT INTO public.people VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-403c-71dc-aad1-d21ae6a5abaa', 'ines@example.com', 'Ines', 'technician', NULL, '2026-11-26 02:52:58.300703+00', NULL, NULL, NULL, NULL, NULL, NULL, true, NULL, NULL, false, NULL, NULL, NULL, '\xb9efd9add3d9437b8202ed13db61775b265c81f186fd4deca658fafa1e8182aa');

INSERT INTO public.record VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '2026-11-26 02:52:57.26724+00', 'b07bcbf5-c25e-4038-92de-9b30e5803624', NULL, NULL, 'person-added', 'people', '01a215c5-3b90-72dc-a06d-cbb88725e91b', NULL, '{"name": "keeper", "role": "dealer", "email": "keeper@example.com"}');
INSERT INTO public.record VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '2026-11-26 02:52:58.14219+00', '5508ea83-e221-41e6-b97e-d1efe02f1009', '01a215c5-3b90-72dc-a06d-cbb88725e91b', 'keeper', 'signed-in', 'sessions', '01a215c5-3f9b-7451-8cf8-ea4a3b3c93fb', NULL, '{}');
INSERT INTO public.record VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '2026-11-26 02:52:58.280116+00', '25e16767-f682-4ead-954d-27a27ccef2b8', '01a215c5-3b90-72dc-a06d-cbb88725e91b', 'keeper', 'logger-added', 'loggers', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-3fdc-7374-ad8d-1435ff55fbc7', '{"name": "Board"}');
INSERT INTO public.record VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '2026-11-26 02:52:58.302541+00', '195c6920-2282-4da5-ae34-45618b1d39f9', '01a215c5-3b90-72dc-a06d-cbb88725e91b', 'keeper', 'person-added', 'people', '01a215c5-403c-71dc-aad1-d21ae6a5abaa', NULL, '{"name": "Ines", "role": "technician", "email": "ines@example.com"}');
INSERT INTO public.record VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '2026-11-26 02:52:58.307553+00', '38342b08-0aea-4c9d-a440-c87e11ed42f5', '01a215c5-3b90-72dc-a06d-cbb88725e91b', 'keeper', 'invitation-made', 'invitations', NULL, NULL, '{"person_id": "01a215c5-403c-71dc-aad1-d21ae6a5abaa"}');
INSERT INTO public.record VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '2026-11-26 02:52:58.337883+00', '77c9d98a-fe24-41a9-b9e3-b8ce3551132e', '01a215c5-3b90-72dc-a06d-cbb88725e91b', 'keeper', 'service-recorded', 'services', '01a215c5-405d-7565-b96b-575e6698f027', '01a215c5-3fdc-7374-ad8d-1435ff55fbc7', '{"at": "2026-03-05T04:00:00+00:00", "kind": "cleaned", "room_id": "01a215c5-4006-7458-abd5-708383181f7e"}');
INSERT INTO public.record VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '2026-11-26 02:52:58.979344+00', '02f65710-0b6f-465a-b09c-4a468218e906', '01a215c5-3b90-72dc-a06d-cbb88725e91b', 'keeper', 'signed-in', 'sessions', '01a215c5-42e1-76a4-bf1e-54cd800cd9e9', NULL, '{}');

INSERT INTO public.room_checkpoints VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', '2026-03-24 16:00:00+00', 25, 3, '\x8bbe670080aaaaaaeaff747530800fff6266c02c2b4bfcd37c18f8f0073e0cfc0fd303ff921007af08cb8a808a744f70f7a8fc35f9c3ef9d58fd9f53253994ca929cc6444e0a1a1a1a1a0a0ada92d34369c10b0d03031b0e7c1c66b2f397e2855f6d8dcae3b9e389ad186a45ccb2de7fe4efe576bdfef88fd7e56901cfc67cc92d80da3a52dbf98fd7dc1a7239c5ef7d2ceb72bb5e7f2c4fbf97d7dbfbdfc7f2b4bc5fb65fe78f8f655deeefafc77d79fab67cbf5d2f8f655d6ec7f9b63cafcbe376fefbf8f8cfe3713beecb13f659973f8ff3edbf8fe3f1b63c5d3e3f3ed6e5767ef9ebff797fbcbcfde78fe5e9f2f9f1b12eb7f3e378fdb71f3fefcb76fc7b5dae3fde2fe78ffff7faf1b82f4fb475f979bdbf3fdeff3efefdfd76bc3cdeaf97e56939febfc771795dbed6e5e5ed7cb91c1ff7e5e9dbefe5fefe7a2c4fcbf7dbf5f258d6e5d5ca7b6e5d5eae97d7f7c7fbf5725f9ebe7ddbb0633e5cbd62dd72dd7aef7a5eb709e7be6ebd672026cf75ebdd8998dcd7ad773462f25cb7da6588c97ddd6acf464c96eb56bb6f1293f9bad58e6da2f25cb7dc3b11f3ff535fb7dca39f9fd7e5eff3c7e7715f9ebe7db39d968a1e468ccfd86a3b63c27de831a3e6eabb59210153b10cf4d576b90b0c54a0bbe1abedd6464b2913e3de6beca9994ab64724cd63ed9dcc1a17bbd3bdb5624f145c15ed6133692bd68dfb342aaac6554153af1b77c4c88c1631aa56afd801c6106d82c9cde0b96ed8018255818c7665d8d4ba719f64c578bb54258fe795842b3c1993a3994e12c15c6d971bbc2848ce0bb749d022dbe5131ec6012b54c164c942e4ff44296d32d813eda175e38e0a23549c4477e6ba6107a049776b360746d88a1da052315e8d74668dd6cd76381ce348c69847e3cda136e9c4586624a80c9fc934f70888fbb9ca3664648595b9ad1bf60916943e4a45882b7600392527382264e8127a1dac692a595311e669ebc67d92204b331d83e9e7f5db3930fc9784c08941b435d2ac13bdf6ce9388b498f4ec62ac3807221e8a81592810640c2baa5b0887ba845e630455398c64a26bdd6c07d8a301ba87def9ccc13590b7c6e568f89415aea31a35cdf4504f08903ad1c55438dd29887a2c054c5e30ba999193ce8ee019c010ec30cf302bb6f58400cf159301ac1057114b81ff3682ec795dbebf3ffae1f4332fd7e3fbf7f797f7e3f2b82f4fdf6c271dd966d60eb788153b08200a5131700daf36f4331e210b6fa5d390f9bc2e2fd7bfcfb7f7f3e5e5589ebe61076046ccb437a319e6099c30a019432030c318161918416b97678d0772c0350b11e8559a99ea32d54c877cddb8a7944a413199dd766c32a0ba7b2993e8df9384bb98264774cef3badc5fce1fc7f2841d943a6501af08735b97d7e3cfdb71dcffefefffc7ed385eaf3f9627c65e83284a39616dfa5a390f00af0a37637b1900ef5c08f8e798c1b039bde19f124576cff9422a4d421225b4e77c2e047cf3a8119e6806d115c6a776ca23a7487cc5ab7c374f73564e85508a153b7a80649b05cb51b68290308a99f636a726c68320bdd5a4b238915c11824628aff2f62e9518ec49425039dd202b8bd0142aa291f0e76a9a01f35a37ee563e1a126d1da2d0d5fc4b584463a887a5b222139516e02e2af3b19ab26e8d1311605a5393434399c77708c912d5e1953db224dc6a9650474f8c873743417489de93e115f11d8269d99961e1348d822c02d0886813a22dbbd79468015033dd128a342be29a8514e8c678267acf5068547a271b0e67e352f79e9a676b21ca3d170cb5d27dcac7a6a393f01e62502c20a2420a44a9c69c28637505e3a19fb442b47b4f065bb66ed8a198492131ad2472ddb00368a92cbb86c52292f2d00966258c69ee92a66225978066c22bc72c333d9d58640a43847b555b0db97cc462e4fc2983a9caa3d78d3bcce9394503868eaee65dd2221aa2897253b6183d46b98b299f2e68da308a28cec3a8079461d20585e087b16755d6a48695ddf412ea1825ac6485ac2a200c9fce66b6309903a33c044d9c24389d2e711827cc1c7132e9690ad0c130a1b1762251c13450d54274bb44afc8194d37338353d1ebe6bb65d3a3d5e6623ae35dddfb61034c6b6b7659784503c5b80b2d66bcd95d28f624a2f44a9a0f23872cf871ef98694d75b2aac78f993008b62a69594202a4777a5b7546260109514a18a72de8e9954616cb1847a8c34a0823a17124dc738c1345543590a4dcb77858c1aa99668c693192f3ded6fd9445bad9986c2d30adad2d8b12822627dda707e1c82c4c962152e9005ae14af85b4314afd41e0db789b60c07fcd88c6bee992493e6b46cf9b1b1390f61d0e44d560dcd2d8b483a0158cca85926b9a3a7cc60f694920d4b7644b1d0d48c44e0c26266a6736f66b575e3eea72baccaf2d8e8ca0acbbb711f751b09233a177b8c99a35bc1103a8eadd97731da435163268f490f84f561c98d01383d970756ac58c161009bb78f44e354b6d4474e706606894074928a12829e9de27802e12103b5b74f43e94f02f01eb962ddb887c3ad3b0032bb3a626dcdb7b8412c86c6474a85234795acb970a84c557a86d750a4859126d0931146343c5cfd6736eea3aaa112f4b1f03864c200e9c9086b9a9bfbdd8b81110d073d1a0d6b2200ccc1b46e99ca3a251b6831ca6246d295d90dc1d0b333644cb7e93407d50c16add803959f53b87cc639bd6eb69b477579a42016e5fdbdefc306189a40a55766cb0952de4306f33647aa47ee88d2ca234172188c075f85b4ce8a1458a6f095bbdc271521b5d399c7d62bdda436b254d320e746318c9da6b154b54388090abb021161745fcdd8bb28cb9c9c560e7a6befe233634177b6b336f3080609799281990ea5c983bbab78176eef9734b01013902b6bccddc3c876745a25266b8ac52c1c0526588ccc4ca9c9b53f45d14fbaaa1ad36561c5acd5f714cbc78caa088f38b65973b776614099065dc736811d3801a25085292bc574934442c0cc687cdc0783bb3e0bc16873a0386d46b7080bc1a7666666009074c9d68dbb934e6165751e1b61c2c2f26e31a35bf8a57181f012c6d2e05d50de26f6b03134ceb690fb088af1b03e06f7f26a7ad7c52f20dbc1d3cf8543518de4cc84d7da3b8ceee9e60a03f3d888953bdcdb879619cee2417e8c9a33e86195d16ec2bb447e11c018a431171ef95169d5994c747b11574d44e00dfb192a84028f5eb290771a9f17617997f6901aeb90c909780931b0867921dba3dec130467b20536af988ff38cdac331559c60608e9dc67aadada80bc23be60c0449f1c7a567b54e79a5028db40ebb2c918845042e55333dd63323619594cc90850dd85ee1b9f804be1ecd474cca8a3880e58dc92cc3aa19a6c4e6a58d728c6732265d89a63d1c69e05800c2cc634c74526bdbadce87630d5816ee5a0b23416e9114fb71b3cdadcddacbf9ed7e5fe76fe79dc97a76f97cf8f8f75e10b8be775f938fe3e3e3a2d46d981621510574e12bb1567583d6a152aaba0eaa6a37380b3207aa6311d8e58f1c9692368691613dd72cbb028622cf32e774e7b05a3578f0403e9f2697438c43031086e6191e3198a52afd39c974d22141d6c2ff9f3badc8e97e3f238a2ee675de99d96980c596ac58eb0180bda102e84ad1b76009cce84a281c90ad77a382e6676658e7945ba6b04c2c9501a3ae46939b61e3a03f78a119b119603c606abf4c654f79872f5423fa108a44d792ad39ed7e5e338df2e8f7f7bfce77d7962b78f170000ebf2f376fdfefe71c48059b47be70d1a3fd655bb6ba1d7d8a8b156b4601be50faf152dd8b556ed5e654e1f42475768ec4cb4d06b6cd4582b5ab08df287d78a166c36ab768fe3a0f421e6e80a8d9d89167a8d8d1a6b450bb651fef05ad182ff61dbc676a2855e63a3c65ad1826d943fb676cc4ec5fd783c3ede2f7f2a974c79398ed7e37579928889d6fff37f9627e608ba7f148c75f9382e0f339abe5681526c7e3b1eb7f3cb43a1343c8b75ebbd243a51b9ad5befe1129e983cd6ad77ce3631b9ad5bed9388c962dd6aef4d62725bb7da23b689c963dd6a672326b375cb5d558cca63dd722f2226b775cbdd5da174ed4fa4d0680934a4d239ef151a8ba943a2e19591285c455ca1f169201b07bc91682c66435c618ac627876c24707a325198dc8299453c8112b501530a1f1ca9a7f598426d69d92a50f37d5708fc9214f0b6fa34d99e56d13c25811a2f845b5aa0bd402dab0c97e09b6801f0de786781daed0cd8ead3fecf7c0a7c44a1042ac192b987e5348ce65e51e1d9b20103833d621c302b69585683a241103ee691d6c390dd8c9b129a09513de04f53761667e04e14811a2bcb810e3e64313ee87e9aaae951ceba71e7509cb2180f84f3d8e487ebee8f5b2012deee35a5a46b44b48f2975d1c3a27bcca6104635f076eb84bb8786a2fd276c6700ea123d40efa4ddb75440f84b00ecbbf9c0ad9d236fb54ec9142eb8327320c94217d1d91e316432a23c04a22ba3a14a4dd4359a4f001a99221c3161b02e6264e53e291fa705ac840f188c318e8b5d150e5bb7d94366ca112aa260756c03ae399f10163e71830e423daed084d0448df7f760998f0d39d650750778184d6b2a5291560c4708caa4eaaea29b4d25dda6240365e3fc6e89c52ea8151a5a96328bf020a888eaf6c1185a0418a0915b0f8b3e9ebba2c40b30ca31c36cb1aa8c6b2663d18df20c9c24c17aa7729835d565247635ef539b4124845a1d238faa1a61d8d94d2a25cd8c915e1114221554382c998db04a2b54bb4dd1876a192a660a529a178c964e08a335b0e8e94e9895230851adee1c28cbdc84ae2c6656a099aa2fd8e89c544dbb91e161123b72fe145de19569ebd67b7522e9843b6d9cf44bdd7ddd627b426034d11d35ed01ba7ca0df19854a8aa73cc5e6b01e463d60400e1ab3127e1c7b36d2951dac320e08758c3aaba62b8a28200c9fee8c604f467635e94138368532478daaaa419039ea4aa4a13ad34a08c14579786adac93c63aa0612770d94844a4f560f866a8b75b33dc2db47d3610d665c312f55f7758b291a1da6b55368b0dc6843cedda49cd13a65e355c540941a9172b8aca7e1c7bd13de456f8f980892c1185d5e5de19955436fdaadaa86226a1270d6a3142b54362b2d21981b91a58fb75b59ed8da18bf262767691654554b5a8b3be9a1003a325030a7958d0d8d59d8fa46f0c2697459748d7aa51c6f61e8757894a588dc945bd31a8a722268794c303feba54e96caebe8f13de9995398a3c3636ae043135d6215a295cc918a52781da0c1c6d49f5d34483017a7465b6752512cd610ed96ca44a696f6bad1b77375de672746995dccd064b22a155a2cdfaad51d22a696a93993b6ba44a5f3513f31889a4d80f1cd22a4176c8ca630a3616818bea404d1498992068258eb3c22d0335e8eadbdfb54acf584f9bf9ba71475bb755b683d39db035df2283580c4d80983264ab9a01eb7e9b56292f8da9bbc3117ad5c67d646651416f2bccaa3d73c2dbbca6224bc7d6d981704413e84a035453cfdfaff0035617c4aac9a63daf76744d5a8426c74bb4926e25833394e195326c7bfbdba3eda7c44c206dddb85797d554cba7d434b29d8aef8681142c82260ce9e9342f538cf6934a49e9f22aab0e439c46d18a2995c2d38f36ee08215d9dddb8f962846466644280409592a31514d288e16c87a0456326daa7a77b825686318acc3299d49c2c6224a39c2db65388126e1bdce97e262a3d2c62ddb8777945a83cc581f17da97817b7086cf8461398319995853102dbc5b44a485556ea6a38c2608285704bd654f31d4ab1f4b3aeca560d67aaa975f33dc576268a544dc6b1cdbaf93e9991aaee34f9e8d8e639befd18101c3688449b91a09409544e4d131059658c4984a50fcbd45e2e70d5e656969e7c2b00a02c4b4609ddddac644f68669c6df9dc5ef7e7543111e172025e220c88ca8c2a555671ef7aa5a2681ead44a412ce282a7ba23d909881e150454f50d6dd122cd1ab9265f4421bfcd888b5f74eb770ca54e393c7463cb7401899a3020105726cdd198d94665de305b56e074904cd932401b545f496ff156d187072b262ca58654abb1516dbd17fa27f6b31d9985c10bc8454629056c1bd2769958a116a1a86482513eec956230250164cb625671c162531e6c518c0babb7b0c43a98a6965ca199dd40330021d70d1a330905b8216d316e96dc516a384d1d0dbbd222bd056e0caf6e20674cb34cf8c19bbb2d68dbb8c90a7292d949d3a6ccdf794691089316d8407334d7417e50ea43a2006c7c9ec243c02b47306e65e9d2ab9d25be3c0675d0774e0b321b4590266820f925568733de99381c68f036b450bbd87cd1adb89166ca3fc2dd68a16ecc35e450bbd87cd1adb89166c16ab7617999c3e0e98496f40e3c781b5a205fb8d16df63d6702d5ab0524aa8b74363b78db5a2855e63a3c7d6be9b0467b91de7dbf4407f377068f6a43cd72d770a31b9af5bec9280c707c11a63a21895a975c615ef6b7c3770dc89a0b734abed228018f3b23478adb3eb84d44a31553e98d466d36b86199190b15b932bf6189fa2a75536109d2b2618f14e5df08efd17ccb44ec6f42458d17967468008863a54b0c0fc3c54996064b2043d4e426b861100719a318d66ccf442c1b5d2266779a1d91824900a0b87477a943888dbcf2f3379ceb0e39db28f964e60584155a7b943f4757e21d2a949330ecc2d6925d51c16f0e03028787ba899d9939e3e3320d514e15365968ec8dd04431307de291b541619d62dbb91a6547002d63dc6e6389d99f418e0ddfc426f1f03cf967bf6c8c0cc5a7bc7182a222c31c2e04ab5f9a536f30ba13491ed3941270b06a55b96f5b09d91a560f37e1b0788810aab56635ac2557474aa42d1806714502944629829d8a65f9304262f185d6d3046d1da3c0c0812618e316ff3ccb2b380da330c3d9e04fec5280bc24404d2541e5eb4c03f281ce1e0ddfb81c7655c08032bb0c3bb1aad29b27a909964442a0d8c08f9f428ba3c5a03678113e04458f4881e6daeecb131d28c0368b413d3250c7cba479e6e61acc14ddb3618450085a581f2f9a624013774a0596dc51a73bfd4bd1fb7809889f20aaff119e7f0997b02eceeb28ca8e86aa30fa08560ed65e69a04ac833e58e93f613b19c11c976521a2245c6643b904e1fe79cc304c8a59b3a3f03e5ebf2765e9443403370df6748fd3eaece9161fa6ec5ace0f5b54d89ea30c719307d95f70c27723118dc058cb597222a36680e8ccea313068f322841e4642bb15812268c5c89980861476400132521d5520b38c3dd46548c9ab53a832ae99888346ce9fcaced40c7cddb85b668607291a7c4877eafe8f9b60a86d6a2218644c07eb2ece29260936ca6493b487d1341b558c4c5466808790c0308d5b502ce7ddaa165e99320b160c1067c868985516c2c81a9635acc8418148a72c6b7412d6be9cb8d15941774e25638ab866210dbad15ea48795a641c07da09e44e794e0eedc8b2ca221d40cfa5844737c48efa1968466394496388fd06b06a3149932ca43d00a25c9cad32c2d345c564bc92ad5187e0dc2c0f6a88c18ca5ad9995282d0670a70939a162aba08433331c5700d1261450caca2cb0b544071b747074d46d2578ad1cf9a08cf9eced054955513a9e1bad4ddd72d761a2e58c599318eb5554da0a7b747012a37a19e3545e0dadb0bad0c798e65c18f63cf705787b9575ba786cbae59913d47068947b9d1cc2ab36cb2210aa6d6948c7a9a49e913a99e09bc2c648e5ce9e99ecc30720d884e06c6d5e6a6474db666323e6a1a555ce71beec1e875f31d8181012dd35c2f2f0ddf470d202931e49e3309886f179967cdc013547a4fa21646b577787a8fa95d15e2a113bda3aba09854c4445784719ab84b8b1ece18ba8a730b02a2a2badc904e7a5c591ca70ccce4e6ce626e0ae428ca8d1e9d0c22c8f14941a66630566e4ff95229e3b1cbabbc82a608702acea7948157886e643dcfb130f83c04fd9176851e34785a20b614346e3e0cf1c02bb0c7705a39d52e066be53eb2ce1c4e447b1d079de31e961a96855116c96313e721085a8ea2c3bb8c4297d00258cca8034c6629bb2e903d68041a364155d3db23465b09d76255006dfcac728f9070f5361b641354a7510c8a3dba941d33a56a01971f348d13e155e36e08e1da875ee32d56a72b70256844d0dd3c94619584309c9961caa31a05ebb3838047f428cbab2739546adadbdf055c997b5551f646a8871396d1ec46760cdabaefc306002a8331d098a879a6fa5055b00c782bc2d508c1da554630dbbad0c6993f4d33a560e01c17460764cf00c474867206610866862018a60ee6203cd9dd011b800637a612368d69314bd062d436034c32bd40c823d4029853d19507b86a30653cf4779f934d06a85a37db9919eac44c87c944b9b3733f555ac462a8cc3d3bad3cacd029d9852a41e5ee19a632911ea5ca3b23c3a6cb590f2298777465c23b6cb8a55300583695e14137152d4b090793e9adc218c42eda03baa36d804c119cc2cb428b117ac29b59e10d42de198e102a1d88126e6f7f53593ca506d4ddeb66bb4745201110ba959c7715df89f3631608e39a48a6b506d4cdf5347a59558f07bbf224cb5cc47e58fbf8349a6e6d3d8540bad6bcaaa66095f26a946b8d3d284b5ad09c6e736cb36e488504692398db6822154d792007c6d293745a0c31e09414747454cc4498d55a4698e1165311ea098c117cc8263dcd1f773685dd3b9a9b9b35a32c144297ea2ec4ef1e7967b335c1f014bdda396696c6fe471fc26a1a01ca868c42186832dcbd62e0ed4d1095d1dbdc2ebd74960c5f37ed394ed267c88ae90a5e148b6986c26bde2f3a724d446351ed2acb3626c83623a979ba95fb24708bc170b308b78c4e1fb541af6e726f839cb48a2af0e825ab7445d4fb52df43ba79df9988e172029e427bb5ac5aea8c84e38a4dec48a50f470d641bc4a9d659e5747837fc6736eea3489b8cc9a21c7df0061932414c4ff9a8cf01c6a1666431d419d5cc332080021d223dc766cabc12b4988e740b1b206c4a487785d30a961e9cdacb56b7974c386e3e18b6b91a9f1038e95d2917a30cb6eebc6170df1e628a3e2c97a92c8d7027637bdb7cff85162a3cdcc368ca0281e9189b92a2eba36231b110810db96a6775aedad9ac8f2e9b553b675d07aa7ad54eadda59fe71c963d54e69ada71ccb553b332d4ddadf6aecc4872db96a670e0b36d7aa9d9d2e9dea76d2be031fe538660370c963d5ceb0a3bf881dc887c33735ed1fd2047f802cebefc3a4488774594bac5bfe245c6466eb167b4faae47d5c95f04b64496f2c4b49431e62aa143b9be65acc8faa5224f0d1211b09465a96123d7577aba8224b11b270a54f244bb9b1f090326f713968f8c25f721ebcb1342f8daf3ca6cc9be0ca34da4bf304130bf1fba6813796e6c9a6cdf3df3ad05571de84c23f0ddc12c14d9bf76f1d99f05be4492d89f2e7cf844738d8fffee9d485906c24985fd21f7c44a0a5bb5766261312054346b799ce0e6fa0540d4abfefab74b857aa8283608133a085a2b238a2b269eb459ba0663291692e5a878a18db283cd111b2645695f10193db33febca848ab490118845759891e53d6b02dff0d13497418333116ec812a2c7340cc491a2d35d151b474b346946a43b098ecc9d147ff09dbc94ea373e03056f2ee9dac68f7cf9cc6b039c21198628acc9ef60552227037d9d33e03447ff14aa7b1abb9973188ad703ec3027142c68789f8f643df8d999487591300c11ec07b186828dac050188f36b58d555a111e425e932650ade964cc769aaaa666e8e693dc98338015ad87ea04c2ac55c6351371d0c8f713d11ac826d76df64021d109d06dcea75ec57dc3602377815073a27cccbc5df660a30753e68c1c0d65eec577184dc39aa199499f66dc7fc2762151dd339636650da3915659c5f28201dd822acbd2e5500c85b1579541454d202d12565509acd0744e01632b7234c068a226bd8c2b0613584477c2f36444a7835467213c8bd3ae1772f7eea7280baf183a0c35abe443c210e9d1eda2ec715384622642f33d0593404b4b4ca3475e4979085931cc6cd2ab3d4ba065d56254a333e409ab25586e43cf9e3c2e0263bcc2d595a32865d245189aa932c9904e591431e2a830558e30176f5b4dd544123492fe0c8d9154e6baf5ce9889564d6222a3f652733f955b7825d0615419cd22d8d35415e96e126869eeca904db823ae707030c2f417411c7b469b3507b0e89640cb6a8201a1804a12c7d09b13563ee1eeaac92821c81a4b07190cef025d0c98a361b5d04efe5c8905f0ac8c42aa7dfa7a4d0d0359bb0c94e6d77aa6c61d1cdabad96ea226ba731c8647414ed5f971034c4a2da7acdc2c308cbbc03c7b980a5987542b31a8c30b9611c9ae28f871ef10225152073ae390e904d0945b449742e3d1514ec0db90549b21913f0e134c9c2bd1edd93237c2f8ce795113e9e62aa1c48c268bb019f7b122ba35d0cd409c74efac191a591fa8cb933e64a0ab799f5826d190947a101d4347458cf772f3ec895076d0348af0083dbcd0c45898b5082370d767956d168eb1002f4240a24ee95123e08e9a704a1d8379c3a81de20898a850ca87c364b74b120a0de94967b50dbd84017a3822e499669a67a0dc321215f2a8cf526266261dd1b365d1e8288b918dcfaed51fcbd34e92dce8b67e6b7322f6e81a7a84a727da52a01556ba23dc91d38854ac2a9c100d57824ca09bd3d054a20e9cc0cc8ccfd4d0c812191a6ca942b222aca5f600b50dee02adcc02b4e8d991ee1186ca6ef878d7eed2707ed80243650833baa5949619c2fd26895689914578376dc1d76cdc479c50b4c5b8e7d4aadd5572963ca22d7ad6a74e77cfa6a5055b4c10c1f41de0d20709644c94196431437479a2c29d58c296aaa80cca942acb22ae6c3f2356b990fb145266d1b16edc8b9501a9c29a8acc0fb6e1feb00586ca6cb2d46ec85031de071de566260b330f441515e5cab4641c38b1718793e6eea88cc2645dc200c8527514d3ddebf267f4484d12c8aaaace3dd5b5c9c8acc694dd6365e9e16d4e588c52ac29d778aad7229a7a7e4594b228da7889691bdcd559e75d9542ac1bf78e893478d0cdf9635d97aa73698bd81ce3ee1d5f31a285ac60dcc1b4515963929d63e508a3711f4fa1a066754af0cb563d52e5f2d0588c202425ecbb758e4933c371ba42cbd1ab7cd2e5ad9cd60745c0ea50160d95091f87a3b925c3d593413243101d91546080d265d0a424b2b59104df05422baa130996ee6e32cd64a4e0e752dd43c3620a995c103cc5720bc01929cff2828e88ee328f2203714a472a3bc56a8198d7206710b2b22038e6b96aef9a9a11dbaa397dcc5bd52dd6eaf722a0a501cd7547f5b83f015447844ff8447725a9e31ba5656641520e18131d6e2ab9454f5496f1219b4d13648d3619f8e66686a1de4e750f12267e611b785433b6e544c2088f5eee3ef01e8cd40451aa37d53991cc6c83c009ee2346c1bc23476971e80653e56c4dbb9bb5bb2523025169d639adf6e8572508ea1e119e0a2bcffc0d4b0b2da6156d9d3319d93b2368526413d396d9f43a70cd402ae3f49e515445d9ba71174c59e3d9f2110a5dcd79c340b8bdcd31658c88379e15ceb803d9c9601800776523429fb29901bb327bbaad0f8bc54b40c4a89f1ac5542249d125698aa4fea6f42121b5322dddd6dcac8f4e46b1d3255556b24c5aad5fb7bf7c56ed46ff70dec1fb5b1c895812a1f1a3ceac3885be0f7758a9ed2405674e6acd4dab7f8443790ff596f6bc2e1fc7e5f5fdf2e7f2e24dd7debd3a92fabc2e97ebedc7f96379fafd8b93be250701ce7f1ce7fbe7ed78cd10b37d8da77cc3ce750bc7665a9ea687b2d3babc3f4897f2dec984468a5897fbc7f5e7f11f97efd7db8ff37b45917c9ba48f144e45eda23d6fc8f3bf5eaefba6192bf2a493c1c09600de3e52ab3526dcf11150fa6e61162af8f2cc1e7511c06d968a1edb9991f097b69719e5c9969b5789167e41a607c8cae516dd095f912e4f65d62db250f61e23c22fa8532fcbb26aef21f003954a6fe3d46abd22e411368eb8d2508a7d2a3124e354157ebadb1cae55117b6a54037f21cdd8f8202e23cd6bff7e05d523bcdc3dcb276584b9b955c9ac1b7050de3b993971e52f21cd64a877ccedc85a695efb3d3d57cfbd62f72c5756edfc73a5556fd07d62f74670954037c394158c2d6cca662f4760cf588156a622ea35ac1ae7050de9d9e4809b44e5b2d9cba62ec38a11474862509ac56329a355cabf8e7b3862f3da07e42050ee46c9239225371f79ce1886291b77985891b5f314e6944d0a716538774f7ac2af6dd8bb5396acea3939bda844ed86a53e7b3e3246aa821e05a8547b29ab18573029ec59e4058a2df72a236ad8cb613659d6ac03534d72b1064c027d2550a9708b3a0e587b4f3582d91885199def673689896c314cd9b84f7798177f9e74a99c6cd88bcb0cb6dbdc22722d59281b772b614270348e5451f1f5fcf55bbc57bff52fc6bf0f765aa6ea7b0a7eb0d3228ee1eb00a5a3e5665a487d9699700c5dc6dd10ae542a3546b589fec84ae5be5ba015cffe3c63da8a2cc566e2ecd0abd2502d6804b1e214a872e688a5a1c73b2b32e75774eaac3c5aa73ccbaa8718f8405f45e2b48a5f4bb1cfb76fe9384ba9af32cd20bc8da332f61ca0e0f0161a90d6b1436e477641f3d8d30d7e6dc3ee5939ae6c4137b32a25b41aa6de8fdad6afe89dcc9662dc5f6840e7b07e43c4b27728556f51b1e19d1d85419fa1b7b2a54cd08c9e3fa6b7b2ad4bb9719f1af3ae937f1dab49c466b54f64065538b38117d0cf479e6dc2b062e38e604d3fca5b1895a636c49591bd17b213fe72eb1db409869453d0cd0c1511354836a50be59e3983a1ce933a2b0b2d1af12b773ae1cf6d9733a7afe29f52770d31bb464d7da95c93d51308ace381ac61f45ab55757d05ff81ecd29876fa9eac2c092fbb48f4f56ce93c77864cc7527b234d85e69edf0179bed80da3b2abeb55425f4be67c6f25b8f62fcfb6037e5d78cab64608d193e04d22b477e865a95be1b9566055f91a91ad182397269cdfe9d7453bb0c97b69758d696089c1255ca98cc4c10964057da2ea8625839efbb8dac48e1f322ab6cca119e3b0383a4dbcfaf60f74a22aa1ad04d032b53185f838ade318c28f80b69261d86b8716425a59b5a6829d8bd1213c6ea79e7b2c0a0cdc4d80de6fe568dac28d8673ae9634de729acdd619ef1c2cdce79e695bb46e449d5a02a37ec95c2d416747bbfbd9cd1aa8ca01a9a0170e47c31541fc1cf2ba59421364b76ef9d2ea916f3ca967bcfc4f4a097d9a4bc52d7b0b1df945b442aaa8ea12532ba6f1099865604750c16b5a32a0806dd1c6693f4d43a50d9b84fd918a77e9e22141495c470b3714b43ede93e8d40c9dd266abad873724e8998a1957eabd772e40bfdb78bd4f8f7c16ecbaf195939d86df91347560ef65afeb84a95be1b1b16015f9189808c882cc4dae51e1852547936d118f44867659e280c92acd320c991954f8db572e8887880a534b022e81004940dbb573a4df02d892884c5d115bd635861f1e44bc32ab37763d054d580feb17613625ed47e1a5799dc31f0f6031e8d0afe397d952d6582ea78fe798eabac565e7945f315e6342f27e2f270db237539a55a5f4010e54e412f10a5481a94062c720f1f64b5a027755066777500e2b3d6eeeef0e7b66bd43d944fb7de530eb3c99e5b85986d4c8d35ccd15699aa62209b8c64223a2bee53017feebb4f949eafd3ae8a6bc39d1856729faa92ba7a9e22545ed55eb9b8cc907b615c956b0daa6dd8339aeaceea39e7396d19f9f5fcf5f5bc2e9ff7f31f1fc7f2f47b39de1d9b9627dada35b1c513ed6b5d3e2f5bd22bfee3f26fff75fdb53c615dee8ff33fcbd3efe5feb85dff3aeecb93c5ba7c9cefef44d5ed3464ebc7f9fef8f797cebedc7a3ecad7ba7c5ccfafcbd3ef17e836f21b9c3dfd5eee9f3fbeb84528d7e5f679599eb82eb7f7fb216e61c1bb61d1a49112d2fd35b14eb8103d8574d7644daf33c4516e998e8a4975e95ef0ca8ee8e84023aa57ec6c9a92183a7d0cf9bc2ebfceffdc97a76f24990d43b2ae8e3bf1bc2ef7e37cbf5e9627accbebf1f7bb9e864f6187011dc842b46b6abe5e179cef073e1eb4005df53896868d3e92760732b1a7eb31c82381aa9a1e4de797a30c8a44b9993cca9ded85a067d3c6581989f128b1c0da43164850ee6c7cc186b3c3bc3ccdf1acece9602b4bf1f5b52ef7b7f3ed589e7e2f9f3fc9a37324cc99de6d196c5b97cf9fff151f3cbf5e7ff146ebebf5d7e5bf38e4f5fef6fefd216fe57324cc1c1665c9ac3c36d65a76cd57faee8eaa41bb3aa3a68e8db56247781a6401b30aef796e7b0f44b7975946a060e1c749f3cff7bfa29fe4fe0ee9743f0da66fbfdfd4dcbd9d38b7373f4f6f6a5e3eafcbdbf1fee7db63054ff75fef6365a7afd5496f3cc97f8d8fbf2e9590e7f4606a01f1d7ad3d6ba7e4379f52c5f3d7d7ba7c9cffcc8af69e02c7cc77ffe356704f8149c4a963c5f3d7ba3c6ee7bf8f8febbe73eaf7727f5c7ffed7f9712c4f5c978ff3e3b867215aef6fd7db2383d12ba0f04153600916b62ef7c7f5e7cfe375797adc3e8faff5b7893d5a7c6a07d00383bb049765a7495cb5787afebaa874df537710142b7d6a42437c951e937230959986ebc1fbdbf5f6f8dfff599eb02ebfcef77ff14bd9f7f3c7fd58f37d58ceef9867767daaa77f9e6f8fe5893b003935ee328bceaf75b91d7f5c3f9b95b2ebedfdcff7cb45c5caff9f37787afafd2ed2019d15d9e65e643aac92a4b524680681ee9c401f450b2e533fafcb1ffffcabbbc3ebf7f3c7fde8d2f0e17d42a843333921cad8f02d63deb84e3ac8db5975e028f58c30ef7476ceecd468de91334158bcb3a8c12e587547b68d68f0a38c3abc531543531519ae1701e1ca4e250fb2dbec73f1b080bffc5a973f8eefd7db71d5a7f5fcfd71dc34de943abdb7aef01a56e6dcd9565f18798f1235dd0573b24f082e20532a1a4a5f4fa3d7c9b3dca6c7cb58f6bc2e7fbd5f5e97a7e5e5e3385f8ed7e56b5dde8ef3dfff04997d7279fabd9c7ffcbc2f4fdfb4b31dd328ebe930adfa1552ce2473e29d2c68b54cf3d787a0935e95ab769b2a76a144c157575f7ee6795dee8ff3c7c7f2f4cd727731fcab16accd68b5dc4765827a4a53e01e58bd965c511efe7ec7daf3ba9cffb8fe7d2c4fdf121ba5db8091c6dfa5f769c113820fbb56eda060c9e88ab1d4aa1d296356e5a423b96ac7a8d015408993abab2fdfd198c7de5d15871e6eb1b1a207511efa3e777bcae4eb7edbdebbccd9efe5f679b97cfb82c69bb96723c3337218c8153b5b1473aa6160f1a68f16511e1624f5566c942fef97dbe7fdcd15eb3e0d71d21c612024a63221662a08d079b67b9699c829e5f3ba1c97d77f3dae3f7dd12b4aa131731ba2612b767611085af7202a6cbd39513d8ef694673fafcbebe7edf691d339dfb8109dc10e405465995228c4d7a80d6c75a677a507351dc1e66c2893ed06f18bb7cc21c07d6c6a94f4a9293308d3e4822914920996ab68a2bd902d9586880428f6dc6736ec40b0935062a4c9d48a1df07b61ca2764967a7153835dc882d00a82d645e27590133ee9309a0506f4849c199d89769a553c7f7dadcbcbc7f5e5af3e94537efbbd7c5c2f7f1eb711277b7a92604d804353d7bafc7abb7e1ccb65d26c8cd2bb43416672ba92281ac26d6ceaf86cfb3dcdfd69163d4cf458ef6ea0deeddde99545b7bdf5f3af75f99fe3763db9dc5bef41bed5c5ddc5d3a1ade4eb8d3f3bf47bb91f97fbf5b6bd5e3fff789c2e1b2cdf7a40b45b9a1fb7cf85cbf4bcdaf652aa6c99eedc2cdfcf1f776bdfd872df61aefd3ace7f6df7cf9f3f3ffeb1bb86fa7abbfefc79bc6e1fd7f3eb41c6356bbb37ffc6e35cdfaeb7c7d6af2739b585adef27edb96a73efc51c33d2bfd6e5faf3b82c4fdf7e2fefff2b0bbd625ef947bd6ce717606b01dbcc8bb6efafc7f98fd73fbe7be4b118d274bcbe22a9ddcdf7bfbe7c1ce75bb9c197cf8f8f75f9fe7ebb3ffef5b85dff3afe2117deefe8245f6dfbe3e5a5b6820e79fbd9aa966e89dd05d7f8cfb81cf87757d20ed37fceb25db79e1f8fe3b6897df5fdf8fbb8bd3ffe599e965fe7c7cbdbb22e6fc7f9f5e3fd722c4fcb7fbf1da7dbf172bdbd9eaedf4f8fb7a3b1e9b9d3fdfdf538bddf4f97ebe3f4b89efe384e8fdbe7fd71bc3e9dfeebda44d37a4a93f47b9cce97d7d3fd71fef838bd7cde6ec7e5713a7f7c9c6ec7f9f56438fd2fa7b7f73fdf8edbe9f176be9c1e6fc73fa7d7f7d77d5997e3eff7d7e3f2722c4fbf97e325791a75666d5d5e8fc7f9fd63795a76f8e5f27523686aedf2df6318df20606b2fdf049c37fb6efe7a4e53fb2cebf2f276bcfc755f9ebe2dff3a8ed3e3edfc383dde8ed3cbc7f9c7cfd3fbfdf4fdf3e3e39fd3cbc7f57ebc9eceb7ebe7e5f574bd1ca75fefb7e374bd7cfcb39e1e6fc7e9f6fee7dbe3f4ebfccfe976fdbcbceecbbafceb789cde1ff7d3ff1cb7ebe9d7fbe3ed74b9d2687fe2fbc7f5d7fbe5cff574bebc9e5eae3f7e9e6fc7e9fd71faf5fe783b9d4ff7e3e57a793dfd381ec76d5f9ed7e5e5fc398e66c0f27f1dc7cfd3f1f771fbe77a39bc103cfe3e6eff9cdece97d7f574fd7c9cda9bc7536d5cf37bdcaed71febe9fd727f7f3d4ee7cbebe9faf9b8bfbf1eebe9d7dbfbc7717a7f9c5ece97d38febdfc7beaccbbfbfdf5fae97cbf1f2383dde8ed3fdf3e7cf8f7f4e9d7b3a7dfae7fa797a5c3f5fde4e3fae8febed7ebade4ebfde6f87659ffdeb72fd75faf5767e9c1e6fc7e98fdbf9afe3f47a3deea75f6fc7e574b6a4ff8cd3fbfdf479f9f9f1f9e79fc7ebbeaccb7fbf1da71fe7bf8edbff7a3ffd385f3ecf1fa7f3e5f5f4717d397f9c5eaeafc7fdf472fd719cbebfdfee8fffed747fdc3e5f1e9fb7f3c7e97c793d1d1fc7cbe3f6fe72fe38dd8e9fe7f7dbe9fd7efa75bdfd75fa7ebd9dcea78ff797e3723f5e4f8fe3e5edf2fef27ebeeccbf3d7f33a8a60d3c8e6f684d47f1eb797e3f2589e0c5f5f03');

INSERT INTO public.room_progress VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', NULL, 2, '{"verdict": "watch", "borrowed": null, "headline": "The record of the front side is not to be trusted: Running, inrush and stall current all read 20 % higher than they did.", "openWarnings": [{"id": "019d1b6c-ac00-7800-99c8-fdeabdbf345e", "kind": "sensor-doubt", "side": "front", "checks": ["See that the clamp is fully closed around one wire only, the right way round.", "Set its zero with no current flowing, and compare it with a second meter."], "pattern": null, "cautions": ["Keep everyone, and every hand, out of the travel of the room, inside and outside, while it can move.", "Disconnect the supply before you touch motors or wiring, and know what the brake does when a motor is unplugged.", "The maker''s manual and local codes come first; structural and electrical repair is work for a licensed technician."], "evidence": {"doubt": "scale", "detail": "Running, inrush and stall current all read 20 % higher than they did."}, "headline": "The record of the front side is not to be trusted: Running, inrush and stall current all read 20 % higher than they did.", "position": null, "severity": "watch", "direction": null, "openedAtMs": 1774281600000, "clearedAtMs": null, "firstStrokeId": "019d1b6c-ac00-71d2-bcc6-608e8373a266", "latestStrokeId": "019d2093-0800-7363-800a-2f23da528739"}], "usableStrokes": {"extend": 12, "retract": 12}}', '[{"side": "front", "limits": {"lower": 7.550321214118458, "upper": 9.065938221492127, "centre": 8.27349658122969}, "measure": "runningAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": 7.730519811114097, "upper": 9.282309062100504, "centre": 8.470954733526314}, "measure": "runningAmpsP90", "direction": "extend"}, {"side": "front", "limits": {"lower": 19.846385617511608, "upper": 32.94282297300862, "centre": 25.56943425365038}, "measure": "inrushAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": 13.227734908238496, "upper": 21.78924916473583, "centre": 16.97711435435017}, "measure": "endStopAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": 8.808827076883764, "upper": 10.434621285515522, "centre": 9.587323636806927}, "measure": "durationS", "direction": "extend"}, {"side": "front", "limits": {"lower": 85.79440142013644, "upper": 107.89790171241744, "centre": 96.21349121565837}, "measure": "chargeAs", "direction": "extend"}, {"side": "front", "limits": {"lower": 1080.4926993356237, "upper": 1358.8675270663232, "centre": 1211.7121945245146}, "measure": "energyJ", "direction": "extend"}, {"side": "front", "limits": {"lower": 0.47491884899494635, "upper": 0.537158445691044, "centre": 0.5060386473429952}, "measure": "share", "direction": "extend"}, {"side": "front", "limits": {"lower": -0.395795323659937, "upper": 0.395795323659937, "centre": 0}, "measure": "lagS", "direction": "extend"}, {"side": "front", "limits": {"lower": 0.09236775588927357, "upper": 0.20353630730039457, "centre": 0.13711379196611484}, "measure": "roughness", "direction": "extend"}, {"side": "front", "limits": {"lower": 0.2059516195555527, "upper": 0.5903460147135551, "centre": 0.34868713458976774}, "measure": "spreadAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": -0.09042916311500143, "upper": 0.09098757410439856, "centre": 0.0002792054946985697}, "measure": "slope", "direction": "extend"}, {"side": "front", "limits": {"lower": -0.09072324396602593, "upper": 0.09057222543788901, "centre": -0.00007550926406846292}, "measure": "bulge", "direction": "extend"}, {"side": "front", "limits": {"lower": 0.06334721025515536, "upper": 0.29154467666403205, "centre": 0.13589901372492635}, "measure": "rippleAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": 7.624491333096225, "upper": 9.039806368978414, "centre": 8.302043442017391}, "measure": "runningAmps", "direction": "retract"}, {"side": "front", "limits": {"lower": 7.806460099995885, "upper": 9.255553537689103, "centre": 8.500182903640706}, "measure": "runningAmpsP90", "direction": "retract"}, {"side": "front", "limits": {"lower": 19.834359322809036, "upper": 32.807256013891035, "centre": 25.509035735889793}, "measure": "inrushAmps", "direction": "retract"}, {"side": "front", "limits": {"lower": 13.211699085339392, "upper": 21.685260732638778, "centre": 16.92628545744015}, "measure": "endStopAmps", "direction": "retract"}, {"side": "front", "limits": {"lower": 8.854612932568351, "upper": 10.397680870400471, "centre": 9.595177929760686}, "measure": "durationS", "direction": "retract"}, {"side": "front", "limits": {"lower": 86.63392549867645, "upper": 107.7038854453898, "centre": 96.59611994067816}, "measure": "chargeAs", "direction": "retract"}, {"side": "front", "limits": {"lower": 1091.068961535386, "upper": 1356.4273226997252, "centre": 1216.5343194403572}, "measure": "energyJ", "direction": "retract"}, {"side": "front", "limits": {"lower": 0.4756596864546182, "upper": 0.5364176082313729, "centre": 0.5060386473429955}, "measure": "share", "direction": "retract"}, {"side": "front", "limits": {"lower": -0.3841711210773302, "upper": 0.3841711210773302, "centre": 0}, "measure": "lagS", "direction": "retract"}, {"side": "front", "limits": {"lower": 0.0938914449541613, "upper": 0.20213221261722458, "centre": 0.13776242417442056}, "measure": "roughness", "direction": "retract"}, {"side": "front", "limits": {"lower": 0.20899327027825101, "upper": 0.5882198394279233, "centre": 0.35061943455060984}, "measure": "spreadAmps", "direction": "retract"}, {"side": "front", "limits": {"lower": -0.08886546124861598, "upper": 0.08838814551021663, "centre": -0.0002386578691996718}, "measure": "slope", "direction": "retract"}, {"side": "front", "limits": {"lower": -0.08860807957176356, "upper": 0.088521906612927, "centre": -0.00004308647941827778}, "measure": "bulge", "direction": "retract"}, {"side": "front", "limits": {"lower": 0.06401521915647364, "upper": 0.2908307259356605, "centre": 0.1364462995401767}, "measure": "rippleAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": 7.420611729561402, "upper": 8.81327274469431, "centre": 8.087018925729208}, "measure": "runningAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": 7.6020447791839345, "upper": 9.028756185884891, "centre": 8.284745549830175}, "measure": "runningAmpsP90", "direction": "extend"}, {"side": "rear", "limits": {"lower": 19.49892324299149, "upper": 31.555087757179518, "centre": 24.805044529351363}, "measure": "inrushAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": 13.032652408695727, "upper": 20.809298555198772, "centre": 16.468161856706406}, "measure": "endStopAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": 8.853085812419016, "upper": 10.387587410227162, "centre": 9.589692525140963}, "measure": "durationS", "direction": "extend"}, {"side": "rear", "limits": {"lower": 84.36876930200653, "upper": 104.7501033648223, "centre": 94.00870866652744}, "measure": "chargeAs", "direction": "extend"}, {"side": "rear", "limits": {"lower": 1062.5408392525874, "upper": 1319.2235920463238, "centre": 1183.9463428106503}, "measure": "energyJ", "direction": "extend"}, {"side": "rear", "limits": {"lower": 0.4608364029120622, "upper": 0.523120790564221, "centre": 0.4919785967381416}, "measure": "share", "direction": "extend"}, {"side": "rear", "limits": {"lower": -0.3730413800106591, "upper": 0.3730413800106591, "centre": 0}, "measure": "lagS", "direction": "extend"}, {"side": "rear", "limits": {"lower": 0.09456883459254367, "upper": 0.19913877459908752, "centre": 0.1372309069999282}, "measure": "roughness", "direction": "extend"}, {"side": "rear", "limits": {"lower": 0.20520886069088823, "upper": 0.6289092406344421, "centre": 0.35924608383191253}, "measure": "spreadAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": -0.08523529188967523, "upper": 0.08557449720640935, "centre": 0.0001696026583670638}, "measure": "slope", "direction": "extend"}, {"side": "rear", "limits": {"lower": -0.08522683627743702, "upper": 0.08545428284928544, "centre": 0.00011372328592421143}, "measure": "bulge", "direction": "extend"}, {"side": "rear", "limits": {"lower": 0.06794475025636056, "upper": 0.278037662226201, "centre": 0.13744526009223293}, "measure": "rippleAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": 7.489051816490104, "upper": 8.787136705092943, "centre": 8.112171232353466}, "measure": "runningAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": 7.672158217871281, "upper": 9.001981123310358, "centre": 8.310512827276527}, "measure": "runningAmpsP90", "direction": "retract"}, {"side": "rear", "limits": {"lower": 19.72907991475029, "upper": 31.46711396632797, "centre": 24.916203686120394}, "measure": "inrushAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": 13.102629367430728, "upper": 20.8493479290225, "centre": 16.52819646744893}, "measure": "endStopAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": 8.897891877165858, "upper": 10.350452202175308, "centre": 9.596728847619335}, "measure": "durationS", "direction": "retract"}, {"side": "rear", "limits": {"lower": 85.17579620517367, "upper": 104.55749052279708, "centre": 94.37037408262267}, "measure": "chargeAs", "direction": "retract"}, {"side": "rear", "limits": {"lower": 1072.706042043379, "upper": 1316.8023721049635, "centre": 1188.5040432131682}, "measure": "energyJ", "direction": "retract"}, {"side": "rear", "limits": {"lower": 0.4615741138673514, "upper": 0.5223830306188333, "centre": 0.4919785722430924}, "measure": "share", "direction": "retract"}, {"side": "rear", "limits": {"lower": -0.36113351962245327, "upper": 0.36113351962245327, "centre": 0}, "measure": "lagS", "direction": "retract"}, {"side": "rear", "limits": {"lower": 0.09612397785579097, "upper": 0.1975466617968359, "centre": 0.13780047512270951}, "measure": "roughness", "direction": "retract"}, {"side": "rear", "limits": {"lower": 0.21062894056080642, "upper": 0.6037534304343025, "centre": 0.3566061488706128}, "measure": "spreadAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": -0.08355344267856854, "upper": 0.08298577289357251, "centre": -0.00028383489249801875}, "measure": "slope", "direction": "retract"}, {"side": "rear", "limits": {"lower": -0.0832867356006334, "upper": 0.08316692594815137, "centre": -0.000059904826241019235}, "measure": "bulge", "direction": "retract"}, {"side": "rear", "limits": {"lower": 0.06825029818764261, "upper": 0.2784972764426187, "centre": 0.13786777056895877}, "measure": "rippleAmps", "direction": "retract"}]');

INSERT INTO public.rooms VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-3fdc-7374-ad8d-1435ff55fbc7', 'Den', 'in-wall', '{front,rear}', 0.9, NULL, NULL, NULL, 12, 'extend', '2026-11-26 02:52:58.24419+00', '2026-11-26 02:52:58.24419+00', NULL);

INSERT INTO public.rooms_to_tell VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', '2026-11-26 02:52:58.863377+00', '2026-11-26 02:53:58.863377+00');

INSERT INTO public.services VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-405d-7565-b96b-575e6698f027', '01a215c5-4006-7458-abd5-708383181f7e', 'cleaned', '2026-03-05 04:00:00+00', NULL, 'Soap and water.', '01a215c5-3b90-72dc-a06d-cbb88725e91b', '2026-11-26 02:52:58.328764+00', '2026-11-26 02:52:58.328764+00');

INSERT INTO public.sessions VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '\x16c602c6d115a8c1f58a0a57e541238bfbb0bae52f4c3e041856daa884c983d1', '01a215c5-3b90-72dc-a06d-cbb88725e91b', '2026-11-26 02:52:58.14064+00', '2026-11-26 02:52:58.14064+00', '2026-12-26 02:52:58.139+00', '01a215c5-3f9b-7451-8cf8-ea4a3b3c93fb');
INSERT INTO public.sessions VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '\x2a9aae17ad35f60ddf191e736abc61c16a61ce2a5d7d45d437c0ff58ea2c08df', '01a215c5-3b90-72dc-a06d-cbb88725e91b', '2026-11-26 02:52:58.978254+00', '2026-11-26 02:52:58.978254+00', '2026-12-26 02:52:58.977+00', '01a215c5-42e1-76a4-bf1e-54cd800cd9e9');

INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019caa20-c400-7164-bc02-a43424ba5de7', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 0', 'extend', '2026-03-01 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.1374999999982, "profile": [null, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, null], "chargeAs": 98.491, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 17.009999999999998, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-01 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019caf47-2000-7358-9424-52f82314375e', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 1', 'retract', '2026-03-02 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.7624999999982, "profile": [null, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, null], "chargeAs": 98.541, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-02 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cb46d-7c00-767c-9dcb-c450f5855ccf', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 2', 'extend', '2026-03-03 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.5124999999982, "profile": [null, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, null], "chargeAs": 98.44099999999999, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-03 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cb993-d800-7191-b509-153eeceef682', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 3', 'retract', '2026-03-04 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.4499999999982, "profile": [null, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, null], "chargeAs": 98.516, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.48, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-04 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cbeba-3400-7179-8d82-1f55d46fbf5f', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 4', 'extend', '2026-03-05 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.4499999999991, "profile": [null, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, null], "chargeAs": 96.11600000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717816, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.8249999999982, "profile": [null, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, null], "chargeAs": 98.46599999999998, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717797, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-05 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cc3e0-9000-70ce-8d37-04b2d4aab472', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 5', 'retract', '2026-03-06 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.1374999999982, "profile": [null, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, null], "chargeAs": 98.491, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 17.009999999999998, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-06 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cc906-ec00-7660-a817-094d4dc52da1', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 6', 'extend', '2026-03-07 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.7624999999982, "profile": [null, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, null], "chargeAs": 98.541, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-07 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cce2d-4800-72a5-9749-e557431e2fe1', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 7', 'retract', '2026-03-08 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.5124999999982, "profile": [null, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, null], "chargeAs": 98.44099999999999, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-08 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cd353-a400-750e-9abe-1c4bd78d48cf', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 8', 'extend', '2026-03-09 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.4499999999982, "profile": [null, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, null], "chargeAs": 98.516, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.48, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-09 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cd87a-0000-76f7-a0ba-a4606669acd6', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 9', 'retract', '2026-03-10 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.4499999999991, "profile": [null, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, null], "chargeAs": 96.11600000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717816, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.8249999999982, "profile": [null, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, null], "chargeAs": 98.46599999999998, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717797, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-10 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cdda0-5c00-754d-a6ae-f352122d759a', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 10', 'extend', '2026-03-11 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.1374999999982, "profile": [null, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, null], "chargeAs": 98.491, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 17.009999999999998, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-11 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019ce2c6-b800-71fa-be61-4ef28b3e2ba6', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 11', 'retract', '2026-03-12 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.7624999999982, "profile": [null, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, null], "chargeAs": 98.541, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-12 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019ce7ed-1400-7023-a15c-7927d93a3059', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 12', 'extend', '2026-03-13 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.5124999999982, "profile": [null, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, null], "chargeAs": 98.44099999999999, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-13 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019ced13-7000-75ba-af74-dbcc4d33e41f', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 13', 'retract', '2026-03-14 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.4499999999982, "profile": [null, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, null], "chargeAs": 98.516, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.48, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-14 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cf239-cc00-709d-9175-1b25cbac3e9c', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 14', 'extend', '2026-03-15 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.4499999999991, "profile": [null, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, null], "chargeAs": 96.11600000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717816, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.8249999999982, "profile": [null, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, null], "chargeAs": 98.46599999999998, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717797, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-15 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cf760-2800-74f4-b5b2-11e2f0d57b25', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 15', 'retract', '2026-03-16 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.1374999999982, "profile": [null, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, null], "chargeAs": 98.491, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 17.009999999999998, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-16 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cfc86-8400-70fc-9ead-56113f7e0c63', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 16', 'extend', '2026-03-17 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.7624999999982, "profile": [null, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, null], "chargeAs": 98.541, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-17 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d01ac-e000-7017-b162-019a351dcc85', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 17', 'retract', '2026-03-18 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.5124999999982, "profile": [null, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, null], "chargeAs": 98.44099999999999, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-18 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d06d3-3c00-71ab-9ba2-8350f5c49360', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 18', 'extend', '2026-03-19 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.4499999999982, "profile": [null, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, null], "chargeAs": 98.516, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.48, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-19 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d0bf9-9800-75e6-8821-9415409a5dac', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 19', 'retract', '2026-03-20 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.4499999999991, "profile": [null, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, null], "chargeAs": 96.11600000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717816, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.8249999999982, "profile": [null, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, null], "chargeAs": 98.46599999999998, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717797, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-20 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d111f-f400-74f5-b8f0-f443a333d44a', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 20', 'extend', '2026-03-21 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.45044052863436124, "front": 0.5495594713656388}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1466.1374999999978, "profile": [null, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, null], "chargeAs": 117.29099999999984, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687216, "inrushAmps": 29.98, "offsetAmps": 0.019999999999999997, "endStopAmps": 20.21, "runningAmps": 9.98, "runningAmpsP90": 10.18}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-21 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d1646-5000-7054-8a4a-81ba398cc3fa', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 21', 'retract', '2026-03-22 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.45044052863436124, "front": 0.5495594713656388}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1466.7624999999978, "profile": [null, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, null], "chargeAs": 117.34099999999997, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758764, "inrushAmps": 30.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 20.18, "runningAmps": 9.98, "runningAmpsP90": 10.18}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-22 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d1b6c-ac00-71d2-bcc6-608e8373a266', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 22', 'extend', '2026-03-23 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.45044052863436124, "front": 0.5495594713656388}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1465.5124999999978, "profile": [null, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, null], "chargeAs": 117.24099999999987, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758764, "inrushAmps": 30.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 20.18, "runningAmps": 9.98, "runningAmpsP90": 10.18}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-23 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d2093-0800-7363-800a-2f23da528739', '01a215c5-4006-7458-abd5-708383181f7e', '01a215c5-4021-7508-9526-ddbd4cf66a7b', '01a215c5-4021-7508-9526-ddbd4cf66a7b', 'day 23', 'retract', '2026-03-24 16:00:00+00', '2026-11-26 02:52:58.467807+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.45044052863436124, "front": 0.5495594713656388}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1466.4499999999978, "profile": [null, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, null], "chargeAs": 117.31599999999997, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687216, "inrushAmps": 30.28, "offsetAmps": 0.019999999999999997, "endStopAmps": 20.18, "runningAmps": 9.98, "runningAmpsP90": 10.18}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-24 16:00:00+00', 'sender', false);

INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019caa20-c400-7164-bc02-a43424ba5de7', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d1e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001a44a5ffc65294bffffc000000001afe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000002e4069475bf1');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019caf47-2000-7358-9424-52f82314375e', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001399a69ffffe000000000dd20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000006b9ffc65294bff8cbffffc000000001a0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff800100000000000030409c3b6b3a');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cdda0-5c00-754d-a6ae-f352122d759a', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d1e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001a44a5ffc65294bffffc000000001afe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000003140f749013c');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019ce2c6-b800-71fa-be61-4ef28b3e2ba6', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001399a69ffffe000000000dd20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000006b9ffc65294bff8cbffffc000000001a0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff800100000000000032401e595d08');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019ce7ed-1400-7023-a15c-7927d93a3059', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001411fffe3a7ffff80000000033d807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe00000000067d294bff8ca52fffff0000000006ab8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff80010000000000002e400004704b');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019ced13-7000-75ba-af74-dbcc4d33e41f', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000135da69ffffe000000000d47f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001a94bff8ca5297ff1fffff00000000066f8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff8001000000000000304065058fef');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cf239-cc00-709d-9175-1b25cbac3e9c', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000013d5a7fff8fffff8000000003338007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001814a5297ff194bffffc000000001a5e318c400472656172027800000204020aa318c6318c63ffffe00000000135da7fff8fffff80000000031f8007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001774a5297ff194bffffc0000000019be318c400100000000000000f03f0c000001fa010100ff800100000000000031404ef267c1');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cf760-2800-74f4-b5b2-11e2f0d57b25', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d1e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001a44a5ffc65294bffffc000000001afe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000003240341a2c17');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cfc86-8400-70fc-9ead-56113f7e0c63', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001399a69ffffe000000000dd20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000006b9ffc65294bff8cbffffc000000001a0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff80010000000000002e4043042aee');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d01ac-e000-7017-b162-019a351dcc85', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001411fffe3a7ffff80000000033d807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe00000000067d294bff8ca52fffff0000000006ab8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff80010000000000003040df3b319f');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d06d3-3c00-71ab-9ba2-8350f5c49360', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000135da69ffffe000000000d47f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001a94bff8ca5297ff1fffff00000000066f8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff80010000000000003140243494f6');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d0bf9-9800-75e6-8821-9415409a5dac', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000013d5a7fff8fffff8000000003338007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001814a5297ff194bffffc000000001a5e318c400472656172027800000204020aa318c6318c63ffffe00000000135da7fff8fffff80000000031f8007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001774a5297ff194bffffc0000000019be318c400100000000000000f03f0c000001fa010100ff800100000000000032408da14aea');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cb46d-7c00-767c-9dcb-c450f5855ccf', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001411fffe3a7ffff80000000033d807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe00000000067d294bff8ca52fffff0000000006ab8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff800100000000000031409e0a2a86');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d111f-f400-74f5-b8f0-f443a333d44a', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000016e1a69ffffe000000000f9e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001f44a5ffc65294bffffc000000001ffe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000002e4095442d6f');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d1646-5000-7054-8a4a-81ba398cc3fa', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001759a69ffffe0000000010520001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000007f9ffc65294bff8cbffffc000000001f0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff80010000000000003040659360be');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d1b6c-ac00-71d2-bcc6-608e8373a266', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000017d1fffe3a7ffff8000000003dd807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe0000000007bd294bff8ca52fffff0000000007eb8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff800100000000000031408ad0f081');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d2093-0800-7363-800a-2f23da528739', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000171da69ffffe000000000fc7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001f94bff8ca5297ff1fffff0000000007af8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff80010000000000003240edcf9b74');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cb993-d800-7191-b509-153eeceef682', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000135da69ffffe000000000d47f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001a94bff8ca5297ff1fffff00000000066f8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff80010000000000003240e767b9dd');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cbeba-3400-7179-8d82-1f55d46fbf5f', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000013d5a7fff8fffff8000000003338007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001814a5297ff194bffffc000000001a5e318c400472656172027800000204020aa318c6318c63ffffe00000000135da7fff8fffff80000000031f8007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001774a5297ff194bffffc0000000019be318c400100000000000000f03f0c000001fa010100ff80010000000000002e40d0fc3d0c');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cc3e0-9000-70ce-8d37-04b2d4aab472', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d1e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001a44a5ffc65294bffffc000000001afe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000003040b6781a25');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cc906-ec00-7660-a817-094d4dc52da1', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001399a69ffffe000000000dd20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000006b9ffc65294bff8cbffffc000000001a0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff80010000000000003140dd0a7023');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cce2d-4800-72a5-9749-e557431e2fe1', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001411fffe3a7ffff80000000033d807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe00000000067d294bff8ca52fffff0000000006ab8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff800100000000000032405d5907ad');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cd353-a400-750e-9abe-1c4bd78d48cf', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000135da69ffffe000000000d47f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001a94bff8ca5297ff1fffff00000000066f8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff80010000000000002e40ba3ace3b');
INSERT INTO public.traces_2026_11 VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019cd87a-0000-76f7-a0ba-a4606669acd6', '2026-11-26 02:52:58.467807+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000013d5a7fff8fffff8000000003338007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001814a5297ff194bffffc000000001a5e318c400472656172027800000204020aa318c6318c63ffffe00000000135da7fff8fffff80000000031f8007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001774a5297ff194bffffc0000000019be318c400100000000000000f03f0c000001fa010100ff800100000000000030400fc37cd8');

INSERT INTO public.verdict_changes VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '01a215c5-4006-7458-abd5-708383181f7e', '2026-11-26 02:52:58.908336+00', 'learning', 'watch');

INSERT INTO public.warnings VALUES ('01a215c5-3b76-7431-81a2-b8ad75676ca2', '019d1b6c-ac00-7800-99c8-fdeabdbf345e', '01a215c5-4006-7458-abd5-708383181f7e', 'sensor-doubt', 'watch', 'front', NULL, NULL, NULL, '2026-03-23 16:00:00+00', NULL, '019d1b6c-ac00-71d2-bcc6-608e8373a266', '019d2093-0800-7363-800a-2f23da528739', 'The record of the front side is not to be trusted: Running, inrush and stall current all read 20 % higher than they did.', '{"doubt": "scale", "detail": "Running, inrush and stall current all read 20 % higher than they did."}', '["See that the clamp is fully closed around one wire only, the right way round.", "Set its zero with no current flowing, and compare it with a second meter."]', '["Keep everyone, and every hand, out of the travel of the room, inside and outside, while it can move.", "Disconnect the supply before you touch motors or wiring, and know what the brake does when a motor is unplugged.", "The maker''s manual and local codes come first; structural and electrical repair is work for a licensed technician."]', NULL, NULL, NULL);

ALTER TABLE ONLY public.accounts
    ADD CONSTRAINT accounts_pkey PRIMARY KEY (id);

ALTER TABLE ONLY public.coaches
    ADD CONSTRAINT coaches_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.directory
    ADD CONSTRAINT directory_pkey PRIMARY KEY (email);

ALTER TABLE ONLY public.grants
    ADD CONSTRAINT grants_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.idempotency_keys
    ADD CONSTRAINT idempotency_keys_pkey PRIMARY KEY (account_id, caller_id, key_hash);

ALTER TABLE ONLY public.invitations
    ADD CONSTRAINT invitations_pkey PRIMARY KEY (account_id, token_hash);

ALTER TABLE ONLY public.kysely_migration_lock
    ADD CONSTRAINT kysely_migration_lock_pkey PRIMARY KEY (id);

ALTER TABLE ONLY public.kysely_migration
    ADD CONSTRAINT kysely_migration_pkey PRIMARY KEY (name);

ALTER TABLE ONLY public.lent_normals
    ADD CONSTRAINT lent_normals_pkey PRIMARY KEY (account_id, room_id, place, direction);

ALTER TABLE ONLY public.live_pieces
    ADD CONSTRAINT live_pieces_pkey PRIMARY KEY (account_id, stroke_id, seq);

ALTER TABLE ONLY public.live_strokes
    ADD CONSTRAINT live_strokes_account_id_logger_id_key_key UNIQUE (account_id, logger_id, key);

ALTER TABLE ONLY public.live_strokes
    ADD CONSTRAINT live_strokes_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.loggers
    ADD CONSTRAINT loggers_account_id_token_hash_key UNIQUE (account_id, token_hash);

ALTER TABLE ONLY public.loggers
    ADD CONSTRAINT loggers_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.mail_notices
    ADD CONSTRAINT mail_notices_pkey PRIMARY KEY (account_id, person_id, key);

ALTER TABLE ONLY public.measures
    ADD CONSTRAINT measures_pkey PRIMARY KEY (account_id, room_id, side, direction, placed_at, stroke_id);

ALTER TABLE ONLY public.password_resets
    ADD CONSTRAINT password_resets_pkey PRIMARY KEY (account_id, token_hash);

ALTER TABLE ONLY public.people
    ADD CONSTRAINT people_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.personal_tokens
    ADD CONSTRAINT personal_tokens_account_id_token_hash_key UNIQUE (account_id, token_hash);

ALTER TABLE ONLY public.personal_tokens
    ADD CONSTRAINT personal_tokens_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.record
    ADD CONSTRAINT record_pkey PRIMARY KEY (account_id, at, id);

ALTER TABLE ONLY public.retention_runs
    ADD CONSTRAINT retention_runs_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.room_checkpoints
    ADD CONSTRAINT room_checkpoints_pkey PRIMARY KEY (account_id, room_id, at);

ALTER TABLE ONLY public.room_progress
    ADD CONSTRAINT room_progress_pkey PRIMARY KEY (account_id, room_id);

ALTER TABLE ONLY public.rooms
    ADD CONSTRAINT rooms_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.rooms_to_tell
    ADD CONSTRAINT rooms_to_tell_pkey PRIMARY KEY (account_id, room_id);

ALTER TABLE ONLY public.services
    ADD CONSTRAINT services_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.sessions
    ADD CONSTRAINT sessions_pkey PRIMARY KEY (account_id, token_hash);

ALTER TABLE ONLY public.strokes
    ADD CONSTRAINT strokes_account_id_sender_id_key_key UNIQUE (account_id, sender_id, key);

ALTER TABLE ONLY public.strokes
    ADD CONSTRAINT strokes_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.told_warnings
    ADD CONSTRAINT told_warnings_pkey PRIMARY KEY (account_id, room_id, warning_id);

ALTER TABLE ONLY public.traces
    ADD CONSTRAINT traces_pkey PRIMARY KEY (account_id, stroke_id, received_at);

ALTER TABLE ONLY public.traces_2026_11
    ADD CONSTRAINT traces_2026_11_pkey PRIMARY KEY (account_id, stroke_id, received_at);

ALTER TABLE ONLY public.traces_2026_12
    ADD CONSTRAINT traces_2026_12_pkey PRIMARY KEY (account_id, stroke_id, received_at);

ALTER TABLE ONLY public.traces_2027_01
    ADD CONSTRAINT traces_2027_01_pkey PRIMARY KEY (account_id, stroke_id, received_at);

ALTER TABLE ONLY public.traces_default
    ADD CONSTRAINT traces_default_pkey PRIMARY KEY (account_id, stroke_id, received_at);

ALTER TABLE ONLY public.verdict_changes
    ADD CONSTRAINT verdict_changes_pkey PRIMARY KEY (account_id, room_id, changed_at);

ALTER TABLE ONLY public.warnings
    ADD CONSTRAINT warnings_pkey PRIMARY KEY (account_id, id);

ALTER TABLE ONLY public.webhook_deliveries
    ADD CONSTRAINT webhook_deliveries_account_id_webhook_id_key_key UNIQUE (account_id, webhook_id, key);

ALTER TABLE ONLY public.webhook_deliveries
    ADD CONSTRAINT webhook_deliveries_pkey PRIMARY KEY (account_id, webhook_id, id);

ALTER TABLE ONLY public.webhooks
    ADD CONSTRAINT webhooks_pkey PRIMARY KEY (account_id, id);

CREATE INDEX coaches_deleted ON public.coaches USING btree (account_id, deleted_at) WHERE (deleted_at IS NOT NULL);

CREATE INDEX directory_by_person ON public.directory USING btree (person_id);

CREATE INDEX grants_by_coach ON public.grants USING btree (account_id, coach_id, id);

CREATE INDEX grants_by_person ON public.grants USING btree (person_id) WHERE (person_id IS NOT NULL);

CREATE INDEX invitations_by_grant ON public.invitations USING btree (account_id, grant_id);

CREATE INDEX invitations_by_person ON public.invitations USING btree (account_id, person_id);

CREATE INDEX lent_normals_by_namesakes ON public.lent_normals USING btree (account_id, namesakes, place, direction, learnt_at, room_id);

CREATE INDEX lent_normals_by_peers ON public.lent_normals USING btree (account_id, peers, place, direction, learnt_at, room_id);

CREATE INDEX live_strokes_by_room ON public.live_strokes USING btree (account_id, room_id);

CREATE INDEX loggers_by_coach ON public.loggers USING btree (account_id, coach_id, id);

CREATE INDEX mail_notices_waiting ON public.mail_notices USING btree (account_id, person_id, due_at) WHERE (state = 'waiting'::text);

CREATE INDEX measures_by_stroke ON public.measures USING btree (account_id, stroke_id);

CREATE INDEX password_resets_by_person ON public.password_resets USING btree (account_id, person_id);

CREATE UNIQUE INDEX people_by_email ON public.people USING btree (account_id, email);

CREATE INDEX personal_tokens_by_person ON public.personal_tokens USING btree (account_id, person_id, id);

CREATE INDEX retention_runs_by_removed ON public.retention_runs USING btree (account_id, removed_before);

CREATE INDEX room_progress_dirty ON public.room_progress USING btree (account_id, room_id) WHERE (dirty_from IS NOT NULL);

CREATE INDEX rooms_by_coach ON public.rooms USING btree (account_id, coach_id, id);

CREATE INDEX services_by_room ON public.services USING btree (account_id, room_id, at, id);

CREATE UNIQUE INDEX sessions_by_id ON public.sessions USING btree (account_id, id);

CREATE INDEX sessions_by_person ON public.sessions USING btree (account_id, person_id);

CREATE INDEX sign_in_failures_by_email ON public.sign_in_failures USING btree (email, failed_at);

CREATE INDEX strokes_by_room ON public.strokes USING btree (account_id, room_id, placed_at, id);

CREATE INDEX verdict_changes_by_time ON public.verdict_changes USING btree (account_id, changed_at);

CREATE INDEX warnings_by_account ON public.warnings USING btree (account_id, opened_at, id);

CREATE INDEX warnings_by_room ON public.warnings USING btree (account_id, room_id, opened_at, id);

CREATE INDEX webhook_deliveries_waiting ON public.webhook_deliveries USING btree (account_id, webhook_id, due_at) WHERE (state = 'waiting'::text);

ALTER INDEX public.traces_pkey ATTACH PARTITION public.traces_2026_11_pkey;

ALTER INDEX public.traces_pkey ATTACH PARTITION public.traces_2026_12_pkey;

ALTER INDEX public.traces_pkey ATTACH PARTITION public.traces_2027_01_pkey;

ALTER INDEX public.traces_pkey ATTACH PARTITION public.traces_default_pkey;

CREATE TRIGGER note_account_changed AFTER UPDATE ON public.accounts FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('account-changed', 'none', 'name,trace_months');

CREATE TRIGGER note_coach_deleted AFTER UPDATE ON public.coaches FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (old.deleted_at IS NULL) AND (new.deleted_at IS NOT NULL))) EXECUTE FUNCTION public.note_act('coach-deleted', 'none', 'name');

CREATE TRIGGER note_coach_removed AFTER DELETE ON public.coaches FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('coach-removed', 'none', 'name');

CREATE TRIGGER note_coach_restored AFTER UPDATE ON public.coaches FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (old.deleted_at IS NOT NULL) AND (new.deleted_at IS NULL))) EXECUTE FUNCTION public.note_act('coach-restored', 'none', 'name');

CREATE TRIGGER note_failure AFTER INSERT ON public.sign_in_failures FOR EACH ROW EXECUTE FUNCTION public.note_failure();

CREATE TRIGGER note_grant_accepted AFTER UPDATE ON public.grants FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (old.person_id IS NULL) AND (new.person_id IS NOT NULL))) EXECUTE FUNCTION public.note_act('grant-accepted', 'person_id', 'email,role,until');

CREATE TRIGGER note_grant_ended AFTER DELETE ON public.grants FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('grant-ended', 'none', 'email,role,until');

CREATE TRIGGER note_grant_given AFTER INSERT ON public.grants FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('grant-given', 'none', 'email,role,until');

CREATE TRIGGER note_invitation_made AFTER INSERT ON public.invitations FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('invitation-made', 'none', 'person_id,grant_id');

CREATE TRIGGER note_logger_added AFTER INSERT ON public.loggers FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('logger-added', 'none', 'name');

CREATE TRIGGER note_logger_removed AFTER DELETE ON public.loggers FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('logger-removed', 'none', 'name');

CREATE TRIGGER note_password_changed AFTER UPDATE ON public.people FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (old.password_hash <> new.password_hash))) EXECUTE FUNCTION public.note_act('password-changed', 'id', 'email,name');

CREATE TRIGGER note_person_added AFTER INSERT ON public.people FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('person-added', 'none', 'email,name,role');

CREATE TRIGGER note_person_joined AFTER UPDATE ON public.people FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (old.password_hash IS NULL) AND (new.password_hash IS NOT NULL))) EXECUTE FUNCTION public.note_act('person-joined', 'id', 'email,name,role');

CREATE TRIGGER note_person_removed AFTER DELETE ON public.people FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('person-removed', 'none', 'email,name,role');

CREATE TRIGGER note_role_changed AFTER UPDATE ON public.people FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (old.role <> new.role))) EXECUTE FUNCTION public.note_act('role-changed', 'none', 'email,name,role');

CREATE TRIGGER note_room_removed AFTER DELETE ON public.rooms FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('room-removed', 'none', 'name');

CREATE TRIGGER note_service_changed AFTER UPDATE ON public.services FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('service-changed', 'none', 'kind,at,side,room_id');

CREATE TRIGGER note_service_recorded AFTER INSERT ON public.services FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('service-recorded', 'recorded_by', 'kind,at,side,room_id');

CREATE TRIGGER note_service_removed AFTER DELETE ON public.services FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('service-removed', 'none', 'kind,at,side,room_id');

CREATE TRIGGER note_settings_changed AFTER UPDATE ON public.people FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (((old.units IS DISTINCT FROM new.units) OR (old.time_zone IS DISTINCT FROM new.time_zone)) OR (old.locale IS DISTINCT FROM new.locale)))) EXECUTE FUNCTION public.note_act('settings-changed', 'id', 'units,time_zone,locale');

CREATE TRIGGER note_signed_in AFTER INSERT ON public.sessions FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('signed-in', 'person_id', '');

CREATE TRIGGER note_signed_out AFTER DELETE ON public.sessions FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (current_setting('slideload.person'::text, true) <> ''::text))) EXECUTE FUNCTION public.note_act('signed-out', 'person_id', '');

CREATE TRIGGER note_stroke_removed AFTER DELETE ON public.strokes FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('stroke-removed', 'none', 'key,started_at,room_id');

CREATE TRIGGER note_token_ended AFTER DELETE ON public.personal_tokens FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('token-ended', 'none', 'name');

CREATE TRIGGER note_token_made AFTER INSERT ON public.personal_tokens FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND true)) EXECUTE FUNCTION public.note_act('token-made', 'person_id', 'name,may_change,until');

CREATE TRIGGER note_warning_acknowledged AFTER UPDATE ON public.warnings FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (old.acknowledged_at IS NULL) AND (new.acknowledged_at IS NOT NULL) AND (current_setting('slideload.person'::text, true) <> ''::text))) EXECUTE FUNCTION public.note_act('warning-acknowledged', 'acknowledged_by', 'kind,room_id');

CREATE TRIGGER note_webhook_added AFTER INSERT ON public.webhooks FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (current_setting('slideload.person'::text, true) <> ''::text) AND true)) EXECUTE FUNCTION public.note_act('webhook-added', 'none', 'url,events,severity,enabled');

CREATE TRIGGER note_webhook_changed AFTER UPDATE ON public.webhooks FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (current_setting('slideload.person'::text, true) <> ''::text) AND ((((old.url IS DISTINCT FROM new.url) OR (old.events IS DISTINCT FROM new.events)) OR (old.severity IS DISTINCT FROM new.severity)) OR (old.enabled IS DISTINCT FROM new.enabled)))) EXECUTE FUNCTION public.note_act('webhook-changed', 'none', 'url,events,severity,enabled');

CREATE TRIGGER note_webhook_removed AFTER DELETE ON public.webhooks FOR EACH ROW WHEN (((pg_trigger_depth() = 0) AND (current_setting('slideload.person'::text, true) <> ''::text) AND true)) EXECUTE FUNCTION public.note_act('webhook-removed', 'none', 'url,events,severity,enabled');

CREATE TRIGGER only_added_to BEFORE DELETE OR UPDATE OR TRUNCATE ON public.record FOR EACH STATEMENT EXECUTE FUNCTION public.refuse_change();

ALTER TABLE ONLY public.coaches
    ADD CONSTRAINT coaches_account_id_fkey FOREIGN KEY (account_id) REFERENCES public.accounts(id) ON DELETE CASCADE;

ALTER TABLE ONLY public.directory
    ADD CONSTRAINT directory_account_id_person_id_fkey FOREIGN KEY (account_id, person_id) REFERENCES public.people(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.grants
    ADD CONSTRAINT grants_account_id_coach_id_fkey FOREIGN KEY (account_id, coach_id) REFERENCES public.coaches(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.idempotency_keys
    ADD CONSTRAINT idempotency_keys_account_id_fkey FOREIGN KEY (account_id) REFERENCES public.accounts(id) ON DELETE CASCADE;

ALTER TABLE ONLY public.invitations
    ADD CONSTRAINT invitations_account_id_grant_id_fkey FOREIGN KEY (account_id, grant_id) REFERENCES public.grants(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.invitations
    ADD CONSTRAINT invitations_account_id_person_id_fkey FOREIGN KEY (account_id, person_id) REFERENCES public.people(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.lent_normals
    ADD CONSTRAINT lent_normals_account_id_fkey FOREIGN KEY (account_id) REFERENCES public.accounts(id) ON DELETE CASCADE;

ALTER TABLE ONLY public.live_pieces
    ADD CONSTRAINT live_pieces_account_id_stroke_id_fkey FOREIGN KEY (account_id, stroke_id) REFERENCES public.live_strokes(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.live_strokes
    ADD CONSTRAINT live_strokes_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.loggers
    ADD CONSTRAINT loggers_account_id_coach_id_fkey FOREIGN KEY (account_id, coach_id) REFERENCES public.coaches(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.mail_notices
    ADD CONSTRAINT mail_notices_account_id_person_id_fkey FOREIGN KEY (account_id, person_id) REFERENCES public.people(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.measures
    ADD CONSTRAINT measures_account_id_stroke_id_fkey FOREIGN KEY (account_id, stroke_id) REFERENCES public.strokes(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.password_resets
    ADD CONSTRAINT password_resets_account_id_person_id_fkey FOREIGN KEY (account_id, person_id) REFERENCES public.people(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.people
    ADD CONSTRAINT people_account_id_fkey FOREIGN KEY (account_id) REFERENCES public.accounts(id) ON DELETE CASCADE;

ALTER TABLE ONLY public.personal_tokens
    ADD CONSTRAINT personal_tokens_account_id_person_id_fkey FOREIGN KEY (account_id, person_id) REFERENCES public.people(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.record
    ADD CONSTRAINT record_account_id_fkey FOREIGN KEY (account_id) REFERENCES public.accounts(id);

ALTER TABLE ONLY public.retention_runs
    ADD CONSTRAINT retention_runs_account_id_fkey FOREIGN KEY (account_id) REFERENCES public.accounts(id) ON DELETE CASCADE;

ALTER TABLE ONLY public.room_checkpoints
    ADD CONSTRAINT room_checkpoints_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.room_progress
    ADD CONSTRAINT room_progress_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.rooms
    ADD CONSTRAINT rooms_account_id_coach_id_fkey FOREIGN KEY (account_id, coach_id) REFERENCES public.coaches(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.rooms_to_tell
    ADD CONSTRAINT rooms_to_tell_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.services
    ADD CONSTRAINT services_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.sessions
    ADD CONSTRAINT sessions_account_id_person_id_fkey FOREIGN KEY (account_id, person_id) REFERENCES public.people(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.strokes
    ADD CONSTRAINT strokes_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.told_warnings
    ADD CONSTRAINT told_warnings_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

ALTER TABLE public.traces
    ADD CONSTRAINT traces_account_id_stroke_id_fkey FOREIGN KEY (account_id, stroke_id) REFERENCES public.strokes(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.verdict_changes
    ADD CONSTRAINT verdict_changes_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.warnings
    ADD CONSTRAINT warnings_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.webhook_deliveries
    ADD CONSTRAINT webhook_deliveries_account_id_webhook_id_fkey FOREIGN KEY (account_id, webhook_id) REFERENCES public.webhooks(account_id, id) ON DELETE CASCADE;

ALTER TABLE ONLY public.webhooks
    ADD CONSTRAINT webhooks_account_id_fkey FOREIGN KEY (account_id) REFERENCES public.accounts(id);

ALTER TABLE public.accounts ENABLE ROW LEVEL SECURITY;

CREATE POLICY again_from_senders ON public.room_progress FOR UPDATE USING (((room_id = ANY (( SELECT public.rooms_to_send_to() AS rooms_to_send_to)::uuid[])) OR (account_id = ANY (( SELECT public.accounts_to_send_to() AS accounts_to_send_to)::uuid[]))));

CREATE POLICY by_account ON public.accounts USING (((id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.coaches USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (id = ANY (( SELECT public.coaches_in_scope() AS coaches_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.directory USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.grants USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (coach_id = ANY (( SELECT public.coaches_in_scope() AS coaches_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.idempotency_keys USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.invitations USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.lent_normals USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.live_pieces USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR ((( SELECT public.coaches_in_scope() AS coaches_in_scope) <> '{}'::uuid[]) AND (EXISTS ( SELECT
   FROM public.strokes s
  WHERE ((s.account_id = live_pieces.account_id) AND (s.id = live_pieces.stroke_id)))))));

CREATE POLICY by_account ON public.live_strokes USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.loggers USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (coach_id = ANY (( SELECT public.coaches_in_scope() AS coaches_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.mail_notices USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.measures USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.password_resets USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.people USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.personal_tokens USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.record USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (coach_id = ANY (( SELECT public.coaches_in_scope() AS coaches_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.retention_runs USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.room_checkpoints USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.room_progress USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.rooms USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (coach_id = ANY (( SELECT public.coaches_in_scope() AS coaches_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.rooms_to_tell USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.services USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.sessions USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.strokes USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.told_warnings USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.traces USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR ((( SELECT public.coaches_in_scope() AS coaches_in_scope) <> '{}'::uuid[]) AND (EXISTS ( SELECT
   FROM public.strokes s
  WHERE ((s.account_id = traces.account_id) AND (s.id = traces.stroke_id)))))));

CREATE POLICY by_account ON public.traces_2026_11 USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR ((( SELECT public.coaches_in_scope() AS coaches_in_scope) <> '{}'::uuid[]) AND (EXISTS ( SELECT
   FROM public.strokes s
  WHERE ((s.account_id = traces_2026_11.account_id) AND (s.id = traces_2026_11.stroke_id)))))));

CREATE POLICY by_account ON public.traces_2026_12 USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR ((( SELECT public.coaches_in_scope() AS coaches_in_scope) <> '{}'::uuid[]) AND (EXISTS ( SELECT
   FROM public.strokes s
  WHERE ((s.account_id = traces_2026_12.account_id) AND (s.id = traces_2026_12.stroke_id)))))));

CREATE POLICY by_account ON public.traces_2027_01 USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR ((( SELECT public.coaches_in_scope() AS coaches_in_scope) <> '{}'::uuid[]) AND (EXISTS ( SELECT
   FROM public.strokes s
  WHERE ((s.account_id = traces_2027_01.account_id) AND (s.id = traces_2027_01.stroke_id)))))));

CREATE POLICY by_account ON public.traces_default USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR ((( SELECT public.coaches_in_scope() AS coaches_in_scope) <> '{}'::uuid[]) AND (EXISTS ( SELECT
   FROM public.strokes s
  WHERE ((s.account_id = traces_default.account_id) AND (s.id = traces_default.stroke_id)))))));

CREATE POLICY by_account ON public.verdict_changes USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.warnings USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

CREATE POLICY by_account ON public.webhook_deliveries USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

CREATE POLICY by_account ON public.webhooks USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR false));

ALTER TABLE public.coaches ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.directory ENABLE ROW LEVEL SECURITY;

CREATE POLICY for_senders ON public.idempotency_keys USING ((caller_id = ANY (( SELECT public.senders_in_scope() AS senders_in_scope)::uuid[])));

CREATE POLICY for_senders ON public.live_strokes USING ((logger_id = ANY (( SELECT public.senders_in_scope() AS senders_in_scope)::uuid[]))) WITH CHECK (((logger_id = ANY (( SELECT public.senders_in_scope() AS senders_in_scope)::uuid[])) AND (room_id = ANY (( SELECT public.rooms_to_send_to() AS rooms_to_send_to)::uuid[]))));

CREATE POLICY for_senders ON public.loggers FOR SELECT USING ((id = ANY (( SELECT public.senders_in_scope() AS senders_in_scope)::uuid[])));

CREATE POLICY for_senders ON public.room_progress FOR SELECT USING (((room_id = ANY (( SELECT public.rooms_to_send_to() AS rooms_to_send_to)::uuid[])) OR (account_id = ANY (( SELECT public.accounts_to_send_to() AS accounts_to_send_to)::uuid[]))));

CREATE POLICY for_senders ON public.rooms FOR SELECT USING (((coach_id = ANY (( SELECT public.coaches_to_send_to() AS coaches_to_send_to)::uuid[])) OR (account_id = ANY (( SELECT public.accounts_to_send_to() AS accounts_to_send_to)::uuid[]))));

CREATE POLICY for_senders ON public.strokes FOR SELECT USING ((sender_id = ANY (( SELECT public.senders_in_scope() AS senders_in_scope)::uuid[])));

CREATE POLICY from_senders ON public.room_progress FOR INSERT WITH CHECK (((room_id = ANY (( SELECT public.rooms_to_send_to() AS rooms_to_send_to)::uuid[])) OR (account_id = ANY (( SELECT public.accounts_to_send_to() AS accounts_to_send_to)::uuid[]))));

CREATE POLICY from_senders ON public.strokes FOR INSERT WITH CHECK (((sender_id = ANY (( SELECT public.senders_in_scope() AS senders_in_scope)::uuid[])) AND ((room_id = ANY (( SELECT public.rooms_to_send_to() AS rooms_to_send_to)::uuid[])) OR (account_id = ANY (( SELECT public.accounts_to_send_to() AS accounts_to_send_to)::uuid[])))));

CREATE POLICY from_senders ON public.traces FOR INSERT WITH CHECK (((account_id = ANY (( SELECT public.accounts_to_send_to() AS accounts_to_send_to)::uuid[])) OR ((public.senders_in_scope() <> '{}'::uuid[]) AND (account_id = ANY (public.setting_ids('slideload.visit_accounts'::text))))));

ALTER TABLE public.grants ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.idempotency_keys ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.invitations ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.lent_normals ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.live_pieces ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.live_strokes ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.loggers ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.mail_notices ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.measures ENABLE ROW LEVEL SECURITY;

CREATE POLICY of_stroke ON public.live_pieces USING ((EXISTS ( SELECT
   FROM public.live_strokes s
  WHERE ((s.account_id = live_pieces.account_id) AND (s.id = live_pieces.stroke_id)))));

ALTER TABLE public.password_resets ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.people ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.personal_tokens ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.record ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.retention_runs ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.room_checkpoints ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.room_progress ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.rooms ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.rooms_to_tell ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.services ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.sessions ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.strokes ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.told_warnings ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.traces ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.traces_2026_11 ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.traces_2026_12 ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.traces_2027_01 ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.traces_default ENABLE ROW LEVEL SECURITY;

CREATE POLICY unless_deleted ON public.coaches AS RESTRICTIVE USING (((deleted_at IS NULL) OR ( SELECT public.spans_accounts() AS spans_accounts) OR ( SELECT public.sees_deleted() AS sees_deleted))) WITH CHECK (true);

CREATE POLICY unless_deleted ON public.grants AS RESTRICTIVE FOR SELECT USING ((( SELECT public.spans_accounts() AS spans_accounts) OR (EXISTS ( SELECT
   FROM public.coaches c
  WHERE ((c.account_id = grants.account_id) AND (c.id = grants.coach_id))))));

CREATE POLICY unless_deleted ON public.rooms AS RESTRICTIVE USING (((deleted_at IS NULL) OR ( SELECT public.spans_accounts() AS spans_accounts) OR ( SELECT public.sees_deleted() AS sees_deleted))) WITH CHECK (true);

CREATE POLICY unless_deleted ON public.warnings AS RESTRICTIVE FOR SELECT USING ((( SELECT public.spans_accounts() AS spans_accounts) OR (EXISTS ( SELECT
   FROM public.rooms r
  WHERE ((r.account_id = warnings.account_id) AND (r.id = warnings.room_id))))));

ALTER TABLE public.verdict_changes ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.warnings ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.webhook_deliveries ENABLE ROW LEVEL SECURITY;

ALTER TABLE public.webhooks ENABLE ROW LEVEL SECURITY;
