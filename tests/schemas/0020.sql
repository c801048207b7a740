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

CREATE FUNCTION public.concern_of(verdict text) RETURNS smallint
    LANGUAGE sql IMMUTABLE
    AS $$
    select array_position(
      array['stop', 'service', 'watch', 'unknown', 'learning', 'clear'], coalesce(verdict, 'learning')
    )::smallint $$;

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
    deleted_at timestamp with time zone,
    concern smallint DEFAULT 7 NOT NULL
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

CREATE FUNCTION public.weigh_coach(of_account uuid, coach uuid) RETURNS void
    LANGUAGE plpgsql
    AS $$
    begin
      perform from coaches where account_id = of_account and id = coach for no key update;
      update coaches c set concern = w.worst
      from (select coalesce(min(concern_of(o.verdict)), 7)
  from rooms r left join room_results o on o.account_id = r.account_id and o.room_id = r.id where r.account_id = of_account and r.coach_id = coach) w (worst)
      where c.account_id = of_account and c.id = coach and c.concern <> w.worst;
    end $$;

CREATE FUNCTION public.weigh_coach_of_results() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
    begin
      perform weigh_coach(r.account_id, r.coach_id) from rooms r
      where r.account_id = new.account_id and r.id = new.room_id;
      return null;
    end $$;

CREATE FUNCTION public.weigh_coach_of_room() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
    declare touched rooms := coalesce(new, old);
    begin
      perform weigh_coach(touched.account_id, touched.coach_id);
      return null;
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
    measured_by text,
    remeasure_from timestamp with time zone
)
WITH (fillfactor='50');

ALTER TABLE ONLY public.room_progress FORCE ROW LEVEL SECURITY;

CREATE TABLE public.room_results (
    account_id uuid NOT NULL,
    room_id uuid NOT NULL,
    verdict text GENERATED ALWAYS AS ((summary ->> 'verdict'::text)) STORED,
    summary jsonb NOT NULL,
    limits jsonb
)
WITH (toast_tuple_target='128');

ALTER TABLE ONLY public.room_results FORCE ROW LEVEL SECURITY;

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

INSERT INTO public.accounts VALUES ('01a21695-20e4-7395-899a-996e43f97835', 'keeper', '2026-11-26 06:40:01.704788+00', NULL);

INSERT INTO public.coaches VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-29a0-74b3-8da5-2fb16d44858e', 'Alder 7', 'Long Trailer', 2024, NULL, '2026-11-26 06:40:03.988789+00', '2026-11-26 06:40:03.988789+00', NULL, 3);

INSERT INTO public.directory VALUES ('keeper@example.com', '01a21695-20e4-7395-899a-996e43f97835', '01a21695-20f0-7786-803f-d7c3941abca0');

INSERT INTO public.invitations VALUES ('01a21695-20e4-7395-899a-996e43f97835', '\x11a92be9e0886492f956f36ee3de8b9fdb0c089f500328c942ef19c4d6a78893', '01a21695-2b95-77d7-b165-07d844f28221', NULL, '2026-12-03 06:40:04.513+00', '2026-11-26 06:40:04.500351+00');

INSERT INTO public.kysely_migration VALUES ('0001-first-tables', '2026-11-26T06:39:59.326Z');
INSERT INTO public.kysely_migration VALUES ('0002-grants-and-invitations', '2026-11-26T06:39:59.426Z');
INSERT INTO public.kysely_migration VALUES ('0003-row-level-security', '2026-11-26T06:39:59.496Z');
INSERT INTO public.kysely_migration VALUES ('0004-placing-and-retention', '2026-11-26T06:39:59.548Z');
INSERT INTO public.kysely_migration VALUES ('0005-live-strokes', '2026-11-26T06:39:59.610Z');
INSERT INTO public.kysely_migration VALUES ('0006-lent-normals', '2026-11-26T06:39:59.642Z');
INSERT INTO public.kysely_migration VALUES ('0007-tokens-and-resets', '2026-11-26T06:39:59.697Z');
INSERT INTO public.kysely_migration VALUES ('0009-settings-and-verdicts', '2026-11-26T06:39:59.750Z');
INSERT INTO public.kysely_migration VALUES ('0012-record-and-deleted-coaches', '2026-11-26T06:39:59.900Z');
INSERT INTO public.kysely_migration VALUES ('0014-notices', '2026-11-26T06:40:00.016Z');
INSERT INTO public.kysely_migration VALUES ('0016-packed-checkpoints', '2026-11-26T06:40:00.036Z');
INSERT INTO public.kysely_migration VALUES ('0017-measured-before-stored', '2026-11-26T06:40:00.042Z');
INSERT INTO public.kysely_migration VALUES ('0018-verdict-column', '2026-11-26T06:40:00.059Z');
INSERT INTO public.kysely_migration VALUES ('0019-results-apart', '2026-11-26T06:40:00.084Z');
INSERT INTO public.kysely_migration VALUES ('0020-concern-of-coaches', '2026-11-26T06:40:00.103Z');

INSERT INTO public.kysely_migration_lock VALUES ('migration_lock', 0);

INSERT INTO public.lent_normals VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 0, 'extend', 'bd79cffb-9f1d-8649-836b-c1de0a2a5af1', '94468367-9114-8b72-a122-81889e3d5120', '2026-03-15 16:00:00+00', '[{"conditions":[-0.1,-4],"value":2.1258479,"variance":0.000050898844,"slopeInformation":[0,0,0,19646.812],"slopeScores":[0,0],"scale":0.020178968},{"conditions":[-0.1,-4],"value":2.1494339,"variance":0.000050898844,"slopeInformation":[0,0,0,19646.812],"slopeScores":[0,0],"scale":0.020178968},{"conditions":[-0.1,-4],"value":3.2422486,"variance":0.0005579876,"slopeInformation":[0,0,0,1792.1545],"slopeScores":[0,2.6221835],"scale":0.06681243},{"conditions":[-0.1,-4],"value":2.8324775,"variance":0.00053835855,"slopeInformation":[0,0,0,1857.4981],"slopeScores":[0,0],"scale":0.065626735},{"conditions":[-0.1,-4],"value":2.2721259,"variance":0.000048344293,"slopeInformation":[0,0,0,20684.965],"slopeScores":[0,0],"scale":0.019666071},{"conditions":[-0.1,-4],"value":4.5898699,"variance":0.000088992939,"slopeInformation":[0,0,0,11236.847],"slopeScores":[0,0.35639582],"scale":0.02668227},{"conditions":[-0.1,-4],"value":7.1155986,"variance":0.000088995487,"slopeInformation":[0,0,0,11236.525],"slopeScores":[0,0.35638562],"scale":0.026682652},{"conditions":[-0.1,-4],"value":0.50603865,"variance":0.0000077142857,"slopeInformation":[0,0,0,129629.63],"slopeScores":[0,0],"scale":0.007855844},{"conditions":[-0.1,-4],"value":0,"variance":0.0012053571,"slopeInformation":[0,0,0,829.62963],"slopeScores":[0,0],"scale":0.098198051},{"conditions":[-0.1,-4],"value":-1.9686212,"variance":0.0012093343,"slopeInformation":[0,0,0,826.90119],"slopeScores":[0,0.21883445],"scale":0.098359924},{"conditions":[-0.1,-4],"value":-1.0281645,"variance":0.0023182958,"slopeInformation":[0,0,0,431.35135],"slopeScores":[0,-0.77582516],"scale":0.13618504},{"conditions":[-0.1,-4],"value":0.00029821458,"variance":0.000065873685,"slopeInformation":[0,0,0,15180.569],"slopeScores":[0,-5.6621016],"scale":0.022956251},{"conditions":[-0.1,-4],"value":0.000081690155,"variance":0.000065843245,"slopeInformation":[0,0,0,15187.587],"slopeScores":[0,-5.9218099],"scale":0.022950947},{"conditions":[-0.1,-4],"value":-1.9774236,"variance":0.0049433929,"slopeInformation":[0,0,0,202.29021],"slopeScores":[0,-1.2680948],"scale":0.19886464}]');
INSERT INTO public.lent_normals VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 0, 'retract', 'bd79cffb-9f1d-8649-836b-c1de0a2a5af1', '94468367-9114-8b72-a122-81889e3d5120', '2026-03-16 16:00:00+00', '[{"conditions":[-0.1,-3],"value":2.1258479,"variance":0.00005090068,"slopeInformation":[0,0,0,19646.103],"slopeScores":[0,0],"scale":0.020179332},{"conditions":[-0.1,-3],"value":2.1494339,"variance":0.00005090068,"slopeInformation":[0,0,0,19646.103],"slopeScores":[0,0],"scale":0.020179332},{"conditions":[-0.1,-3],"value":3.2407855,"variance":0.00054972618,"slopeInformation":[0,0,0,1819.0875],"slopeScores":[0,0],"scale":0.066315982},{"conditions":[-0.1,-3],"value":2.8324775,"variance":0.00053835945,"slopeInformation":[0,0,0,1857.495],"slopeScores":[0,0],"scale":0.065626791},{"conditions":[-0.1,-3],"value":2.2721259,"variance":0.000048344429,"slopeInformation":[0,0,0,20684.907],"slopeScores":[0,0],"scale":0.019666099},{"conditions":[-0.1,-3],"value":4.5900603,"variance":0.000089011274,"slopeInformation":[0,0,0,11234.532],"slopeScores":[0,-0.35659385],"scale":0.026685018},{"conditions":[-0.1,-3],"value":7.1157889,"variance":0.000089013191,"slopeInformation":[0,0,0,11234.29],"slopeScores":[0,-0.35658617],"scale":0.026685306},{"conditions":[-0.1,-3],"value":0.50603865,"variance":0.0000077142857,"slopeInformation":[0,0,0,129629.63],"slopeScores":[0,0],"scale":0.007855844},{"conditions":[-0.1,-3],"value":0,"variance":0.0012053571,"slopeInformation":[0,0,0,829.62963],"slopeScores":[0,0],"scale":0.098198051},{"conditions":[-0.1,-3],"value":-1.969237,"variance":0.0012092695,"slopeInformation":[0,0,0,826.94552],"slopeScores":[0,-0.29036085],"scale":0.098357288},{"conditions":[-0.1,-3],"value":-1.0416912,"variance":0.0021852872,"slopeInformation":[0,0,0,457.60575],"slopeScores":[0,-7.012941],"scale":0.13222064},{"conditions":[-0.1,-3],"value":-0.00033559909,"variance":0.000065871247,"slopeInformation":[0,0,0,15181.131],"slopeScores":[0,2.8315916],"scale":0.022955827},{"conditions":[-0.1,-3],"value":-0.00028956794,"variance":0.00006593405,"slopeInformation":[0,0,0,15166.67],"slopeScores":[0,3.4719636],"scale":0.022966767},{"conditions":[-0.1,-3],"value":-1.9739395,"variance":0.0049345498,"slopeInformation":[0,0,0,202.65273],"slopeScores":[0,-2.0087348],"scale":0.19868668}]');
INSERT INTO public.lent_normals VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 1, 'extend', 'bd79cffb-9f1d-8649-836b-c1de0a2a5af1', '94468367-9114-8b72-a122-81889e3d5120', '2026-03-15 16:00:00+00', '[{"conditions":[-0.1,-4],"value":2.1016922,"variance":0.000050898844,"slopeInformation":[0,0,0,19646.812],"slopeScores":[0,0],"scale":0.020178968},{"conditions":[-0.1,-4],"value":2.1258479,"variance":0.000050898844,"slopeInformation":[0,0,0,19646.812],"slopeScores":[0,0],"scale":0.020178968},{"conditions":[-0.1,-4],"value":3.2185226,"variance":0.00055869812,"slopeInformation":[0,0,0,1789.8754],"slopeScores":[0,2.6816272],"scale":0.066854955},{"conditions":[-0.1,-4],"value":2.8086491,"variance":0.00053835855,"slopeInformation":[0,0,0,1857.4981],"slopeScores":[0,0],"scale":0.065626736},{"conditions":[-0.1,-4],"value":2.2721259,"variance":0.000048344293,"slopeInformation":[0,0,0,20684.965],"slopeScores":[0,0],"scale":0.019666071},{"conditions":[-0.1,-4],"value":4.5657183,"variance":0.000088992754,"slopeInformation":[0,0,0,11236.87],"slopeScores":[0,0.36510466],"scale":0.026682242},{"conditions":[-0.1,-4],"value":7.0914469,"variance":0.000088995302,"slopeInformation":[0,0,0,11236.548],"slopeScores":[0,0.36509421],"scale":0.026682624},{"conditions":[-0.1,-4],"value":0.49396135,"variance":0.0000077142857,"slopeInformation":[0,0,0,129629.63],"slopeScores":[0,0],"scale":0.007855844},{"conditions":[-0.1,-4],"value":0,"variance":0.0012053571,"slopeInformation":[0,0,0,829.62963],"slopeScores":[0,0],"scale":0.098198051},{"conditions":[-0.1,-4],"value":-1.9686212,"variance":0.0012093343,"slopeInformation":[0,0,0,826.90119],"slopeScores":[0,0.21883445],"scale":0.098359924},{"conditions":[-0.1,-4],"value":-0.99751392,"variance":0.0027330235,"slopeInformation":[0,0,0,365.89514],"slopeScores":[0,-0.65809614],"scale":0.14786544},{"conditions":[-0.1,-4],"value":0.00030570638,"variance":0.000065885824,"slopeInformation":[0,0,0,15177.772],"slopeScores":[0,-5.7994979],"scale":0.022958366},{"conditions":[-0.1,-4],"value":0.000062445846,"variance":0.000065845478,"slopeInformation":[0,0,0,15187.072],"slopeScores":[0,-6.0664104],"scale":0.022951336},{"conditions":[-0.1,-4],"value":-1.9629219,"variance":0.0048418185,"slopeInformation":[0,0,0,206.53397],"slopeScores":[0,-1.2946976],"scale":0.19681094}]');
INSERT INTO public.lent_normals VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 1, 'retract', 'bd79cffb-9f1d-8649-836b-c1de0a2a5af1', '94468367-9114-8b72-a122-81889e3d5120', '2026-03-16 16:00:00+00', '[{"conditions":[-0.1,-3],"value":2.1016922,"variance":0.00005090068,"slopeInformation":[0,0,0,19646.103],"slopeScores":[0,0],"scale":0.020179332},{"conditions":[-0.1,-3],"value":2.1258479,"variance":0.00005090068,"slopeInformation":[0,0,0,19646.103],"slopeScores":[0,0],"scale":0.020179332},{"conditions":[-0.1,-3],"value":3.2170244,"variance":0.00055040821,"slopeInformation":[0,0,0,1816.8334],"slopeScores":[0,0],"scale":0.066357107},{"conditions":[-0.1,-3],"value":2.8086491,"variance":0.00053835946,"slopeInformation":[0,0,0,1857.495],"slopeScores":[0,0],"scale":0.065626791},{"conditions":[-0.1,-3],"value":2.2721259,"variance":0.000048344429,"slopeInformation":[0,0,0,20684.907],"slopeScores":[0,0],"scale":0.019666099},{"conditions":[-0.1,-3],"value":4.5659133,"variance":0.00008901146,"slopeInformation":[0,0,0,11234.508],"slopeScores":[0,-0.3653128],"scale":0.026685046},{"conditions":[-0.1,-3],"value":7.091642,"variance":0.000089013377,"slopeInformation":[0,0,0,11234.266],"slopeScores":[0,-0.36530494],"scale":0.026685333},{"conditions":[-0.1,-3],"value":0.49396135,"variance":0.0000077142857,"slopeInformation":[0,0,0,129629.63],"slopeScores":[0,0],"scale":0.007855844},{"conditions":[-0.1,-3],"value":0,"variance":0.0012053571,"slopeInformation":[0,0,0,829.62963],"slopeScores":[0,0],"scale":0.098198051},{"conditions":[-0.1,-3],"value":-1.969237,"variance":0.0012092695,"slopeInformation":[0,0,0,826.94552],"slopeScores":[0,-0.29036085],"scale":0.098357288},{"conditions":[-0.1,-3],"value":-1.0263659,"variance":0.0023123631,"slopeInformation":[0,0,0,432.45804],"slopeScores":[0,0],"scale":0.13601068},{"conditions":[-0.1,-3],"value":-0.0003439056,"variance":0.000065883388,"slopeInformation":[0,0,0,15178.333],"slopeScores":[0,2.8987703],"scale":0.022957942},{"conditions":[-0.1,-3],"value":-0.00030726558,"variance":0.000065954515,"slopeInformation":[0,0,0,15161.964],"slopeScores":[0,3.3946881],"scale":0.022970331},{"conditions":[-0.1,-3],"value":-1.9666887,"variance":0.0048636673,"slopeInformation":[0,0,0,205.60617],"slopeScores":[0,-0.54718775],"scale":0.1972545}]');

