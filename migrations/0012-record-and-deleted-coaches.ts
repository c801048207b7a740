import { type Kysely, sql } from 'kysely';

/**
 * A record of who did what, which is only ever added to; and coaches that were deleted, kept out of everybody's sight
 * for a while so that they can be restored.
 *
 * The acts are noted by triggers: in the transaction of the act, whatever path led to it. Who acts is the setting
 * `slideload.person`, empty where it was no person of the service.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

/** Runs `act`, which may see deleted coaches, and then sees no more than before. */
const withDeleted = (act: string) => `
begin
  perform set_config('slideload.deleted', 'seen', true);
  ${act};
  perform set_config('slideload.deleted', '', true);
end`;

const UNLESS_DELETED = 'deleted_at is null or (select spans_accounts()) or (select sees_deleted())';

/** A trigger that notes `act` for each row, but not for what goes with something else. */
const notes = (table: string, on: string, act: string, about: string, when = 'true') =>
  `create trigger note_${act.replaceAll('-', '_')} after ${on} on ${table} for each row
    when (pg_trigger_depth() = 0 and ${when}) execute function note_act('${act}', ${about})`;

const NOTE_ACT = `
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
end`;

const STATEMENTS = [
  `create table record (
    account_id uuid not null references accounts (id),
    at timestamptz not null default clock_timestamp(),
    id uuid not null default gen_random_uuid(),
    person_id uuid,
    person_name text,
    act text not null,
    thing text not null,
    thing_id uuid,
    coach_id uuid,
    details jsonb not null default '{}',
    primary key (account_id, at, id)
  )`,
  "select protect_by_account('record')",
  `create function refuse_change() returns trigger language plpgsql as $$
    begin raise exception 'The record of who did what is only added to.' using errcode = 'insufficient_privilege'; end $$`,
  `create trigger only_added_to before update or delete or truncate on record
    for each statement execute function refuse_change()`,
  'revoke update, delete, truncate on record from current_user',
  "comment on column record.person_name is 'as it was then'",
  "comment on column record.person_id is 'null: nobody who was signed in'",

  `create function note_act() returns trigger language plpgsql as $$${NOTE_ACT}$$`,
  notes('sessions', 'insert', 'signed-in', "'person_id', ''"),
  notes(
    'sessions',
    'delete',
    'signed-out',
    "'person_id', ''",
    `current_setting('slideload.person', true) <> ''`,
  ),
  notes('people', 'insert', 'person-added', "'none', 'email,name,role'"),
  notes('people', 'update', 'role-changed', "'none', 'email,name,role'", 'old.role <> new.role'),
  notes(
    'people',
    'update',
    'person-joined',
    "'id', 'email,name,role'",
    'old.password_hash is null and new.password_hash is not null',
  ),
  notes(
    'people',
    'update',
    'password-changed',
    "'id', 'email,name'",
    'old.password_hash <> new.password_hash',
  ),
  notes('people', 'delete', 'person-removed', "'none', 'email,name,role'"),
  notes(
    'people',
    'update',
    'settings-changed',
    "'id', 'units,time_zone,locale'",
    '(old.units, old.time_zone, old.locale) is distinct from (new.units, new.time_zone, new.locale)',
  ),
  notes('invitations', 'insert', 'invitation-made', "'none', 'person_id,grant_id'"),
  notes('grants', 'insert', 'grant-given', "'none', 'email,role,until'"),
  notes(
    'grants',
    'update',
    'grant-accepted',
    "'person_id', 'email,role,until'",
    'old.person_id is null and new.person_id is not null',
  ),
  notes('grants', 'delete', 'grant-ended', "'none', 'email,role,until'"),
  notes('personal_tokens', 'insert', 'token-made', "'person_id', 'name,may_change,until'"),
  notes('personal_tokens', 'delete', 'token-ended', "'none', 'name'"),
  notes('accounts', 'update', 'account-changed', "'none', 'name,trace_months'"),
  notes('loggers', 'insert', 'logger-added', "'none', 'name'"),
  notes('loggers', 'delete', 'logger-removed', "'none', 'name'"),
  notes('rooms', 'delete', 'room-removed', "'none', 'name'"),
  notes('strokes', 'delete', 'stroke-removed', "'none', 'key,started_at,room_id'"),
  notes('services', 'insert', 'service-recorded', "'recorded_by', 'kind,at,side,room_id'"),
  notes('services', 'update', 'service-changed', "'none', 'kind,at,side,room_id'"),
  notes('services', 'delete', 'service-removed', "'none', 'kind,at,side,room_id'"),
  notes(
    'warnings',
    'update',
    'warning-acknowledged',
    "'acknowledged_by', 'kind,room_id'",
    `old.acknowledged_at is null and new.acknowledged_at is not null and current_setting('slideload.person', true) <> ''`,
  ),

  `create function note_failure() returns trigger language plpgsql as $$
    begin
      insert into record (account_id, act, thing, thing_id, details)
      select d.account_id, 'sign-in-failed', 'people', d.person_id, jsonb_build_object('email', new.email)
      from directory d where d.email = new.email;
      return null;
    end $$`,
  'create trigger note_failure after insert on sign_in_failures for each row execute function note_failure()',

  'alter table coaches add column deleted_at timestamptz',
  'alter table rooms add column deleted_at timestamptz',
  'create index coaches_deleted on coaches (account_id, deleted_at) where deleted_at is not null',
  "comment on column coaches.deleted_at is 'null: not deleted; else it can be restored for 30 days'",
  "comment on column rooms.deleted_at is 'with its coach'",
  notes(
    'coaches',
    'update',
    'coach-deleted',
    "'none', 'name'",
    'old.deleted_at is null and new.deleted_at is not null',
  ),
  notes(
    'coaches',
    'update',
    'coach-restored',
    "'none', 'name'",
    'old.deleted_at is not null and new.deleted_at is null',
  ),
  notes('coaches', 'delete', 'coach-removed', "'none', 'name'"),
  `create function sees_deleted() returns boolean language sql stable as
    $$ select coalesce(current_setting('slideload.deleted', true), '') <> '' $$`,
  `create policy unless_deleted on coaches as restrictive using (${UNLESS_DELETED}) with check (true)`,
  `create policy unless_deleted on rooms as restrictive using (${UNLESS_DELETED}) with check (true)`,
  // What lists show of a coach without asking for the coach or its room.
  `create policy unless_deleted on warnings as restrictive for select using ((select spans_accounts()) or exists (
    select from rooms r where r.account_id = warnings.account_id and r.id = warnings.room_id))`,
  `create policy unless_deleted on grants as restrictive for select using ((select spans_accounts()) or exists (
    select from coaches c where c.account_id = grants.account_id and c.id = grants.coach_id))`,
  `create function set_coach_deleted(of_account uuid, coach uuid, deleted boolean) returns boolean
    language plpgsql as $$
    declare found_one boolean;
    ${withDeleted(`
      update coaches set deleted_at = case when deleted then now() end
      where account_id = of_account and id = coach and (deleted_at is null) = deleted;
      found_one := found;
      if found_one then
        update rooms set deleted_at = case when deleted then now() end where account_id = of_account and coach_id = coach;
      end if`).replace(/\nend$/, '\n  return found_one;\nend')} $$`,
  `create function deleted_coaches(of_account uuid) returns setof coaches language plpgsql as $$
    ${withDeleted('return query select * from coaches c where c.account_id = of_account and c.deleted_at is not null')} $$`,
  `create or replace function visits_of(person uuid) returns setof grants language plpgsql as $$
    declare before text := coalesce(current_setting('slideload.spanning', true), '');
    begin
      perform set_config('slideload.spanning', 'function', true);
      return query select g.* from grants g join coaches c on c.account_id = g.account_id and c.id = g.coach_id
        where g.person_id = person and (g.until is null or g.until > now()) and c.deleted_at is null;
      perform set_config('slideload.spanning', before, true);
    end $$`,
];
