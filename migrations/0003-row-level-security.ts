import { type Kysely, sql } from 'kysely';

/**
 * The second lock: Postgres itself gives a connection the rows of its scope and no others, also to the tables' owner.
 *
 * A scope is five settings, empty unless somebody enters it (`server/database/rowScope.ts`): `slideload.accounts` are
 * whole accounts; `slideload.visits`, beside `slideload.visit_accounts`, single coaches of others; with
 * `slideload.senders` the same may only be sent strokes for; `slideload.spanning` names a path that must see all.
 * `select protect_by_account('a_new_table')` puts a table under it, and suits itself to the table's columns.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

/** As a sub-select it is asked once for each statement, not for each row. */
const among = (column: string, ids: string) => `${column} = any ((select ${ids}())::uuid[])`;

const PROTECT = `
declare
  columns text[] := array(
    select attname::text from pg_attribute where attrelid = of_table and attnum > 0 and not attisdropped
  );
  visible text := case
    when 'coach_id' = any (columns) then '${among('coach_id', 'coaches_in_scope')}'
    when 'room_id' = any (columns) then '${among('room_id', 'rooms_in_scope')}'
    when 'stroke_id' = any (columns) then format(
      '((select coaches_in_scope()) <> ''{}''
        and exists (select from strokes s where s.account_id = %1$s.account_id and s.id = %1$s.stroke_id))', of_table)
    when of_table = 'coaches'::regclass then '${among('id', 'coaches_in_scope')}'
    else 'false'
  end;
begin
  execute format('alter table %s enable row level security, force row level security', of_table);
  execute format(
    'create policy by_account on %s using (%s = any ((select accounts_in_scope())::uuid[])
      or (select spans_accounts()) or %s)',
    of_table, case when 'account_id' = any (columns) then 'account_id' else 'id' end, visible);
end`;

/** Looks across accounts for one answer, and then sees no more than before. */
const across = (declared: string, look: string, answer: string) => `
declare
  before text := coalesce(current_setting('slideload.spanning', true), '');
  ${declared}
begin
  perform set_config('slideload.spanning', 'function', true);
  ${look};
  perform set_config('slideload.spanning', before, true);
  ${answer};
end`;

const TO_SEND_TO = `(${among('room_id', 'rooms_to_send_to')} or ${among('account_id', 'accounts_to_send_to')})`;

const STATEMENTS = [
  `create function setting_ids(name text) returns uuid[] language sql stable as
    $$ select coalesce(nullif(current_setting(name, true), ''), '{}')::uuid[] $$`,
  `create function spans_accounts() returns boolean language sql stable as
    $$ select coalesce(current_setting('slideload.spanning', true), '') <> '' $$`,
  `create function senders_in_scope() returns uuid[] language sql stable as
    $$ select setting_ids('slideload.senders') $$`,
  `create function accounts_to_send_to() returns uuid[] language sql stable as $$
    select case when senders_in_scope() = '{}' then '{}' else setting_ids('slideload.accounts') end $$`,
  `create function coaches_to_send_to() returns uuid[] language sql stable as $$
    select case when senders_in_scope() = '{}' then '{}' else setting_ids('slideload.visits') end $$`,
  `create function accounts_in_scope() returns uuid[] language sql stable as $$
    select case when senders_in_scope() = '{}' then setting_ids('slideload.accounts') else '{}' end $$`,
  `create function coaches_in_scope() returns uuid[] language sql stable as $$
    select case when senders_in_scope() = '{}' then setting_ids('slideload.visits') else '{}' end $$`,
  // Which rooms there are is asked of the table itself, which shows those of the scope alone.
  `create function rooms_of_visits() returns uuid[] language sql stable as $$
    select array(
      select r.id from unnest(setting_ids('slideload.visit_accounts'), setting_ids('slideload.visits'))
        as v (account_id, coach_id)
      join rooms r on r.account_id = v.account_id and r.coach_id = v.coach_id
    ) $$`,
  `create function rooms_in_scope() returns uuid[] language sql stable as $$
    select case when senders_in_scope() = '{}' then rooms_of_visits() else '{}' end $$`,
  `create function rooms_to_send_to() returns uuid[] language sql stable as $$
    select case when senders_in_scope() = '{}' then '{}' else rooms_of_visits() end $$`,

  `create function protect_by_account(of_table regclass) returns void language plpgsql as $$${PROTECT}$$`,
  `select protect_by_account(name::regclass) from unnest(array[
    'accounts', 'people', 'directory', 'sessions', 'grants', 'invitations', 'coaches', 'rooms', 'loggers', 'services',
    'strokes', 'traces', 'measures', 'room_progress', 'room_checkpoints', 'warnings', 'idempotency_keys'
  ]) name`,
  `select protect_by_account(inhrelid::regclass) from pg_inherits where inhparent = 'traces'::regclass`,

  // Whoever sends finds the rooms to send to and what it sent before, and adds to them.
  `create policy for_senders on rooms for select using (
    ${among('coach_id', 'coaches_to_send_to')} or ${among('account_id', 'accounts_to_send_to')})`,
  `create policy for_senders on strokes for select using (${among('sender_id', 'senders_in_scope')})`,
  `create policy from_senders on strokes for insert with check (
    ${among('sender_id', 'senders_in_scope')} and ${TO_SEND_TO})`,
  // The stroke stands behind its foreign key, and is not there yet for the one statement that stores both.
  `create policy from_senders on traces for insert with check (${among('account_id', 'accounts_to_send_to')}
    or (senders_in_scope() <> '{}' and account_id = any (setting_ids('slideload.visit_accounts'))))`,
  `create policy for_senders on room_progress for select using (${TO_SEND_TO})`,
  `create policy from_senders on room_progress for insert with check (${TO_SEND_TO})`,
  `create policy again_from_senders on room_progress for update using (${TO_SEND_TO})`,
  `create policy for_senders on idempotency_keys using (${among('caller_id', 'senders_in_scope')})`,

  `create function name_of(person uuid) returns text language plpgsql as $$${across(
    'found text;',
    `select p.name into found from directory d join people p on p.account_id = d.account_id and p.id = d.person_id
      where d.person_id = person`,
    'return found',
  )}$$`,
  `create function person_at(address text) returns uuid language plpgsql as $$${across(
    'found uuid;',
    'select d.person_id into found from directory d where d.email = address',
    'return found',
  )}$$`,
  `create function visits_of(person uuid) returns setof grants language plpgsql as $$${across(
    '',
    `return query select * from grants g
      where g.person_id = person and (g.until is null or g.until > now())`,
    'return',
  )}$$`,
  `create function end_visits_of(person uuid) returns void language plpgsql as $$${across(
    '',
    'delete from grants g where g.person_id = person',
    'return',
  )}$$`,
  "comment on function name_of is 'of whoever signs in with that id, in whatever account'",
  "comment on function person_at is 'who signs in with an address, in whatever account'",
  "comment on function visits_of is 'the grants by which a person sees coaches of others now'",
  "comment on function end_visits_of is 'takes back whatever others granted to a person'",
];