INSERT INTO public.loggers VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-29a0-74b3-8da5-2fb16d44858e', 'Board', 'clamp', '\xc503ce02f7e2e1cd7438bd74d39efc453adb350ca09264f0c2a2c93c75f90c52', '2026-11-26 06:40:04.65014+00', '2026-11-26 06:40:04.395811+00', '2026-11-26 06:40:04.395811+00', 0);

INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-01 16:00:00+00', '019caa20-c400-7505-88d6-07e98fd90144', '{8.38,8.58,25.18,17.009999999999998,9.7,98.491,1231.1374999999982,0.5060386473429952,0,0.13936669947687272,0.34999999999999964,0.0014910728028322035,-0.0010166405473854296,0.14203960186535924}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-01 16:00:00+00', '019caa20-c400-7505-88d6-07e98fd90144', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.49396135265700475,0,0.13936669947687289,0.34999999999999964,0.0015275149795016475,-0.001041487486024048,0.14203960186535938}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-02 16:00:00+00', '019caf47-2000-7695-a72f-1bd7cf4a10d0', '{8.38,8.58,25.78,16.98,9.7,98.541,1231.7624999999982,0.5060386473429952,0,0.13966207253758814,0.34499999999999886,0.0014916467780430869,-0.0021018659145152874,0.13509204733437388}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-02 16:00:00+00', '019caf47-2000-7695-a72f-1bd7cf4a10d0', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.49396135265700475,0,0.13966207253758833,0.34499999999999886,0.001528117359412899,-0.0021532562791731456,0.13509204733437458}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-03 16:00:00+00', '019cb46d-7c00-71c6-a3db-61ee4932b1a0', '{8.38,8.58,25.78,16.98,9.7,98.44099999999999,1230.5124999999982,0.5060386473429952,0,0.13966207253758814,0.34500000000000064,-0.0008953327171902102,0.0018584936705315698,0.1312949046772901}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-03 16:00:00+00', '019cb46d-7c00-71c6-a3db-61ee4932b1a0', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.49396135265700475,0,0.13966207253758833,0.3899999999999997,-0.0009164186752330813,0.00181895221902325,0.13913613962364504}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-04 16:00:00+00', '019cb993-d800-767b-bf55-2b1a375ed580', '{8.38,8.58,25.48,16.98,9.7,98.516,1231.4499999999982,0.5060386473429952,0,0.13936669947687272,0.3500000000000014,-0.0014922211953172291,0.0010174235422617279,0.14203960186535908}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-04 16:00:00+00', '019cb993-d800-767b-bf55-2b1a375ed580', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.49396135265700475,0,0.13936669947687289,0.3500000000000014,-0.0015287202146127233,0.0010423092372357798,0.14203960186535952}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-05 16:00:00+00', '019cbeba-3400-72c2-bdbb-2d66eb947dc1', '{8.38,8.58,25.78,16.98,9.7,98.46599999999998,1230.8249999999982,0.5060386473429952,0,0.14005493427717797,0.3899999999999988,0.0005968310198108207,2.7128682718442352e-05,0.1421302071199898}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-05 16:00:00+00', '019cbeba-3400-72c2-bdbb-2d66eb947dc1', '{8.18,8.38,25.18,16.580000000000002,9.7,96.11600000000006,1201.4499999999991,0.49396135265700475,0,0.14005493427717816,0.3899999999999997,0.000611427782489593,2.7792171931315513e-05,0.14213020711998986}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-06 16:00:00+00', '019cc3e0-9000-74ca-bad2-2f5b3185ab84', '{8.38,8.58,25.18,17.009999999999998,9.7,98.491,1231.1374999999982,0.5060386473429952,0,0.13936669947687272,0.34999999999999964,-0.0014910728028324155,-0.0010166405473854296,0.1420396018653589}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-06 16:00:00+00', '019cc3e0-9000-74ca-bad2-2f5b3185ab84', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.49396135265700475,0,0.13936669947687289,0.34999999999999964,-0.0015275149795016475,-0.0010414874860238308,0.14203960186535955}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-07 16:00:00+00', '019cc906-ec00-7242-8a03-b6a23bb483a1', '{8.38,8.58,25.78,16.98,9.7,98.541,1231.7624999999982,0.5060386473429952,0,0.13966207253758814,0.34499999999999886,-0.001491646778043087,-0.002101865914515076,0.13509204733437408}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-07 16:00:00+00', '019cc906-ec00-7242-8a03-b6a23bb483a1', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.49396135265700475,0,0.13966207253758833,0.34499999999999886,-0.001528117359413116,-0.0021532562791731456,0.13509204733437444}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-08 16:00:00+00', '019cce2d-4800-7264-a0da-57eeeffed38f', '{8.38,8.58,25.78,16.98,9.7,98.44099999999999,1230.5124999999982,0.5060386473429952,0,0.13966207253758814,0.34500000000000064,0.0008953327171902102,0.001858493670531782,0.13129490467728977}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-08 16:00:00+00', '019cce2d-4800-7264-a0da-57eeeffed38f', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.49396135265700475,0,0.13966207253758833,0.3899999999999997,0.0009164186752330813,0.001818952219023033,0.1391361396236453}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-09 16:00:00+00', '019cd353-a400-76c5-9165-3102517452be', '{8.38,8.58,25.48,16.98,9.7,98.516,1231.4499999999982,0.5060386473429952,0,0.13936669947687272,0.3500000000000014,0.0014922211953174412,0.0010174235422617279,0.14203960186535927}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-09 16:00:00+00', '019cd353-a400-76c5-9165-3102517452be', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.49396135265700475,0,0.13936669947687289,0.3500000000000014,0.0015287202146127233,0.0010423092372355625,0.1420396018653593}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-10 16:00:00+00', '019cd87a-0000-73ce-9c67-b8691c15d166', '{8.38,8.58,25.78,16.98,9.7,98.46599999999998,1230.8249999999982,0.5060386473429952,0,0.14005493427717797,0.3899999999999988,-0.0005968310198110326,2.7128682718654388e-05,0.14213020711998936}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-10 16:00:00+00', '019cd87a-0000-73ce-9c67-b8691c15d166', '{8.18,8.38,25.18,16.580000000000002,9.7,96.11600000000006,1201.4499999999991,0.49396135265700475,0,0.14005493427717816,0.3899999999999997,-0.0006114277824895929,2.7792171931315506e-05,0.14213020711998983}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-11 16:00:00+00', '019cdda0-5c00-7179-ab78-f8fcc43ce7a8', '{8.38,8.58,25.18,17.009999999999998,9.7,98.491,1231.1374999999982,0.5060386473429952,0,0.13936669947687272,0.34999999999999964,0.0014910728028322035,-0.0010166405473854296,0.14203960186535924}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-11 16:00:00+00', '019cdda0-5c00-7179-ab78-f8fcc43ce7a8', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.49396135265700475,0,0.13936669947687289,0.34999999999999964,0.0015275149795016475,-0.001041487486024048,0.14203960186535938}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-12 16:00:00+00', '019ce2c6-b800-71b0-8ee2-3b96d39668e0', '{8.38,8.58,25.78,16.98,9.7,98.541,1231.7624999999982,0.5060386473429952,0,0.13966207253758814,0.34499999999999886,0.0014916467780430869,-0.0021018659145152874,0.13509204733437388}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-12 16:00:00+00', '019ce2c6-b800-71b0-8ee2-3b96d39668e0', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.49396135265700475,0,0.13966207253758833,0.34499999999999886,0.001528117359412899,-0.0021532562791731456,0.13509204733437458}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-13 16:00:00+00', '019ce7ed-1400-7025-8127-57f652f41902', '{8.38,8.58,25.78,16.98,9.7,98.44099999999999,1230.5124999999982,0.5060386473429952,0,0.13966207253758814,0.34500000000000064,-0.0008953327171902102,0.0018584936705315698,0.1312949046772901}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-13 16:00:00+00', '019ce7ed-1400-7025-8127-57f652f41902', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.49396135265700475,0,0.13966207253758833,0.3899999999999997,-0.0009164186752330813,0.00181895221902325,0.13913613962364504}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-14 16:00:00+00', '019ced13-7000-77a2-9095-8ba9b23435b7', '{8.38,8.58,25.48,16.98,9.7,98.516,1231.4499999999982,0.5060386473429952,0,0.13936669947687272,0.3500000000000014,-0.0014922211953172291,0.0010174235422617279,0.14203960186535908}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-14 16:00:00+00', '019ced13-7000-77a2-9095-8ba9b23435b7', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.49396135265700475,0,0.13936669947687289,0.3500000000000014,-0.0015287202146127233,0.0010423092372357798,0.14203960186535952}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-15 16:00:00+00', '019cf239-cc00-73ff-84ea-2cfd8f37736b', '{8.38,8.58,25.78,16.98,9.7,98.46599999999998,1230.8249999999982,0.5060386473429952,0,0.14005493427717797,0.3899999999999988,0.0005968310198108207,2.7128682718442352e-05,0.1421302071199898}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-15 16:00:00+00', '019cf239-cc00-73ff-84ea-2cfd8f37736b', '{8.18,8.38,25.18,16.580000000000002,9.7,96.11600000000006,1201.4499999999991,0.49396135265700475,0,0.14005493427717816,0.3899999999999997,0.000611427782489593,2.7792171931315513e-05,0.14213020711998986}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-16 16:00:00+00', '019cf760-2800-7477-9a50-776688ef212c', '{8.38,8.58,25.18,17.009999999999998,9.7,98.491,1231.1374999999982,0.5060386473429952,0,0.13936669947687272,0.34999999999999964,-0.0014910728028324155,-0.0010166405473854296,0.1420396018653589}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-16 16:00:00+00', '019cf760-2800-7477-9a50-776688ef212c', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.49396135265700475,0,0.13936669947687289,0.34999999999999964,-0.0015275149795016475,-0.0010414874860238308,0.14203960186535955}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}', '{NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-17 16:00:00+00', '019cfc86-8400-73f0-ac8f-b6b06a87d17e', '{8.38,8.58,25.78,16.98,9.7,98.541,1231.7624999999982,0.5060386473429952,0,0.13966207253758814,0.34499999999999886,-0.001491646778043087,-0.002101865914515076,0.13509204733437408}', '{8.41194066727772,8.612702974372642,25.689802889766185,17.053021624549537,9.708189354689216,98.89973155605614,1236.2453806839358,0.5060386473429953,0,0.14029338639846792,0.359407676874008,0.0003195859525851296,0.00010402256436314075,0.13913002403333505}', '{8.230456108487527,8.426887041864315,25.49380738173147,16.789639640301296,9.577515802732405,95.75900315535688,1205.9882048293248,0.5060386473429954,0,0.1364891071546499,0.3367043582404052,-0.0015983767951123621,-0.002213516484435958,0.1317430365998344}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-17 16:00:00+00', '019cfc86-8400-73f0-ac8f-b6b06a87d17e', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.49396135265700475,0,0.13966207253758833,0.34499999999999886,-0.001528117359413116,-0.0021532562791731456,0.13509204733437444}', '{8.211178360182823,8.41194066727772,25.08745860959535,16.651478212057725,9.708189354689216,96.53974274726131,1206.7455507395448,0.49396135265700475,0,0.1402933863984682,0.37060650407166223,0.000327596577724364,8.532469713475743e-05,0.14115998585008524}', '{8.034025175110735,8.230456108487527,24.900527396087334,16.394123853851497,9.577515802732405,93.47540374452576,1177.2285700759037,0.4939613526570048,0,0.13648910715465004,0.33667559879990466,-0.0016374384461221257,-0.0022676317637926524,0.13174174866172444}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-18 16:00:00+00', '019d01ac-e000-710f-8e72-a276a4d60c73', '{8.38,8.58,25.78,16.98,9.7,98.44099999999999,1230.5124999999982,0.5060386473429952,0,0.13966207253758814,0.34500000000000064,0.0008953327171902102,0.001858493670531782,0.13129490467728977}', '{8.411944924350978,8.612707333046703,25.652380157012992,17.052892324116602,9.708192019333218,98.91958283785745,1236.4930117108306,0.5060386473429953,0,0.1402135160802422,0.35478777445811527,-0.00034631743567751345,-0.0003026748018756152,0.13962452419042443}', '{8.26175949907345,8.458937530077563,25.58876289903326,16.854103204583428,9.585562714840396,96.06257519385235,1209.815364509354,0.5060386473429953,0,0.13709167736867453,0.3375587477268397,0.0009380102870616316,0.0019108564218763583,0.12864632389341804}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-18 16:00:00+00', '019d01ac-e000-710f-8e72-a276a4d60c73', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.49396135265700475,0,0.13966207253758833,0.3899999999999997,0.0009164186752330813,0.001818952219023033,0.1391361396236453}', '{8.21118251565525,8.411944924350978,25.05004188879209,16.651351949885083,9.708192019333218,96.55959277441552,1206.9931782271808,0.4939613526570047,0,0.14021351608024232,0.3600264528961009,-0.00035487837625803654,-0.00032008090479964746,0.1406189284606116}', '{8.064581468069303,8.26175949907345,24.99320689611626,16.457068890767278,9.585562714840396,93.76930856702563,1180.933886016871,0.49396135265700475,0,0.13709167736867478,0.382593526311687,0.0009601092005000895,0.0018701504883022978,0.13640798715019944}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-19 16:00:00+00', '019d06d3-3c00-7674-abe4-556b144080cb', '{8.38,8.58,25.48,16.98,9.7,98.516,1231.4499999999982,0.5060386473429952,0,0.13936669947687272,0.3500000000000014,0.0014922211953174412,0.0010174235422617279,0.14203960186535927}', '{8.346333860735415,8.545530372924757,25.504489006195715,16.914902378942383,9.691216142364862,98.03912262797616,1225.48403313709,0.5060386473429953,0,0.13895018846685908,0.35439600785195063,8.766454718629605e-05,-0.00017083726630017513,0.13730025020709785}', '{8.297657207501882,8.495691985723901,25.38995337053362,16.91956193165605,9.59435667981769,96.57898966851101,1216.3189817176471,0.5060386473429953,0,0.13748549999402754,0.34514701620256494,0.0014606151010298975,0.000990633373164215,0.13994468477955768}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-19 16:00:00+00', '019d06d3-3c00-7674-abe4-556b144080cb', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.49396135265700475,0,0.13936669947687289,0.3500000000000014,0.0015287202146127233,0.0010423092372355625,0.1420396018653593}', '{8.147137348546014,8.346333860735415,24.90699390062369,16.516592102493103,9.691216142364862,95.69984023602706,1196.2431234009705,0.4939613526570047,0,0.13895018846685916,0.3642008805969375,8.99907159224811e-05,-0.0001940500824423321,0.13908490087341238}', '{8.099622429279911,8.297657207501882,24.792087545324016,16.520986533923093,9.59435667981769,94.27520101412948,1187.3049921846164,0.49396135265700475,0,0.13748549999402782,0.3452044545006576,0.0014963536930776903,0.0010144442445261823,0.139959097905049}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-20 16:00:00+00', '019d0bf9-9800-750d-919b-e27f6d170d99', '{8.38,8.58,25.78,16.98,9.7,98.46599999999998,1230.8249999999982,0.5060386473429952,0,0.14005493427717797,0.3899999999999988,-0.0005968310198110326,2.7128682718654388e-05,0.14213020711998936}', '{8.346317862215608,8.545513992578721,25.47044791204999,16.914774344208404,9.691210305260713,98.04562951522786,1225.5659168127672,0.5060386473429955,0,0.13886553356162995,0.34989611619036176,-0.0001955065551633577,-5.1546706417191084e-05,0.1372893120721094}', '{8.32777061558611,8.526524090898441,25.78565035568122,16.984326752641365,9.60219078485239,96.93040479078705,1220.747742785704,0.5060386473429952,0,0.1387764897946073,0.3858589166411567,-0.0005908110984945785,2.5946800802814013e-05,0.14072829314502927}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-20 16:00:00+00', '019d0bf9-9800-750d-919b-e27f6d170d99', '{8.18,8.38,25.18,16.580000000000002,9.7,96.11600000000006,1201.4499999999991,0.49396135265700475,0,0.14005493427717816,0.3899999999999997,-0.0006114277824895929,2.7792171931315506e-05,0.14213020711998983}', '{8.147121731852454,8.346317862215608,24.872959070263896,16.516467086460253,9.691210305260713,95.70635519839976,1196.3250949912165,0.4939613526570049,0,0.13886553356162995,0.3596260869171533,-0.00020046826320721983,-7.184500045178599e-05,0.13907388324896267}', '{8.129017140273815,8.32777061558611,25.185498103586472,16.58422540843564,9.60219078485239,94.61711334679748,1191.614002254232,0.4939613526570048,0,0.13877648979460752,0.38599585510731393,-0.0006052647569005769,2.629581278456211e-05,0.14073802748149805}', '{f,f,f,f,f,f,f,f,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-21 16:00:00+00', '019d111f-f400-7063-9844-21ca8b1cb1ec', '{9.98,10.18,29.98,20.21,9.7,117.29099999999984,1466.1374999999978,0.5495594713656388,0,0.13936669947687216,0.34999999999999787,0.0012521002972729516,-0.0008537047481406893,0.14203960186535877}', '{8.4089614897375,8.609652694743163,25.697157747236545,17.0509834049176,9.707668002105585,98.88392334392178,1236.048646223594,0.506038647342995,0,0.14024835595159302,0.3572826615261918,0.00023864037041524793,-4.3089909428975317e-05,0.13912437036540276}', '{9.81922630772446,10.016004390043557,29.64761726122891,19.986101125053878,9.580053496507304,114.12347140521742,1437.2708493532205,0.5495594713656391,0,0.13628621438762012,0.3418611764941798,0.001252127024481965,-0.0008536995092317083,0.138631617344592}', '{t,t,f,f,f,t,t,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-21 16:00:00+00', '019d111f-f400-7063-9844-21ca8b1cb1ec', '{8.18,8.38,24.580000000000002,16.61,9.7,96.14100000000005,1201.7624999999982,0.45044052863436124,0,0.13936669947687289,0.34999999999999964,0.0015275149795016475,-0.001041487486024048,0.14203960186535938}', '{8.208270284731837,8.4089614897375,25.094835562625246,16.64945272735457,9.707668002105585,96.52454786629534,1206.5564621917079,0.4939613526570046,0,0.14024835595159318,0.36616708988090574,0.0002446369290053636,-6.113523512649518e-05,0.14074584404872886}', '{8.048223566852311,8.24500164917144,24.30747789463,16.42598404763621,9.580053496507304,93.54464250801371,1178.101105184127,0.45044052863436124,0,0.1362862143876209,0.34176934608830967,0.0015275423489883326,-0.0010414808511150122,0.13863360826042437}', '{f,f,f,f,f,f,f,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-22 16:00:00+00', '019d1646-5000-7640-bb9e-e157ad41874d', '{9.98,10.18,30.580000000000002,20.18,9.7,117.34099999999997,1466.7624999999978,0.5495594713656388,0,0.13966207253758764,0.3449999999999971,0.0012525050100201467,-0.0017648934232100532,0.13509204733437363}', '{8.408966245725349,8.609657564239066,25.697028971016202,17.05089664735418,9.707670841037014,98.88400609288001,1236.0492006305792,0.5060386473429953,0,0.14024832237044269,0.35728213144255494,-0.00023864168919181106,-4.3089650930713065e-05,0.13912397962081255}', '{9.853100979380452,10.050557912834966,30.356284132432204,20.03252072870576,9.587595978762725,114.62607309126055,1443.6050917777602,0.549559471365639,0,0.13718656560598336,0.3385663437227012,0.0012524888300122859,-0.0017648902516976177,0.1324919687197057}', '{t,t,f,f,f,t,t,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-22 16:00:00+00', '019d1646-5000-7640-bb9e-e157ad41874d', '{8.18,8.38,25.18,16.580000000000002,9.7,96.19100000000006,1202.3874999999982,0.45044052863436124,0,0.13966207253758833,0.34499999999999886,0.001528117359412899,-0.0021532562791731456,0.13509204733437458}', '{8.208274927211587,8.408966245725349,25.094709794513207,16.649368007807976,9.707670841037014,96.52462864087478,1206.5570033707208,0.49396135265700464,0,0.14024832237044285,0.36616617269635354,-0.0002446382794737369,-6.113490774666356e-05,0.14074542645873633}', '{8.07598857828983,8.273445511744306,24.99578193039291,16.458830148152558,9.587595978762725,93.96542211797671,1183.4040734568284,0.45044052863436135,0,0.13718656560598402,0.33849434829155683,0.0015281007905885839,-0.002153252262555936,0.1324936391917156}', '{f,f,f,f,f,f,f,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'extend', '2026-03-23 16:00:00+00', '019d1b6c-ac00-76fb-994c-bf5e7e016ac6', '{9.98,10.18,30.580000000000002,20.18,9.7,117.24099999999987,1465.5124999999978,0.5495594713656388,0,0.13966207253758764,0.3449999999999971,-0.0007517459906879002,0.0015604424352159303,0.1312949046772896}', '{8.351168704015183,8.55048060625897,25.659829032425208,17.037050065830993,9.692062283601713,98.1007723070553,1226.255455670275,0.506038647342995,0,0.1389649815216701,0.35364447487545425,0.00027918931510759263,-7.55124354991928e-05,0.13789373967593643}', '{9.887178526398763,10.085318376627175,30.472272379077772,20.10900750699156,9.595175573146246,114.98549561167663,1448.1316753917795,0.5495594713656389,0,0.1378015968468218,0.3401638367907057,-0.000751729811096923,0.0015604456066466601,0.1293956353253186}', '{t,t,f,f,f,t,t,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'extend', '2026-03-23 16:00:00+00', '019d1b6c-ac00-76fb-994c-bf5e7e016ac6', '{8.18,8.38,25.18,16.580000000000002,9.7,96.09100000000005,1201.1374999999982,0.45044052863436124,0,0.13966207253758833,0.3899999999999997,-0.0009164186752330813,0.00181895221902325,0.13913613962364504}', '{8.150838932426351,8.350125947889037,24.858804611992923,16.51975457518689,9.691942265168764,95.73853252776676,1196.7277727991143,0.493069105485338,0,0.13893419465659745,0.3613113347465886,0.0003506250478950214,-0.0001421199985053045,0.139499237405501}', '{8.108131342911006,8.306374163031093,25.094937123984536,16.522211090898757,9.595912678546657,94.27795539675952,1187.3402875686756,0.450689940738518,0,0.13783936109493583,0.38475863799393784,-0.0009456732296837493,0.0018413232815236646,0.13711795939068872}', '{f,f,f,f,f,f,f,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'front', 'retract', '2026-03-24 16:00:00+00', '019d2093-0800-728d-8ebe-66070e7402a5', '{9.98,10.18,30.28,20.18,9.7,117.31599999999997,1466.4499999999978,0.5495594713656388,0,0.13936669947687216,0.34999999999999787,-0.0012529099844800116,0.0008542568075999917,0.14203960186535836}', '{8.351155782281252,8.550467376130435,25.501923132668374,16.921503707855255,9.692363735855166,98.10049566637804,1226.2524718617074,0.5060386473429954,0,0.13899981015232854,0.3539351074502982,-0.00023864960010916612,-4.308810028207649e-05,0.13777861746326653}', '{9.921308584271264,10.120132403595335,30.28844523075472,20.185702549152204,9.60273762471077,115.5169536094862,1454.8282622703668,0.5495594713656389,0,0.13812604742467863,0.3467211912848892,-0.0012529182535705172,0.0008542584284637905,0.1406660802635451}', '{t,t,f,f,f,t,t,t,f,f,f,f,f,f}');
INSERT INTO public.measures VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'rear', 'retract', '2026-03-24 16:00:00+00', '019d2093-0800-728d-8ebe-66070e7402a5', '{8.18,8.38,24.88,16.580000000000002,9.7,96.16600000000005,1202.0749999999991,0.45044052863436124,0,0.13936669947687289,0.3500000000000014,-0.0015287202146127233,0.0010423092372357798,0.14203960186535952}', '{8.150827173556957,8.350113901516792,24.911775758126996,16.517022927094903,9.691937341464476,95.74165215104085,1196.7672547954298,0.49306910661070263,0,0.13895771126836806,0.36085263152839986,-9.816677482388887e-05,-0.00023398116498186557,0.13888476977754463}', '{8.134712879084807,8.333605614514733,24.886849442480113,16.58517898375095,9.603229686887202,94.71305547098119,1192.8226486806698,0.4506068022679101,0,0.13814580515940675,0.3468822494828725,-0.0015556350599390755,0.001074100081125805,0.14070004137195363}', '{f,f,f,f,f,f,f,t,f,f,f,f,f,f}');

INSERT INTO public.people VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-20f0-7786-803f-d7c3941abca0', 'keeper@example.com', 'keeper', 'dealer', '$argon2id$v=19$m=19456,t=2,p=1$jZ9XMXj9CmA1IA36C/ynWg$ztog7hVYOy0AkAwyz7RdZfc2MJ5yljuSqFrGTCcaa2s', '2026-11-26 06:40:01.704788+00', NULL, NULL, NULL, NULL, NULL, NULL, true, NULL, NULL, false, NULL, NULL, NULL, '\xe27f8827ac1d4580a485afd54144c8f64d608db685974021bd2a251754d24f8f');
INSERT INTO public.people VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2b95-77d7-b165-07d844f28221', 'ines@example.com', 'Ines', 'technician', NULL, '2026-11-26 06:40:04.500351+00', NULL, NULL, NULL, NULL, NULL, NULL, true, NULL, NULL, false, NULL, NULL, NULL, '\xdbee6ca4ed6e46b59e2cb3b49b66f488a18f5732e10f404c84d7c85d7b33d43a');

INSERT INTO public.record VALUES ('01a21695-20e4-7395-899a-996e43f97835', '2026-11-26 06:40:01.856735+00', 'aaeec7bb-d4c2-4108-96bb-2feb62b6694c', NULL, NULL, 'person-added', 'people', '01a21695-20f0-7786-803f-d7c3941abca0', NULL, '{"name": "keeper", "role": "dealer", "email": "keeper@example.com"}');
INSERT INTO public.record VALUES ('01a21695-20e4-7395-899a-996e43f97835', '2026-11-26 06:40:03.71907+00', '99129bbc-3eef-42ee-b27d-eca6e148c562', '01a21695-20f0-7786-803f-d7c3941abca0', 'keeper', 'signed-in', 'sessions', '01a21695-2875-77f5-8e12-3f6513ba53ed', NULL, '{}');
INSERT INTO public.record VALUES ('01a21695-20e4-7395-899a-996e43f97835', '2026-11-26 06:40:04.405307+00', 'a3d5d805-fb6c-4252-a7cc-a72f8cc988c3', '01a21695-20f0-7786-803f-d7c3941abca0', 'keeper', 'logger-added', 'loggers', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-29a0-74b3-8da5-2fb16d44858e', '{"name": "Board"}');
INSERT INTO public.record VALUES ('01a21695-20e4-7395-899a-996e43f97835', '2026-11-26 06:40:04.504029+00', 'c62a9e03-6a06-483f-b786-1df0f70b70cd', '01a21695-20f0-7786-803f-d7c3941abca0', 'keeper', 'person-added', 'people', '01a21695-2b95-77d7-b165-07d844f28221', NULL, '{"name": "Ines", "role": "technician", "email": "ines@example.com"}');
INSERT INTO public.record VALUES ('01a21695-20e4-7395-899a-996e43f97835', '2026-11-26 06:40:04.514927+00', '7187cc7b-df5b-4a10-8066-97ef5f5f840c', '01a21695-20f0-7786-803f-d7c3941abca0', 'keeper', 'invitation-made', 'invitations', NULL, NULL, '{"person_id": "01a21695-2b95-77d7-b165-07d844f28221"}');
INSERT INTO public.record VALUES ('01a21695-20e4-7395-899a-996e43f97835', '2026-11-26 06:40:04.591589+00', '2ef42628-2c23-4e31-b468-1f2806d397e1', '01a21695-20f0-7786-803f-d7c3941abca0', 'keeper', 'service-recorded', 'services', '01a21695-2beb-75c5-b171-28bc829d5045', '01a21695-29a0-74b3-8da5-2fb16d44858e', '{"at": "2026-03-05T04:00:00+00:00", "kind": "cleaned", "room_id": "01a21695-2a6e-771d-9fe1-4811e4d69cdb"}');
INSERT INTO public.record VALUES ('01a21695-20e4-7395-899a-996e43f97835', '2026-11-26 06:40:07.505159+00', '7b38fbe7-3f7b-4383-a061-40100e0d16f3', '01a21695-20f0-7786-803f-d7c3941abca0', 'keeper', 'signed-in', 'sessions', '01a21695-374e-7085-8f47-19eaed170301', NULL, '{}');

INSERT INTO public.room_checkpoints VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '2026-03-24 16:00:00+00', 25, 5, '\x8bfb670080aaaaaaeaff7475308007ef6266c02c2b4bbcd3bc37f0e00d3c18781fba07de25210e5e1196150115e99ee0ee51f972f2a7df3bb1fa3fa724d994ca929cc144760a0a1a1a1a0a0ada92d34d69c10b0d03031b0e7c1c66b2f397e2855f6d8dcae3b9e389ad186a45ccb2de7fe4afe576bd7efbb7d7e56901cfc69adcec5cc7d6cdd76dbe1edc42e411af352faf7f2ceb72bb5ebf2d4fbf96d7dbfbdfc7f2b4bc5fb61fe78f8f655deeefafc77d79fab27cbd5d2f8f655d6ec7f9b63cafcbe376fefbf8f8f7e3713beecb13f659973f8ff3ed3f8ee3f1b63c5d3e3f3ed6e5767ef9ebff7b7fbcbcfdfbb7e5e9f2f9f1b12eb7f3e378fd976fdfefcb76eaf7ba5cbfbd5fce1ffff7faf1b82f4fb475f97ebdbf3fdeff3efef5fd76bc3cdeaf97e56939fedfe3b8bc2ebfd7e5e5ed7cb91c1ff7e5e9cbafe5fefe7a2c4fcbd7dbf5f258d6e5d5ca796d5d5eae97d7f7c7fbf5725f9ebe7cd9b0633e6cb962dd72dd7aef7a5eb7f1e7be6ebd672024cf75ebdd8990dcd7ad773442f25cb7da6508c97ddd6acf464896eb56bb6f1292f9bad58e6d82f25cb7dc3b11f2ff535fb7dca39f9fd7e5eff3c7e7715f9ebe7cb19d968a1e468ccfd86a3b63c27de831a3e6eabb59210153b10cf4d576b90b0c54a0bbe1abedd6464b2913e3de6beca9994ab64724cd63ed9dcc1a17bbd3bdb5624f145c15ed6133692bd68dfb342aaac6554153af1b77c4c88c1631aa56afd801c6106d82c9cde0b96ed8018255818c7665d8d4ba719f64c578bb54258fe795841b3c1993a3994e12c15c6d971bbc2848ce8b6a932045b6cb273c8c0325500593250b81ff13a5b4c9604fb487d68d3b2a8c507112dd99eb861d8026ddadd91c18612b76804ac57835d299355a37dbe1708c2319631e8d3787d8a413639991a0327c26d3dc2320ece72adb90911556e6b66ed8275850fa281521aed801e4949ce08890a14be875b0a6a9644d4598a7ad1bf749822ccd740ca69fd72fe7c0f86f09810b83686ba459277aed9d27114931e9d9c558710e043c14038b5020c8185654b7100e7509bdc608aa7218c944d7bad90eb04703740fbdf399835b206f8dcbd1f0292bdc46346a9ae9a19e102071a28ba970ba5310f4580a485ed0b2999193ce8ee019a020d8619e61566ceb0901b5544c06304cdc842d05fedb08b2e775f9fafee887d3cfbc5c8faf5fdf5fde8fcbe3be3c7db19d74649b593bdc2256ec20802844c5c035bcdad0cf78842cbc954e43e6f3babc5cff3edfdecf97976379fa821d801931d3de8c66982770c280660c81c00c6358a46104ad5d9e351ec881aa59b040afd2cc5497a9663ae4ebc63da5540a8ac9ecb6639301d5dd739904ff9e24dcc53439a2739ed7e5fe72fe389627eca0d4290b784598dbbabc1e7fde8ee3fe7fbefecfdb71bc5ebf2d4f8cbd06519472c2daf47be5dc03bc2adc8ced65009c4b21e05e6206e396f4863b258acc91f395549af8384ae8c8f95208b89651c39f6806c115c6533be5812912bfe255be9ba7392ba74228c58a1d3d40b2cd82e5285b414818c54c7b9b5313e35e90de6a52599c48ae0841239457797b974a34f62421a89c6e9095852f858a6822fcb99a66c0bcd68dbb958f86445b87287435ff1c16c118ea61a9acc844a505b88dca7caca6ac5be3440098d6d4e4d050e6f1ed43b2447578658f2c09379225d4d113e3e1ada020ba44efc9f08af8f6c1b4ecccb0709a464116016844b409d196dd6b8ab400a8996e09459a15a99a051768663c13bd6728d422bd930d87b3d1d7bdc7e6d95bb0724f8fa156ba4ff9d87474123e400c8a054454488120d1981365acae60dcf793568876efc960cbd60d3b14332924a69544ae1b76002d9565d7b0584452eebbc0ac8431cd5dd254ace412d04c78e59865a6a713834c618870af6aab21579db198387fca60aaf2e875e30e737a4ed180a1a3ab79e7b4088668a2dc942d468f516e63caa70b9a368c228a733fea016598744121b861ec599535a9616537bd843a46092b5921ab0a08c3a7b3992d4ce6c028f7411327094ea74b1cc60933479c4c7a9a02742898d0583b91a8601aa86ac1ba5da257e48ca69b99c1a9e875f3ddb2e9d16a73319df1aeeefdb401a6b535bb2cbca28162dc861633deec2e147b12417225cd87914316dcb877ccb4a63a59d5e3c74c18045b95b42c2101d23bb9ad3a2393808420218cd316f4f44a138b658c23d461258491d03812ee39c68922aa1a7052ee5a3dac60c44c33c6b418c9f960ef3e6591ae77267b0b4c6b6bcba284a0c94977c94138320b936508143a8056b812eed610c52bb547c36da22dc3013f36e39a7b26c9a4392d5b7e6c6cce7d18347993554373cb22922e0016336a9649eee829d3983da564c3921d512cd435231654613133d3b937bdd9ba71f7d3155665796c746598e5ddb48fba0d87115d8b3dc6ccd1ad60081dc7d6ecdb18eda1a83193c7a407fcf2b0e4c6009c9ecb3d1b56ace0d083cddb47a2712a5bea232738338344203a49450941cf4e713c81f09081dadbc7a1f42701788f5cb16edcc3e1d61d00995d1db1a6e69bdd201443e323a5c291a34ad66c3854a62a3dc36b28d2fc4813e8c908231a1eaeee2b1bf751d55009fa58781c326180f4648435cdcdfdee45c38886831e8d8635e101e6605ab74c659d9235b418653123e9caec8650d0b333644cb7e93407d50c56add803553da770f98c737add6c378feaf248412cca8747dfa70d3034814aafcc9613a47c800ce66d8e548fdc1124954782e43018f7be0a699d1529b04ce12b77b94f2a426aa7338fad57ba496c64a9a641ce8da21f3b4d63a96a87101314760522c2e8be5a61efa22c73725a39e8ad9dabcf8c05ddd9cedacc231824e44906663a94260feeaee29db9bd9bd3c0404c40aeac31770f23db92699598ac2916b370109860313233a526d7ee18453fe9aa6a4c978515b356df532c1f33aa223ce2d866cdddda8501651a741ddb04b6e702884215a6ac14d34d12090133a3f1711f0ceefa0c04a3cd81e2b419ddc2cf84ba3433330380a44bb66edc9d74022babf3d80813c52cef5633ba859b1b3d8497309606ef82f23671808da171b685dc47508cfbe531b89757d3bb2e7e1ede0e9e7e2e1c8a6a246726bcd6de61744f37571898c746acdce1de3eb4cc70160ff243c49c410fab8c7613de45f28b00c6208db9a8891f91569dc944b717a9aa090b6ac77e860aa1a0262f59c83b8dcf9e59dec53dc4c63a6572015e420cac615ec8f6a8b7308cd11ec8945a3ee23f4c32eb4c4596b1017c32f799aab63620ef887b0c98e89343cf6a8fea5c130a651b685d3619031f4aa87c6aa67b4cc6a642165332025477a1fba62ec0a570766a3a66d45144272ce624b34da8269b9318d6358af19c4819a6e698b5b1630520038331cd719149af2e37ba2d4c75a05b39a82c8d457ac0d3ed068f367737ebdfcfeb727f3b7f3feecbd397cbe7c7c7baf00b8be775f938fe3e3e3a2d5ad881621510574e62bb1557b07ad42a545641d54d47d7006741f44c633a1cb1e253c58da0a5594c74cb2dc3a248619977b973da2b18bd7a241848974fa3c321868946700b8b1ccf50947a9dfaba6c12a1e8607bc99fd7e576bc1c97c711753feb4aefb4c464c8522b7684c558d08670216cddb003e07426140d4c56b8d6c3b131b32b73cc2bd25d23104e86d2d0214fcbb1f5d01570af18b119613950d86095de98ea1e53ae5ee8271481b4294f65daf3ba7c1ce7dbe5f12f8f7fbf2f4fecf6f10200605dbedfae5fdf3f8e18d0ab76efbc41d3c7b66a772d0c1a1b35d6b2164ca3fce1b5ac05b3d5aaddabace207d3d10d1a3b632d0c1a1b35d6b2164ca3fce1b5ac0593cdaadde338287eb039ba416367ac854163a3c65ad68269943fbc96b5e07ed8b6b11d6b61d0d8a8b196b5601ae58fad9db253713f1e8f8ff7cb9fca255d5e8ee3f5785d9e2462a2ed7ffde7f2c41c41f78f82b12e1fc7e56146e9f72a500acd6fc7e3767e792894c667b16ebd97442728b775eb3d5cc21392c7baf5ced92624b775ab7d122159ac5bedbd49486eeb567bc4362179ac5bed6c8464b66eb9ab8a4179ac5bee4584e4b66eb9bb2b946efd89141a2d8106573a574785c66aea90683879240a376157687c1af0c681da493456b3216e90a2f1c9c11b092a3e99284c6ec1cc22954089da8894c20747ec693da6505b5bb60ad45c5f1502df9202de569fc6dbd32a5aa62450532be19616e82850cb2ac325b8122d00de1bef2c509bcf80bd3eedffcca7c047144aa0122c997b584e434bee15159e2d1b30d0d823c601b39286653528ea05e1631e693d0cd9cdb82ea19910d503fe94b2b3b802ee4411a8b1b21ce850a72ca607dd4f53353dca5937ee1c8a5316e381701e9bfca8bafbf3168884b77b4d29e91a111d624a5df4b0e81eb329f8510dbcdd3ae1eea1a168f705db1980ba440fd03b6977ad1510fe1200fb6e3e706be7c85bad53d2850baecc1c4832d04574b6470c998c28f781e8ca68a85213758d5617008d4c118e983058172964e53e291fa705ac449d3098621c17bb2a1cb66eb387cc94235444c1ead806aae63c212c5cec061d847a5ca109a1891aef1fc0321f1b72aca1ea0e703f9ad654a422ad180e1f9449d55d45379b4aba754906cac6f9dd12835d502b34b42c6516e15e5011d5ed8331b408d04023b71e167d3c7745911760946386d9625599aa994c4533e519384942c99dca61d6549791d8d5bca736834008b53a461e5535c2b0b31d554a921923bd2228040aa87058321b7e9156a8769ba20fd52aa8982948695e305a3a218cd6c0a2a73b61560e2f44b5ba73a02c7313bab298598166aaeeb1d139a99a7623c3c32474e2fc29bac22bd3d6adf7ea44d20977da38e97ddd7ddd627f426034d11d35ed01ba7ca0df9a844a82a73cc5e6b0ee473d60400e1ab3126e1c7b36d2951dac320e08758c3aaba62b8a28200c9fee8c604f467635e95e38368532478daaaa419039ea4aa4a13ad34a08c14579786adac93ca3ab061c770d14854a4f560f866a8b75b33dc2db47d3610d665c31fbaafbba458a468769ed141a2c37da90733b2a67a44ed9785531102446a41c2eeb69b871ef8477d1db23268264288c2eafaef0ccaaa137ed46544311350938eb4182152a9b959610f44c64e9e3ed56567b53d04579313bbbc8b222aa5ad459df4c8881969201853c2c68eceace27d27706c965d145d2a56a94b1bdc7e114a212566372516f08eaa988c921e5f080bb2e55ba9aabefe3847766658e228f8d8d1b414c8d7588560a573246f149a03403475b52fd345163801e5d996d5d894473e853363ba952dcdb56ebc6dd4d97b91c5d5a257bb7c19a48689568b77e6f14b54a92da64e6ce1aa9d2af5a88798c445cec7b4e6995203b64e531051b8b402f3a5013056626085a89e3ac70cb400dbafaf677add233d6d366be6edcd1d66d95ede074274ccd37cb2014431320a60cd9aa66c0da5fa655ca4b63eaee70f85eb5711f995954d0db0ab36acf9cf036afa9c8d2b17576201cd104bad200d5d4f3f72bdc80d505b16ab269cfab2d599316a1c9f112ad245bc9e00c6578a50cd3de7e7eb4fd949809a4ad1bf7eab29a6af9949a46b655f1dd30e08241d084213d9de6658ad1615429095d5e65d5610893285a31a55278bad1c61d21a4abb31b375f0a21991999102050a564490585346238db3e68d19889f6e9e99ea055c1184566994c6a4e162924a39c2db6538812d536b8d3fd4c547a58c4ba71eff28a50798a03e3bbaf7867b7f0ecf8461398319995853102dbc6b44a485556ea6a38fc608285704bd654f3ed8bb1f4b3aeca560d67aaa975f33dc576268a544dc6b1cdbaf93e9991aaee34f9e8d8e639bedd18101c3688449b91a09809444e4d131059650a93084b1f96a9bd5c50559bb92c3ef916004059968c12babbd9c89ed0cc58fbf2a5bdeecfa962c2427f015e220c88ca8c2a5556b1ef7aa5a2681ead44a010ce282a7ba2dd139981e150454f50d6dd122cd1ab9265f4421bfcd888b5f74eb770ca54e393c7463cb7801f99a3020105726cdd194d94665de305b56e074904cd932401b545f09eff0d6d18a8e864c394b1ca1477cb2c3693ff48ffde22d998f4085e422a3148abe0de11b54ac508350d43a09009f764ab1100280b26db92330e839218f3620c60dddd3d0543a98a6965ca199dd43d30021d70d1a330905b8216d316e96dc516a344a1a1b77b4556a0ada02adbb31bd09c699e19337665ad1b7719214f535a283b75989aef94691088316d8407334d7417e516a43a2006c7c9ec243c00b47306e65e9d2ab9d25be3c4675d0774e2b321b4590366820fe25568733bee9381a68f136b590b8387cd1adbb1164ca3fc2dd6b216ccc35e590b8387cd1adbb1164c16ab7617992a7e9c30e3de80a68f136b590be60b2dbec6ace19ab560b894506f87c66e1b6b590b83c6468fad7d3709ce7a3bceb7e981fe6ee0d4ec4979ae5bee1442725fb7d825018f0b8235c644312a53eb8c2bced7f86ee0b813416f6956db450031e66569f05a67d7f1899562aa7c30a9cda6d70c33222163b72657ec313e454fab6c203a574c30e24c5d704efd17ccb44ec6f42458d17967468008863a54b0c0fc3c5499602459821e27a135c3088038cd984633667a21ef566993b3bcd0620c12488485c3233d4a1c841de797499e33ec3853f6d1d2050c2ba8ea347788bece2f44323569c681b925ad249ac3021e1c06056f0f31337bd2d36706249a227caaccd2117898602871e04cd9a0b2c8b06ed98d34c5820bb0ee3136c7e9cca4c7803acc2ff4f631f06cb9678f0cccacb5778ca122c212230c6e549b5f6a37bf104a13d99e1374b2a051ba65590fdb19590a36e797718018a8b06a35a625dc4446a72a140d7846019542248699826dfa9e2490bca065b5c118456bf33020488439c6bccd33cbce026acf30f47812f817a32c08131148537978d102ffa070868377ef079e9771210cacc00eef6ab4a6c8c841669211a9342844c8a747d1e5d11a38f35c0027c2a247f46873658f4d21cd3880463b315da2804ff7c8d32d8c35b869da069308a0b034503edf9424e0860e34abad5863ee7dddfb790b889928aff01a9f710e9fd917c0ee2ecb888aae36fa009a0fd65e66ae49c03ae88395ee0bb69311cc715916224ac2a577947310ee5ec60ce3b898d5070aefe3f54752d64e4433a8a6c191ee695a9d23ddecc3945dcbf9698b0adb4b94212c7990fd0b2ef86e24a211186b394b4ea4c50c109d593d0605dabc08a18791d06e05a0085a317226a021851d50808c544715c8acc21eea32a4e4d5295499aa99b08326ce9fcaced40c7cddb85b668607291a7c48b7eafecf9b60a86d6a2218644c07eb36ce29260936ca6493b4fbd1341b558c4c546680fb90c0308d5b502ce7dd88165e99320b16341067c868985516fcc81a9635acc8418148ab2c6b7412d6be2a7223b382ee9c4ac614a99a053768a6bd480f2b4d8380fb403d89ce29c13eb867590443a819f4b188e6f8903e402d09cd72882c711e20d70c4629326594fba0154a9295a7595a68b88c949255aa31fc1a8486ed51193194b5b233a578a1cf14e026352d5474118666628ae11a24c28a14b08a2e2f5001c5dd1e9d349948df28463f6b223c7b3a435355564da486abafbbaf5b1c345cb08a33631c6bab9ac0406e8f02546e423d6b0ac0b5b7175a19f21ccb821bc79ee1ae0e73afb64e0d97d9b2227b8e0c628f722d995566d96443144cad2919e53493d227523d137819c81cb9d2d33d9961e46a109d0c8cabcd4d8f9a4ccd647ad434a9b8ae37dc83d1ebe63b0203035aa6b95ef60ddf670d202931e49e3309886f1b9967cdc013547a4fa2e647b577787a8fa95d15e2be0bbda3aba09854c4445784a9387197143d9c317415e70604444575b9219df4b0b2384e1998c9f59dc5dc14c851946b393a194490e3938274cd60aadc91f2b552c663975779054d1160559ca7948193896e623dcfb130f83c04c38976811e34785a20b414346e3e0c71cf2bb0c7705a39d52e066be53eb2ce1c4e447b1d075de31e961a96855116c96313e73e085a8ea2c3bb8c4297d00058cca8034c6629bb7ac81e34020d9ba0aae9cd19a3bd846bb52a80767e36b94748b806bb0db209aad32804c51e5dca8e9952b580cb0d9ac689f0aa7137f870ed43aff116abd315b8113422e86e1ecab04a42149c9961caa31a05ebb3838047f428cbab273954aadbdbdf055c997b5551f646a8871396d1ec46760c9abaefd306002a8331d098a879a6865055b00c782bc2d5f0c1da554630dbbad0c6993b4e332560e01c17460764ae00c474867206610866862018a60ee6203cd9dd01eb810637a612368d69314bd062d436034c32bd40c823d4029853d1950754d520653cf4b79f934d06a85a37db9919eac44c87c944b975709f2a2d423154e69e9d561e56e8946c4395a072f70c5399480f12e59d9161d3e5ac7b11cc3bba32e11d36dcd225002c9bcaf0a09b8a96a58483c9f456610c6217ed1ed9d13640a6084ee165a0c5083de1cdacf00621ef0c4708950e44896a6f3fab2c9e5203eaee75b3dda322900808dd4acebb8aefc8f9390b84714d24d35a03eae60612bdacaac7835d79e2652e6237ac7d7c1a4db7b69e82275e6b5e5553b04a7935cab5c61e94252d684eb739b65937a44282b411cc6d34918aa6dc930363e9493aad8618a89814647454cc4498d55a4698e1165311ea098c11ea944d7c9a3fed2c85dd3bead9cd9651160aa1beba0bf6bb4775b0d99b60788a5eed1c334b63ff630861358d00654346c10f3419ee5e31f0f62608cae86d6e975eba4a86af9bf61c27e93364c574057bc1629aa1f09af78bce5c13d15854bbcab28d09b2f5446a9e6ee53e09dc6030dc2cc22da3d3476d30a89bdcdb2027ada20a6af29255ba22eaddd7f7106fde0f266ce82fc05368af96554b9d91706cb6891da9f4e1a8816c8330d13aab9c0eef86fbcac67d146993315994a30f5e23432688e9291ff539a070a819590c754635f30cf0a0408748cfb19932af042da623ddc206089b12925de1b482a507a7f632d5ed39138e9d0f866daec627044e7a57cac52883a93b6f18dcb78798a20fcb652a4b23dccad8de36df7fa1950a0f773f9ab240603ac6a6a4e8faa8584d2c046043aeda599dab7636eba3cb66d5ce59d781aa5eb553ab76967ff479acda29ad759463b96a67a6a58efbdb8c9df8302557edcc61c1e45ab5b3d3a555dd8edbb7e7a31cc76200fa3c56ed0c3bfa9eed403e1cbea869ff9026f80364597f1f26453aa5cb5a63ddf227e102335bb7d87b5225e7e3aa846f9125bdb12c250e79b0a952cc629a6bb17a5495c2818f0ede48d0dcb294e0d4ddada28a2c85c9c28d3e912c6566e12165deea72d0f00bbfe53c7863695e1c5f794c9997e0ca343a4af318130ba9f74d036f2ccde34d9be79e3bd055715e42e19f06e644306bf3fead23137e893ca92551fefc99f00c07c7df3f4d5df0f14682fe96fee023022dd9bd323399902818d2b2cd74767803a56a50fc7d5fa1c3bd52151c04f35c012d1495c511954d5b2fda043593894c73d13a54a4b08dc2131d214b6655993a61323fe3cf8b8ab49a144081f02a2bd163ca1aa6e5bf61c2890e6326c6823d5085650e885951a325263a8a966ed608126d0816933d39fae8be603bd969740e1cc64ade9dc98a76f7c2698c5b221c9e1453a48fb4af90129ebbc991f6052086ab573a8d5dcd3d8f416885f305160863323e8ec5b71bfa6ecca43ccc9a0008f600dec34043d1060585f16853db58a515e13ee4356902d59a4ec66c27a96a6a866e3ec98dbe0258d17aa84e20cc5a65aa66c20e9af87e225a03d9e4bacd1e28243a01bacdf934a8b86f18ece42e106a4e948f99b7cb1e6c0c60ca9c91a3a1ccbdf8f6a36958333433e9d38cbb2fd82e24aa7bc6d2a6aca125d22aab585ed0a05b506559ba1c8a213ff6aa32a8a809a445c2882a81159ace2950d88a1c0d309aa8492f5315830416d19df03c19d1e920d15908cfe2b4eb85eca3fb1465e1644387a166957c4818223dba6d943d6e8a50cc4468be276f1468498969f4c82b29f7212b86994d7ab56709b48c588c6a74863c61a404cb6de8d993c705608c57b8ba7214a54cba084333552619d2298b2285382a4c9523ccc5db565d35e1044da43f43632495b96ebd3366a2559398c8a8ed6bee53b98593031d4695d12c823d4d55916e478196e4ae0cd9843bc20a0707234c7fe1c5b167b45973008b6e09b48c2418100aa824710a7a73c2ca27dc5d3519c5075963e92083e15da04b01e668582db4933f5762003c2ba3906a9fbe5e53c380d72e03c5f9b59ea9710787b66eb69ba889ee1c87e1519055757ede009352cb292b370b0ce33630cf1ea642d621d54a08eaf0826544b22b0a6edc3b844894d481ce3864ba0034e516d1a5d078749413f03624d56648e48fc37823e742747bb6cc8d3075e7bca8897473955064469245d88cfb5811cd0d341bb093ee5c3443a39207eaf2a40f19e86ade13cb241892520fa263e8a888f1416e9e3d11ca0e4aa3080f90c30b4d8c85598b303c777d56d966e1180ba8550848d4293e6a04dc51134ea963306f18b5431c0113154af97098ec76514221213de9acb6a19730400f47843cd34cf30c54b58c58856ad267093133938ee8d9b2687294c5c8c667d71a4ee57127516e34afdfdb5c883dba861ee1e989b61468f985ee0877e4340205ab0a2744c38d2013e8e6343495a803273033e3333534b244861a5baa90ac086ba93d406d83bb402bb3002d7a76247b84a1b21b3edeb5eb1bce4f5b60a80c6146b794d23243d85f24d12a31b208efa6cdfb9a8dfb88138ab618f79c5ab5bb4ace9247b445cffad4c9eed9b4b4608b09c21bbf035cfa20818c89328d2c66882e4f54b8134bd85215954199526559a42adb2f88552e643f85945974ac1bf7626540aab0a622f38369b83f6d81a1329b2cb51b32548c0f4147b999c9c2cc03414545b9322d197b2e6cdce1a4b93b2aa33059973000b2541dc574f7bafc6939529304b2aaaa734f756d3232ab3165f758597a78eb0b16a3146bca359eeab58852cfaf885216451b2fd16d83bb3aebbaab528875e3de3191060fba397facabaf3ae7b608cd31eedef115235ac90ac62d4c1b953526d939560e3f1af7f1140a6a56a704376fd523512e0f8dc5084252c2be5be79834331ca72bb42cb9ca275ddeca697d5000ac0e65d15099f07158925b325c3d19242b08a223920a0c50ba0cea9844f6369c507781d086ea4482a5bb9b4c331929f8e9ab7b6858a490498fe029965b00ce487996137444749779141908133a52d929560b84bc063983909505c131cf557bd7d48cd856cde963deaa6eb556bf1701ad0d68ae3baac7fd05a03a227cc227ba2b499d9a292d330b9272a030d1e1a6925bf44465993a65b36b82acd126839add2c30d4dbaaee81c3c4cd6c038768c6b69c4818e190cbdd07de83919a2048f4a63a2792996de0b9c07dc4289877e4282d0e5d63aa9cad6977b376b76444202acd3aa7d51efdaa045ed923c25361e599bf6169a0c5b4a2ad7326237b67044d8a6c62da329b5e075533e0ca388367145551b66edc0553d678b67c84425773de30606e6f724c1923e24d2d0a67dc82ec64300c80bbb211204fd9cc805d993dddd687c5ea252060d24f4d622a96a4a88f9a22aebf297e7048ad744bb7b534eba3e351ec745195152da356ebfbf697cfaadde81fd63b787f8b23614b22347dd49965a7d0f5e10e2bb61da7e0cc8aadb96bf58f7028efa1de929ed7e5e3b8bcbe5ffe5c5ebce9d6875747129fd7e572bd7d3b7f2c4fbf7e71d2b5e620a0f26fc7f9fe793b5e3344ef5fe329dfb073ddc2b14ecbd3f45026adcbfb837431ef5d4c68a48875b97f5cbf1fff76f97abd7d3bbf5714f19749fa48e054d42edaf3866af9e7cb75dfb460459eb43218d812c09b476ab5c5843b3e024adf2dcc4205579ed9a32e02549ba5a2c7766624dca5ed654679b265e755a2855f90e901b272b94577c255a4cb5399750b2c94bdc7887033ea34c8b2acda7b08ea814ac5b7716ab55e11f2081b47586928c53e95189371aa0a3fddad4fd7aa883d35aa81bb90666c7c109691e6b57fbf82ea115eee9ee59332c2ecdcaa64d60d382aef9dcc9cb87297906632d43b56edc8da685efb3dbdaa9e7bc5ee59aeacdab9974aabdea8fbc4ee8de02a816e86292b185ad894cd5e0ecf91b102ad4c45d46b5c35ce0b1ad2b3c9816a1295cb662f9bba8c2b461c21895171168fb58c5629f736eee108cd6b1f90034fb91b258f4896ec7ce4396318276cdc616245d6ce51985336298495e1dc3de909b7b461ef4e59b2aa67e5f4a212b51b17fbecf9c818a90a3a04a052eda5ac6258c1a4b06791e729b6dcab8ca8e12087d96459b38e8c35c9c51a3009749540a5c22dea3862eb3dd5f066631466747e98d92426b2c53861e33edd615efc39e2a532d9b01796196cb7b94554b564216cdcad8409c192385245c5efe7dfbfc57bf3b97f31fd7db2d392aaef29d4839d16768cdf06281dad6aa685d8675908c7d875dc0dfe4aa56263549be88fac54eebb055af1ecce33a6adc8526826ce0ebd2a0dd58286112b56812a678e581a7bbeb3c2737e05c7cecaa375cab3ac7a88910ff455384eabf0ad14fb7cfb96ceb314fb2a6906fe7d1c95b1e7000587b3d080b48e1daa766417348f3ddde09636ec9e95e3ca16b433ab5242aba1ebfda87dfd8adec96c29c6dd8506740eeb37862d7bfb62f556151bcec55118f5197a2b7bca18cde8f8637a2bfbba941bf7a931ef3ab9b7b19a446856fb446650f9331b7801c37ce4d9268c2b36ee08d6f4a39c8551696a435819d97b213be12eb7de419b60485905ddcc501151a37853ba50ee993318ea1cb1b3b2d2a211be71a713eedc763973fa2aee94ba6b0839346aec4be59aac9e80671b0f640d83b7aabdba82eec2f7684e395c6b55174696dca77d7cb2728e3cc62363ae3b81a5c1f64a6b87bbd86c07d4de51716da52a61f0353396cf3d8ae9ef93dd94ef1957c9c01a337c08c4578efc0cb52a7d372acd0aae225335a20573e0da9afd3be9ba76192e6d2fb1ac2d115825aa94319999c0cf81aeb45d50c5b072ce771b59e1c2e74556d994c3bf74064671b79f5bc0ee95445435a01d075652185fa38ade318c28b80b69261d86b0696425a69b5a6809d8bd1213c6ea3997b2c0a8ddc4d80de6fe568dac08d8673ae9634de728acdd619ef1a29a9df3cc2b778dc893aa41556ed82b85a92d687ebfbd9cd1aa8ca01a9b0170e47c31541fc1cf2ba59421344b76ef9d2ea916f3c2967bcfc4f46090d9a4bc52d7b8a9df945b442aaa8ebe3532ba6f101887561875f416b5a32a0806ed1c6693f4d43a52d8b84fd918a77e8e22141495c4a866e39686dad37d1a9e92bb4dd474b167e59c1231432bc356afe5cc17fae78bd4f4f7c96ecbf78cac9cecb6fc89232b277b2d7f5ca54adf8d0d8b80abc8444046041662ed720f8c29aa3c9b688c7aa4b3b24c144671d66914e7c8caa7c6563974043cc0521c586174083cc286dd2b9d26b8d64414fcece88ade31acb07872c56195c5bb312a5535a07baa5d42cc8b3a8ce32ac91d23e71ff06854f0cfe9abec296354c7f1cf735c65b3f2ca2b9aab30a77939119687db1ea9cb29d5fa028c28b70a7a812845d2a83860917bf820ab051db183b2b8ab03109eb57677873bb75da3eea17c9a7b4f39cc267b6e1542f63135d530475b65aa8a9e6c329289e0acb84f05dcb9ef3e517abe4e872a6e0d77625cc97daa4aeaea398a5079557be5c23243ee857155556b5069c39ed1547756cfbace69cbc8dfcfbf7f3fafcbe7fdfcc7c7b13cfd5a8e77c7a6f589b6764d4cf144fbbd2e9f972de915ff76f9977f5c7f2c4f5897fbe3fc7379fab5dc1fb7eb5fc77d79b258978ff3fd9da8ba83866cfb38df1ffffad2d9fddcf3117eafcbc7f5fcba3cfd7a816ecdbfa0b2a75fcbfdf3db17b708e5badc3e2fcb13d7e5f67e3fc42d8af16e5894345242babf26d60517a2a790ee9aace9758638ca2dd35131a92edd0b5ed9111d1d6844f58a9d4d531243a78f219fd7e5c7f9e77d79fa4292de31c4ebeab00bcfeb723fcef7eb6579c2babc1e7fbfeb69d425ec30a0035988764dcdefd70557f7039f0e9a81ae7a1c6bc3461f49870349ece97a34f248a0aaa647d3f9e5288d22516e268f72677b21e8d9b4315646623c4a0cb0f6900512943b1bbf60c7d9695e9ee67856f674b095a5f8fd7b5dee6fe7dbb13cfd5a3ebf9347d7489833bddb32d8b62e9fdfff111f6a79bdfee08db6d7eb8fcb3f3854dbfdedfdeb43deaaae913073589425b3f2d8586bd92d5fe9bb3baa06edea8c9a3a36d68a1de1699005cc2abce7b9ed1d10dd5e66198182851f272ddfdfff8a7ee2fb3ba4d3fd34485f7ebda9b93d9f38f39b9fc737352f9fd7e5ed78fff3edb142a5fb8ff7b132e9f7ea64309de4dfe3e3af4b25f8393de85a40fc756bcfda29f9c5a754f1fcfbf7ba7c9cffcc8ae69e02a7cc77ff632eb8a7c028e294b1e2f9f7ba3c6ee7bf8f8febbe75e9d7727f5cbfffe3fc389627aecbc7f971dcb3106df7b7ebed91c1e81550f8a029b0040b5b97fbe3fafdfbf1ba3c3d6e9fc7eff59789395b7c6907d00383bb049765a74958b5383dffbea8745f537710142b7d6a4243fc2a3926e5602a330db783f7b7ebedf1df7f2e4f58971fe7fb3ff9a5ecebf9e37eacf9decfe777ccd3873ed5f3dfcfb7c7f2c41d809c1a779945e7ba7c3bfffcefc7fff8f4ac8bdfeb723bfeb87eb63365d7dbfb9fef97ab8ce1ff3f91a8f4f4ebe5a43d322bb2cdbdc8741821496b49d09402dd35813e8a165ca67e5e973f7efeb3ffa3763549e7db3e0321d4a1999c10656cb8d6316fdc261ee47c9a9d384a3923cc3b9d9d333bd59277e44c10162f31aab10b56dd916d231afc28834eef54c4d0544586ebcd405465a79c07d9edf6b97a58c05dfe5e973f8eafd7dbd10da0edfcf571dc44df147bc173df780b2b73ee4cab738cbc47899aee8239d92704179029150da5efabd1ebe4596ed3e3652c7b5e97bfde2fafcbd3f2f2719c2fc7ebf27b5dde8ef3df3f83cc14cbd3afe5fcedfb3ddb584f7cd1ce764ca3aca7c3b46ab74cf3f788a0cdab72dd6e1c3f67823e7dd14f9caa4c32275ef882904d15bb50a2e0eb66a32e3dff5e97fbe3fcf1b13c7db1dc5d0cff4a869266b45aeea332e13dc5a9724facde4aae28f77fbd63e9795dce7f5cff3e96a72f0990e2ed429ddd57f43e2d7842f061d7aa1d296356e5a423b96e36aac6ed2b40c192d11563a9553b4685ae004a9c5cb5dda823bb79ecdd55c188bf45d2861e44b9efebdc1d99e4dfb7ebe6dee3ce7e2db7cfcbe5cb1b34dd0b3e1b199e91c340aed8d9a298530d038bf78cb48af26821ae976aa37c79bfdc3eef6fae94ecd31027cd110642622a1362a682005d67bb6799899c523eafcb7179fde7e3fadd17bda2141a33b7211ab662671781a0750fa2c2d6eb0bd5e3684f79f6f3babc7edeee3e55cc108debd815ec004455962985427c0b5bc356677a577a50d31183d68e32deee2f7ff19e3904b88f4d8d923e35e306619a5c30854232c1321b25dafbdc526988488062cf7e66c30e043b0925469a4cadd801bf95a67c4266a9f73ed5d8852c08ad20685d24de0639e1930ea35960404fc899d19968a759c5f3efdfebf2f2717df92b31dac5afe5e37af9f3b80d5899ab93046b021c9abad6e5c7dbf5e3e86c75b34d7cf328c84c4e57124543b8c9e0785eefcc791bb92379d2a287891eebbd8d93bbbd3bbdb2e8b633d7f679ff3c7fbcf863c07a3fbfbf426fcb7f1eb7eb3968cf5d12fe52673bde05f16b021c3eb83dff7ed7d00efd5aeec7e57ebd6dafd7cf3f1ea7eb93e22f7d2f3a2c2d8fdbe7429f9e57db414cbe2dd3839bf5ebf9e36eed9a1afd2bcca51fc7f9afedfef9fdfbc74fbb5b88afb7ebf7efc7ebf6713dbf1e6458b3b647f32f3cceeded7a7b6c7714c4a75631f5fdc43d576deedda57346f2ef75b97e3f2ecbd3975fcbfb7fe942af9857fe512fdbf905d8fa6b6a53015b4fbe9e5f86af5f478b21a5e3f5e54ccde19706b6978fe37c2bd7f8f2f9f1b12e5fdf6ff7c73f1fb7eb5fc7bf02a38e3bba585fffd866e265fbe36b1e7d80757ea9a5ff630ec135fd1b3027fed196b8c3f83fbbecd76de7c7e3b86d625e7d3ffe3e6eef8f9fcbd3f2e3fc78795bd6e5ed38bf7ebc5f8ee569f98fb7e3743b5eaeb7d7d3f5ebe9f17634363d77babfbf1ea7f7fbe9727d9c1ed7d31fc7e971fbbc3f8ed7a7d33f2e6b94d65386a5dfe374bebc9eee8ff3c7c7e9e5f3763b2e8fd3f9e3e3743bceaf27c3e9bf9cdedeff7c3b6ea7c7dbf9727abc1d3f4fafefaffbb22ec7dfefafc7e5e5589e7e2dc74bfc34deada475793d1ee7f78fe569d9e12fe7dfb7a0bad62eff3d86f10d02b636bd6e3afe38b62a348e0ed839977579793b5efeba2f4f5f967f1ec7e9f1767e9c1e6fc7e9e5e3fcedfbe9fd7efafaf9f1f1f3f4f271bd1fafa7f3edfa79793d5d2fc7e9c7fbed385d2f1f3fd7d3e3ed38dddeff7c7b9c7e9c7f9e6ed7cfcbebbeaccb3f8fc7e9fd713ffde771bb9e7ebc3fde4e972b8de627be7e5c7fbc5ffe5c4fe7cbebe9e5faedfbf9769cde1fa71fef8fb7d3f9743f5eae97d7d3b7e371dcf6e5795d5ece9f23781a2cfffb38be9f8ebf8fdbcfebe5f042f0f8fbb8fd3cbd9d2fafebe9faf938b5b79a4eb569cdef71bb5ebfada7f7cbfdfdf5389d2fafa7ebe7e3fefe7aaca71f6fef1fc7e9fd717a395f4edfae7f1ffbb22efffa7e7fb95e2ec7cbe3f4783b4ef7cfefdf3f7e9eee22e8f2e9e7f5f3f4b87ebebc9dbe5d1fd7dbfd74bd9d7ebcdf0ecb3cfbd7e5fae3f4e3edfc383dde8ed31fb7f35fc7e9f57adc4f3fde8ecbe96c49ff19a7f7fbe9f3f2fde3f3cf3f8fd77d5997ff783b4edfce7f1db7ff7a3f7d3b5f3ecf1fa7f3e5f5f4717d397f9c5eaeafc7fdf472fd769cbebedfee8fff76ba3f6e9f2f8fcfdbf9e374bebc9e8e8fe3e5717b7f397f9c6ec7f7f3fbedf47e3ffdb8defe3a7dbdde4ee7d3c7fbcb71b91fafa7c7f1f276797f793f5ff6e5f9f7f33a7e61e298eafe8494bf1fb797e3f2589e0cbf7f0f');

INSERT INTO public.room_progress VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', NULL, 2, '5 2', NULL);

INSERT INTO public.room_results VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', DEFAULT, '{"verdict": "watch", "borrowed": null, "headline": "The record of the front side is not to be trusted: Running, inrush and stall current all read 20 % higher than they did.", "openWarnings": [{"id": "019d1b6c-ac00-7f58-8600-795dac91df98", "kind": "sensor-doubt", "side": "front", "checks": ["See that the clamp is fully closed around one wire only, the right way round.", "Set its zero with no current flowing, and compare it with a second meter."], "pattern": null, "cautions": ["Keep everyone, and every hand, out of the travel of the room, inside and outside, while it can move.", "Disconnect the supply before you touch motors or wiring, and know what the brake does when a motor is unplugged.", "The maker''s manual and local codes come first; structural and electrical repair is work for a licensed technician."], "evidence": {"doubt": "scale", "detail": "Running, inrush and stall current all read 20 % higher than they did."}, "headline": "The record of the front side is not to be trusted: Running, inrush and stall current all read 20 % higher than they did.", "position": null, "severity": "watch", "direction": null, "openedAtMs": 1774281600000, "clearedAtMs": null, "firstStrokeId": "019d1b6c-ac00-76fb-994c-bf5e7e016ac6", "latestStrokeId": "019d2093-0800-728d-8ebe-66070e7402a5"}], "usableStrokes": {"extend": 12, "retract": 12}}', '[{"side": "front", "limits": {"lower": 7.455306242839377, "upper": 9.181480069361937, "centre": 8.27349658122969}, "measure": "runningAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": 7.633237179422625, "upper": 9.400608471971985, "centre": 8.470954733526314}, "measure": "runningAmpsP90", "direction": "extend"}, {"side": "front", "limits": {"lower": 19.162222465232723, "upper": 34.119005206101434, "centre": 25.56943425365038}, "measure": "inrushAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": 12.778502162266705, "upper": 22.555257896482328, "centre": 16.97711435435017}, "measure": "endStopAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": 8.706143185384859, "upper": 10.557691570152322, "centre": 9.587323636806927}, "measure": "durationS", "direction": "extend"}, {"side": "front", "limits": {"lower": 84.4436641234874, "upper": 109.62380645122657, "centre": 96.21349121565837}, "measure": "chargeAs", "direction": "extend"}, {"side": "front", "limits": {"lower": 1063.4813361467536, "upper": 1380.6038643604431, "centre": 1211.7121945245146}, "measure": "energyJ", "direction": "extend"}, {"side": "front", "limits": {"lower": 0.46209270899445914, "upper": 0.5499845856915312, "centre": 0.5060386473429952}, "measure": "share", "direction": "extend"}, {"side": "front", "limits": {"lower": -0.49998514449646725, "upper": 0.49998514449646725, "centre": 0}, "measure": "lagS", "direction": "extend"}, {"side": "front", "limits": {"lower": 0.0874514361353721, "upper": 0.2149786530460735, "centre": 0.13711379196611484}, "measure": "roughness", "direction": "extend"}, {"side": "front", "limits": {"lower": 0.1914717047955244, "upper": 0.6349905222720134, "centre": 0.34868713458976774}, "measure": "spreadAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": -0.10298819185462657, "upper": 0.1035466028440237, "centre": 0.0002792054946985697}, "measure": "slope", "direction": "extend"}, {"side": "front", "limits": {"lower": -0.1032738776369093, "upper": 0.10312285910877238, "centre": -0.00007550926406846292}, "measure": "bulge", "direction": "extend"}, {"side": "front", "limits": {"lower": 0.056994271214375676, "upper": 0.3240420754208959, "centre": 0.13589901372492635}, "measure": "rippleAmps", "direction": "extend"}, {"side": "front", "limits": {"lower": 7.535145135996236, "upper": 9.146993729939805, "centre": 8.302043442017391}, "measure": "runningAmps", "direction": "retract"}, {"side": "front", "limits": {"lower": 7.714981535423342, "upper": 9.365299069556492, "centre": 8.500182903640706}, "measure": "runningAmpsP90", "direction": "retract"}, {"side": "front", "limits": {"lower": 19.155274719275038, "upper": 33.97032481711803, "centre": 25.509035735889793}, "measure": "inrushAmps", "direction": "retract"}, {"side": "front", "limits": {"lower": 12.76616637297711, "upper": 22.442065301075772, "centre": 16.92628545744015}, "measure": "endStopAmps", "direction": "retract"}, {"side": "front", "limits": {"lower": 8.756686314284973, "upper": 10.513958842350554, "centre": 9.595177929760686}, "measure": "durationS", "direction": "retract"}, {"side": "front", "limits": {"lower": 85.33810422255094, "upper": 109.33932119303135, "centre": 96.59611994067816}, "measure": "chargeAs", "direction": "retract"}, {"side": "front", "limits": {"lower": 1074.7492060550508, "upper": 1377.0242788161754, "centre": 1216.5343194403572}, "measure": "energyJ", "direction": "retract"}, {"side": "front", "limits": {"lower": 0.4627697746652339, "upper": 0.5493075200207572, "centre": 0.5060386473429955}, "measure": "share", "direction": "retract"}, {"side": "front", "limits": {"lower": -0.4880924631413305, "upper": 0.4880924631413305, "centre": 0}, "measure": "lagS", "direction": "retract"}, {"side": "front", "limits": {"lower": 0.08903742759951412, "upper": 0.21315177253072995, "centre": 0.13776242417442056}, "measure": "roughness", "direction": "retract"}, {"side": "front", "limits": {"lower": 0.19454539238561344, "upper": 0.6319038779439131, "centre": 0.35061943455060984}, "measure": "spreadAmps", "direction": "retract"}, {"side": "front", "limits": {"lower": -0.10113628683839701, "upper": 0.10065897109999766, "centre": -0.0002386578691996718}, "measure": "slope", "direction": "retract"}, {"side": "front", "limits": {"lower": -0.10087034721718258, "upper": 0.10078417425834602, "centre": -0.00004308647941827778}, "measure": "bulge", "direction": "retract"}, {"side": "front", "limits": {"lower": 0.057646911675408266, "upper": 0.32295906436475674, "centre": 0.1364462995401767}, "measure": "rippleAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": 7.332778837591784, "upper": 8.918839167741883, "centre": 8.087018925729208}, "measure": "runningAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": 7.512064383743173, "upper": 9.136903695070554, "centre": 8.284745549830175}, "measure": "runningAmpsP90", "direction": "extend"}, {"side": "rear", "limits": {"lower": 18.85984036396218, "upper": 32.62436066419813, "centre": 24.805044529351363}, "measure": "inrushAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": 12.617231678928913, "upper": 21.49444203292161, "centre": 16.468161856706406}, "measure": "endStopAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": 8.755660207245864, "upper": 10.503171725490205, "centre": 9.589692525140963}, "measure": "durationS", "direction": "extend"}, {"side": "rear", "limits": {"lower": 83.11438868586882, "upper": 106.33101494074529, "centre": 94.00870866652744}, "measure": "chargeAs", "direction": "extend"}, {"side": "rear", "limits": {"lower": 1046.7431561580809, "upper": 1339.1336111520966, "centre": 1183.9463428106503}, "measure": "energyJ", "direction": "extend"}, {"side": "rear", "limits": {"lower": 0.4480121011500806, "upper": 0.5359450923262026, "centre": 0.4919785967381416}, "measure": "share", "direction": "extend"}, {"side": "rear", "limits": {"lower": -0.4767718923751258, "upper": 0.4767718923751258, "centre": 0}, "measure": "lagS", "direction": "extend"}, {"side": "rear", "limits": {"lower": 0.08981716054920805, "upper": 0.20967398346672617, "centre": 0.1372309069999282}, "measure": "roughness", "direction": "extend"}, {"side": "rear", "limits": {"lower": 0.18989975833297718, "upper": 0.6796098630218949, "centre": 0.35924608383191253}, "measure": "spreadAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": -0.09706002803666419, "upper": 0.09739923335339831, "centre": 0.0001696026583670638}, "measure": "slope", "direction": "extend"}, {"side": "rear", "limits": {"lower": -0.09704266492301286, "upper": 0.09727011149486128, "centre": 0.00011372328592421143}, "measure": "bulge", "direction": "extend"}, {"side": "rear", "limits": {"lower": 0.0616300174187765, "upper": 0.3065259481180363, "centre": 0.13744526009223293}, "measure": "rippleAmps", "direction": "extend"}, {"side": "rear", "limits": {"lower": 7.406636378495458, "upper": 8.884913304788277, "centre": 8.112171232353466}, "measure": "runningAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": 7.587727732492903, "upper": 9.102148348915117, "centre": 8.310512827276527}, "measure": "runningAmpsP90", "direction": "retract"}, {"side": "rear", "limits": {"lower": 19.101652892816727, "upper": 32.50070607039985, "centre": 24.916203686120394}, "measure": "inrushAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": 12.687992484208044, "upper": 21.530693591330778, "centre": 16.52819646744893}, "measure": "endStopAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": 8.805231961126136, "upper": 10.459372902534014, "centre": 9.596728847619335}, "measure": "durationS", "direction": "retract"}, {"side": "rear", "limits": {"lower": 83.97543405645153, "upper": 106.05205682542041, "centre": 94.37037408262267}, "measure": "chargeAs", "direction": "retract"}, {"side": "rear", "limits": {"lower": 1057.5884962535122, "upper": 1335.625213150438, "centre": 1188.5040432131682}, "measure": "energyJ", "direction": "retract"}, {"side": "rear", "limits": {"lower": 0.4486864939951358, "upper": 0.5352706504910489, "centre": 0.4919785722430924}, "measure": "share", "direction": "retract"}, {"side": "rear", "limits": {"lower": -0.4647370454605465, "upper": 0.4647370454605465, "centre": 0}, "measure": "lagS", "direction": "retract"}, {"side": "rear", "limits": {"lower": 0.09144811167786611, "upper": 0.20764749097209104, "centre": 0.13780047512270951}, "measure": "roughness", "direction": "retract"}, {"side": "rear", "limits": {"lower": 0.19582017121867096, "upper": 0.6494118793835705, "centre": 0.3566061488706128}, "measure": "spreadAmps", "direction": "retract"}, {"side": "rear", "limits": {"lower": -0.09508253766011737, "upper": 0.09451486787512134, "centre": -0.00028383489249801875}, "measure": "slope", "direction": "retract"}, {"side": "rear", "limits": {"lower": -0.09480990789029288, "upper": 0.09469009823781084, "centre": -0.000059904826241019235}, "measure": "bulge", "direction": "retract"}, {"side": "rear", "limits": {"lower": 0.06191932001546974, "upper": 0.3069723982257278, "centre": 0.13786777056895877}, "measure": "rippleAmps", "direction": "retract"}]');

INSERT INTO public.rooms VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-29a0-74b3-8da5-2fb16d44858e', 'Den', 'in-wall', '{front,rear}', 0.9, NULL, NULL, NULL, 12, 'extend', '2026-11-26 06:40:04.186465+00', '2026-11-26 06:40:04.186465+00', NULL);

INSERT INTO public.rooms_to_tell VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '2026-11-26 06:40:07.166471+00', '2026-11-26 06:41:07.166471+00');

INSERT INTO public.services VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2beb-75c5-b171-28bc829d5045', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'cleaned', '2026-03-05 04:00:00+00', NULL, 'Soap and water.', '01a21695-20f0-7786-803f-d7c3941abca0', '2026-11-26 06:40:04.568367+00', '2026-11-26 06:40:04.568367+00');

INSERT INTO public.sessions VALUES ('01a21695-20e4-7395-899a-996e43f97835', '\x0f1ad2f6ef15da7cba9ff20d346ca9280b1dc827e87deaea5850c9bda1e7a3ac', '01a21695-20f0-7786-803f-d7c3941abca0', '2026-11-26 06:40:03.714525+00', '2026-11-26 06:40:03.714525+00', '2026-12-26 06:40:03.701+00', '01a21695-2875-77f5-8e12-3f6513ba53ed');
INSERT INTO public.sessions VALUES ('01a21695-20e4-7395-899a-996e43f97835', '\xb8f8195ef481e5dc85a3b24ae02da787850aae4915eedccadf55c20385a91f02', '01a21695-20f0-7786-803f-d7c3941abca0', '2026-11-26 06:40:07.504011+00', '2026-11-26 06:40:07.504011+00', '2026-12-26 06:40:07.502+00', '01a21695-374e-7085-8f47-19eaed170301');

INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019caa20-c400-7505-88d6-07e98fd90144', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 0', 'extend', '2026-03-01 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.1374999999982, "profile": [null, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, null], "chargeAs": 98.491, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 17.009999999999998, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-01 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019caf47-2000-7695-a72f-1bd7cf4a10d0', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 1', 'retract', '2026-03-02 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.7624999999982, "profile": [null, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, null], "chargeAs": 98.541, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-02 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cb46d-7c00-71c6-a3db-61ee4932b1a0', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 2', 'extend', '2026-03-03 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.5124999999982, "profile": [null, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, null], "chargeAs": 98.44099999999999, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-03 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cb993-d800-767b-bf55-2b1a375ed580', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 3', 'retract', '2026-03-04 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.4499999999982, "profile": [null, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, null], "chargeAs": 98.516, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.48, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-04 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cbeba-3400-72c2-bdbb-2d66eb947dc1', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 4', 'extend', '2026-03-05 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.4499999999991, "profile": [null, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, null], "chargeAs": 96.11600000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717816, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.8249999999982, "profile": [null, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, null], "chargeAs": 98.46599999999998, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717797, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-05 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cc3e0-9000-74ca-bad2-2f5b3185ab84', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 5', 'retract', '2026-03-06 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.1374999999982, "profile": [null, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, null], "chargeAs": 98.491, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 17.009999999999998, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-06 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cc906-ec00-7242-8a03-b6a23bb483a1', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 6', 'extend', '2026-03-07 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.7624999999982, "profile": [null, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, null], "chargeAs": 98.541, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-07 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cce2d-4800-7264-a0da-57eeeffed38f', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 7', 'retract', '2026-03-08 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.5124999999982, "profile": [null, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, null], "chargeAs": 98.44099999999999, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-08 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cd353-a400-76c5-9165-3102517452be', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 8', 'extend', '2026-03-09 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.4499999999982, "profile": [null, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, null], "chargeAs": 98.516, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.48, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-09 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cd87a-0000-73ce-9c67-b8691c15d166', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 9', 'retract', '2026-03-10 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.4499999999991, "profile": [null, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, null], "chargeAs": 96.11600000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717816, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.8249999999982, "profile": [null, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, null], "chargeAs": 98.46599999999998, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717797, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-10 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cdda0-5c00-7179-ab78-f8fcc43ce7a8', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 10', 'extend', '2026-03-11 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.1374999999982, "profile": [null, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, null], "chargeAs": 98.491, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 17.009999999999998, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-11 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019ce2c6-b800-71b0-8ee2-3b96d39668e0', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 11', 'retract', '2026-03-12 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.7624999999982, "profile": [null, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, null], "chargeAs": 98.541, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-12 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019ce7ed-1400-7025-8127-57f652f41902', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 12', 'extend', '2026-03-13 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.5124999999982, "profile": [null, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, null], "chargeAs": 98.44099999999999, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-13 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019ced13-7000-77a2-9095-8ba9b23435b7', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 13', 'retract', '2026-03-14 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.4499999999982, "profile": [null, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, null], "chargeAs": 98.516, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.48, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-14 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cf239-cc00-73ff-84ea-2cfd8f37736b', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 14', 'extend', '2026-03-15 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.4499999999991, "profile": [null, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, null], "chargeAs": 96.11600000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717816, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.8249999999982, "profile": [null, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, null], "chargeAs": 98.46599999999998, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717797, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-15 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cf760-2800-7477-9a50-776688ef212c', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 15', 'retract', '2026-03-16 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.1374999999982, "profile": [null, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, null], "chargeAs": 98.491, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 17.009999999999998, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-16 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cfc86-8400-73f0-ac8f-b6b06a87d17e', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 16', 'extend', '2026-03-17 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.7624999999982, "profile": [null, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, null], "chargeAs": 98.541, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-17 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d01ac-e000-710f-8e72-a276a4d60c73', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 17', 'retract', '2026-03-18 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.5124999999982, "profile": [null, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, null], "chargeAs": 98.44099999999999, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758814, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-18 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d06d3-3c00-7674-abe4-556b144080cb', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 18', 'extend', '2026-03-19 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1231.4499999999982, "profile": [null, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, 8.330000000000002, 8.48, 8.379999999999999, 8.280000000000001, 8.43, 8.58, 8.23, 8.38, 8.530000000000001, 8.18, null], "chargeAs": 98.516, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687272, "inrushAmps": 25.48, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-19 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d0bf9-9800-750d-919b-e27f6d170d99', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 19', 'retract', '2026-03-20 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.49396135265700475, "front": 0.5060386473429952}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.4499999999991, "profile": [null, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, null], "chargeAs": 96.11600000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717816, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1230.8249999999982, "profile": [null, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.18, 8.530000000000001, 8.38, 8.23, 8.58, 8.43, 8.280000000000001, 8.379999999999999, 8.48, 8.330000000000002, 8.18, 8.530000000000001, 8.38, null], "chargeAs": 98.46599999999998, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.14005493427717797, "inrushAmps": 25.78, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.98, "runningAmps": 8.38, "runningAmpsP90": 8.58}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-20 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d111f-f400-7063-9844-21ca8b1cb1ec', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 20', 'extend', '2026-03-21 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 15, false, NULL, '{"lagS": 0, "share": {"rear": 0.45044052863436124, "front": 0.5495594713656388}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.7624999999982, "profile": [null, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, null], "chargeAs": 96.14100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.61, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1466.1374999999978, "profile": [null, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, null], "chargeAs": 117.29099999999984, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687216, "inrushAmps": 29.98, "offsetAmps": 0.019999999999999997, "endStopAmps": 20.21, "runningAmps": 9.98, "runningAmpsP90": 10.18}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-21 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d1646-5000-7640-bb9e-e157ad41874d', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 21', 'retract', '2026-03-22 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 16, false, NULL, '{"lagS": 0, "share": {"rear": 0.45044052863436124, "front": 0.5495594713656388}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.3874999999982, "profile": [null, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, null], "chargeAs": 96.19100000000006, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1466.7624999999978, "profile": [null, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, null], "chargeAs": 117.34099999999997, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758764, "inrushAmps": 30.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 20.18, "runningAmps": 9.98, "runningAmpsP90": 10.18}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-22 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d1b6c-ac00-76fb-994c-bf5e7e016ac6', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 22', 'extend', '2026-03-23 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 17, false, NULL, '{"lagS": 0, "share": {"rear": 0.45044052863436124, "front": 0.5495594713656388}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1201.1374999999982, "profile": [null, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, 8.18, 8.08, 8.23, 8.38, 8.030000000000001, 8.18, 8.330000000000002, 7.98, 8.129999999999999, 8.280000000000001, null], "chargeAs": 96.09100000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758833, "inrushAmps": 25.18, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1465.5124999999978, "profile": [null, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, 9.98, 9.88, 10.030000000000001, 10.18, 9.830000000000002, 9.98, 10.129999999999999, 9.780000000000001, 9.93, 10.08, null], "chargeAs": 117.24099999999987, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13966207253758764, "inrushAmps": 30.580000000000002, "offsetAmps": 0.019999999999999997, "endStopAmps": 20.18, "runningAmps": 9.98, "runningAmpsP90": 10.18}}, "doubts": [], "status": "done", "direction": "extend", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-23 16:00:00+00', 'sender', false);
INSERT INTO public.strokes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d2093-0800-728d-8ebe-66070e7402a5', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '01a21695-2b32-7446-8936-c4f813c3d28f', '01a21695-2b32-7446-8936-c4f813c3d28f', 'day 23', 'retract', '2026-03-24 16:00:00+00', '2026-11-26 06:40:04.908719+00', '{front,rear}', true, 18, false, NULL, '{"lagS": 0, "share": {"rear": 0.45044052863436124, "front": 0.5495594713656388}, "sides": {"rear": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1202.0749999999991, "profile": [null, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, 8.330000000000002, 8.18, 8.030000000000001, 8.38, 8.23, 8.08, 8.18, 8.280000000000001, 8.129999999999999, 7.98, null], "chargeAs": 96.16600000000005, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687289, "inrushAmps": 24.88, "offsetAmps": 0.019999999999999997, "endStopAmps": 16.580000000000002, "runningAmps": 8.18, "runningAmpsP90": 8.38}, "front": {"dips": [], "phases": {"endS": 11.5, "pauses": [], "startS": 1, "inrushEndS": 1.4, "endStopStartS": 10.7}, "rateHz": 10.000000000000014, "spikes": [], "energyJ": 1466.4499999999978, "profile": [null, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, 10.129999999999999, 9.98, 9.830000000000002, 10.18, 10.030000000000001, 9.88, 9.98, 10.08, 9.93, 9.780000000000001, null], "chargeAs": 117.31599999999997, "durationS": 9.7, "noiseAmps": 0.000000000000000003611114878416624, "roughness": 0.13936669947687216, "inrushAmps": 30.28, "offsetAmps": 0.019999999999999997, "endStopAmps": 20.18, "runningAmps": 9.98, "runningAmpsP90": 10.18}}, "doubts": [], "status": "done", "direction": "retract", "positionBy": "speed", "supplyVolts": 12.5}', '2026-03-24 16:00:00+00', 'sender', false);

INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019caa20-c400-7505-88d6-07e98fd90144', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d1e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001a44a5ffc65294bffffc000000001afe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000002e4069475bf1');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019caf47-2000-7695-a72f-1bd7cf4a10d0', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001399a69ffffe000000000dd20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000006b9ffc65294bff8cbffffc000000001a0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff800100000000000030409c3b6b3a');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cdda0-5c00-7179-ab78-f8fcc43ce7a8', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d1e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001a44a5ffc65294bffffc000000001afe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000003140f749013c');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019ce2c6-b800-71b0-8ee2-3b96d39668e0', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001399a69ffffe000000000dd20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000006b9ffc65294bff8cbffffc000000001a0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff800100000000000032401e595d08');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019ce7ed-1400-7025-8127-57f652f41902', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001411fffe3a7ffff80000000033d807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe00000000067d294bff8ca52fffff0000000006ab8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff80010000000000002e400004704b');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019ced13-7000-77a2-9095-8ba9b23435b7', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000135da69ffffe000000000d47f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001a94bff8ca5297ff1fffff00000000066f8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff8001000000000000304065058fef');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cf239-cc00-73ff-84ea-2cfd8f37736b', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000013d5a7fff8fffff8000000003338007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001814a5297ff194bffffc000000001a5e318c400472656172027800000204020aa318c6318c63ffffe00000000135da7fff8fffff80000000031f8007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001774a5297ff194bffffc0000000019be318c400100000000000000f03f0c000001fa010100ff800100000000000031404ef267c1');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cf760-2800-7477-9a50-776688ef212c', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d1e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001a44a5ffc65294bffffc000000001afe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000003240341a2c17');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cfc86-8400-73f0-ac8f-b6b06a87d17e', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001399a69ffffe000000000dd20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000006b9ffc65294bff8cbffffc000000001a0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff80010000000000002e4043042aee');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d01ac-e000-710f-8e72-a276a4d60c73', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001411fffe3a7ffff80000000033d807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe00000000067d294bff8ca52fffff0000000006ab8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff80010000000000003040df3b319f');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d06d3-3c00-7674-abe4-556b144080cb', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000135da69ffffe000000000d47f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001a94bff8ca5297ff1fffff00000000066f8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff80010000000000003140243494f6');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d0bf9-9800-750d-919b-e27f6d170d99', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000013d5a7fff8fffff8000000003338007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001814a5297ff194bffffc000000001a5e318c400472656172027800000204020aa318c6318c63ffffe00000000135da7fff8fffff80000000031f8007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001774a5297ff194bffffc0000000019be318c400100000000000000f03f0c000001fa010100ff800100000000000032408da14aea');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cb46d-7c00-71c6-a3db-61ee4932b1a0', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001411fffe3a7ffff80000000033d807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe00000000067d294bff8ca52fffff0000000006ab8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff800100000000000031409e0a2a86');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d111f-f400-7063-9844-21ca8b1cb1ec', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000016e1a69ffffe000000000f9e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001f44a5ffc65294bffffc000000001ffe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000002e4095442d6f');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d1646-5000-7640-bb9e-e157ad41874d', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001759a69ffffe0000000010520001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000007f9ffc65294bff8cbffffc000000001f0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff80010000000000003040659360be');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d1b6c-ac00-76fb-994c-bf5e7e016ac6', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000017d1fffe3a7ffff8000000003dd807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe0000000007bd294bff8ca52fffff0000000007eb8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff800100000000000031408ad0f081');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d2093-0800-728d-8ebe-66070e7402a5', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000171da69ffffe000000000fc7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001f94bff8ca5297ff1fffff0000000007af8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff80010000000000003240edcf9b74');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cb993-d800-767b-bf55-2b1a375ed580', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000135da69ffffe000000000d47f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001a94bff8ca5297ff1fffff00000000066f8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff80010000000000003240e767b9dd');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cbeba-3400-72c2-bdbb-2d66eb947dc1', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000013d5a7fff8fffff8000000003338007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001814a5297ff194bffffc000000001a5e318c400472656172027800000204020aa318c6318c63ffffe00000000135da7fff8fffff80000000031f8007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001774a5297ff194bffffc0000000019be318c400100000000000000f03f0c000001fa010100ff80010000000000002e40d0fc3d0c');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cc3e0-9000-74ca-bad2-2f5b3185ab84', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d1e1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff8000000001a44a5ffc65294bffffc000000001afe318c400472656172027800000204020aa318c6318c63ffffe0000000012a9a69ffffe000000000cce1f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f887ffff80000000019a4a5ffc65294bffffc000000001a5e318c400100000000000000f03f0c000001fa010100ff80010000000000003040b6781a25');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cc906-ec00-7242-8a03-b6a23bb483a1', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001399a69ffffe000000000dd20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe0000000006b9ffc65294bff8cbffffc000000001a0e318c40472656172027800000204020aa318c6318c63ffffe000000001321a69ffffe000000000d820001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e2001ffffe000000000691ffc65294bff8cbffffc00000000196e318c40100000000000000f03f0c000001fa010100ff80010000000000003140dd0a7023');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cce2d-4800-7264-a0da-57eeeffed38f', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe000000001411fffe3a7ffff80000000033d807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe00000000067d294bff8ca52fffff0000000006ab8c6310472656172027800000204020aa318c6318c63ffffe000000001399fffe3a7ffff800000000329807e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e3ffffe000000000655294bff8ca52fffff0000000006838c6310100000000000000f03f0c000001fa010100ff800100000000000032405d5907ad');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cd353-a400-76c5-9165-3102517452be', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe00000000135da69ffffe000000000d47f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff8000000001a94bff8ca5297ff1fffff00000000066f8c63100472656172027800000204020aa318c6318c63ffffe0000000012e5a69ffffe000000000cf7f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f8807ffff80000000019f4bff8ca5297ff1fffff0000000006478c63100100000000000000f03f0c000001fa010100ff80010000000000002e40ba3ace3b');
INSERT INTO public.traces_2026_11 VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019cd87a-0000-73ce-9c67-b8691c15d166', '2026-11-26 06:40:04.908719+00', '\x01020566726f6e740000000000000024407800000204020aa318c6318c63ffffe0000000013d5a7fff8fffff8000000003338007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001814a5297ff194bffffc000000001a5e318c400472656172027800000204020aa318c6318c63ffffe00000000135da7fff8fffff80000000031f8007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007e20001f880007ffff8000000001774a5297ff194bffffc0000000019be318c400100000000000000f03f0c000001fa010100ff800100000000000030400fc37cd8');

INSERT INTO public.verdict_changes VALUES ('01a21695-20e4-7395-899a-996e43f97835', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', '2026-11-26 06:40:07.341827+00', 'learning', 'watch');

INSERT INTO public.warnings VALUES ('01a21695-20e4-7395-899a-996e43f97835', '019d1b6c-ac00-7f58-8600-795dac91df98', '01a21695-2a6e-771d-9fe1-4811e4d69cdb', 'sensor-doubt', 'watch', 'front', NULL, NULL, NULL, '2026-03-23 16:00:00+00', NULL, '019d1b6c-ac00-76fb-994c-bf5e7e016ac6', '019d2093-0800-728d-8ebe-66070e7402a5', 'The record of the front side is not to be trusted: Running, inrush and stall current all read 20 % higher than they did.', '{"doubt": "scale", "detail": "Running, inrush and stall current all read 20 % higher than they did."}', '["See that the clamp is fully closed around one wire only, the right way round.", "Set its zero with no current flowing, and compare it with a second meter."]', '["Keep everyone, and every hand, out of the travel of the room, inside and outside, while it can move.", "Disconnect the supply before you touch motors or wiring, and know what the brake does when a motor is unplugged.", "The maker''s manual and local codes come first; structural and electrical repair is work for a licensed technician."]', NULL, NULL, NULL);

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

ALTER TABLE ONLY public.room_results
    ADD CONSTRAINT room_results_pkey PRIMARY KEY (account_id, room_id);

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

CREATE INDEX coaches_by_concern ON public.coaches USING btree (account_id, concern, name, id);

CREATE INDEX coaches_by_name ON public.coaches USING btree (account_id, name, id);

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

CREATE TRIGGER weigh_coach AFTER UPDATE ON public.room_results FOR EACH ROW WHEN ((old.verdict IS DISTINCT FROM new.verdict)) EXECUTE FUNCTION public.weigh_coach_of_results();

CREATE TRIGGER weigh_coach AFTER INSERT OR DELETE ON public.rooms FOR EACH ROW EXECUTE FUNCTION public.weigh_coach_of_room();

CREATE TRIGGER weigh_coach_at_first AFTER INSERT ON public.room_results FOR EACH ROW EXECUTE FUNCTION public.weigh_coach_of_results();

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

ALTER TABLE ONLY public.room_results
    ADD CONSTRAINT room_results_account_id_room_id_fkey FOREIGN KEY (account_id, room_id) REFERENCES public.rooms(account_id, id) ON DELETE CASCADE;

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

CREATE POLICY by_account ON public.room_results USING (((account_id = ANY (( SELECT public.accounts_in_scope() AS accounts_in_scope)::uuid[])) OR ( SELECT public.spans_accounts() AS spans_accounts) OR (room_id = ANY (( SELECT public.rooms_in_scope() AS rooms_in_scope)::uuid[]))));

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

ALTER TABLE public.room_results ENABLE ROW LEVEL SECURITY;

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
