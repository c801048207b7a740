import pg from 'pg';
import { withSettings } from './withSettings.ts';

/** Owns our tables where whoever connects could not be held to row-level security; nobody can sign in as it. */
export const PLAIN_OWNER = 'slideload_owner';
/** Held while it is made, so that several starts at once make it once. The ASCII of "owner". */
const LOCK = 0x6f_77_6e_65_72;

/**
 * The URL by which every connection is held to row-level security. Tables force it on their owner, so for a plain user
 * it is the same URL. A superuser, as of the embedded Postgres, is never held to it: then its connections become a
 * plain role, made here, which takes over all that is ours. Where that cannot be done it warns, and one lock is left.
 */
export async function plainOwnerUrl(url: string, warn: (message: string) => void): Promise<string> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000 });
  await client.connect();
  try {
    if (!(await bypassesLocks(client))) return url;
    await client.query('begin');
    await client.query('select pg_advisory_xact_lock($1)', [LOCK]);
    await makeOwner(client);
    await client.query('commit');
    return withSettings(url, { role: PLAIN_OWNER });
  } catch (error) {
    if (!(error instanceof pg.DatabaseError) || error.code !== INSUFFICIENT_PRIVILEGE) throw error;
    warn(
      'The database user bypasses row-level security and may not make a role that does not: only the first of the ' +
        'two locks between accounts holds. Connect as a user without SUPERUSER and BYPASSRLS.',
    );
    return url;
  } finally {
    await client.end();
  }
}

const INSUFFICIENT_PRIVILEGE = '42501';

async function bypassesLocks(client: pg.Client): Promise<boolean> {
  const { rows } = await client.query<{ bypasses: boolean }>(
    'select rolsuper or rolbypassrls as bypasses from pg_roles where rolname = current_user',
  );
  return rows[0]?.bypasses === true;
}

/** Makes the role, lets it make what it needs in this database, and gives it what the user made here before. */
async function makeOwner(client: pg.Client): Promise<void> {
  await client.query(`
    do $$
    begin
      if not exists (select from pg_roles where rolname = '${PLAIN_OWNER}') then
        begin
          create role ${PLAIN_OWNER} nologin nosuperuser nobypassrls nocreaterole nocreatedb;
        exception when duplicate_object or unique_violation then null;
        end;
      end if;
      execute format('grant ${PLAIN_OWNER} to %I', current_user);
      execute format('grant create, connect, temporary on database %I to ${PLAIN_OWNER}', current_database());
      execute format('grant all on schema %I to ${PLAIN_OWNER}', current_schema());
    end $$`);
  if (!(await isOurs(client))) return;
  const { rows } = await client.query<{ change: string }>(OURS_TO_GIVE, [PLAIN_OWNER]);
  for (const { change } of rows) await client.query(change);
}

/** Whether migrations of ours ran here: the schema of anybody else's database is left as it is. */
async function isOurs(client: pg.Client): Promise<boolean> {
  const { rows } = await client.query<{ found: boolean }>(
    "select to_regclass('kysely_migration') is not null and to_regclass('room_progress') is not null as found",
  );
  return rows[0]?.found === true;
}

/** Statements that give away what was made before there was such a role: whole schemas of ours, and what the user has in them. */
const OURS_TO_GIVE = `
  with ours as (
    select oid, nspname from pg_namespace where nspname in (current_schema(), 'graphile_worker')
  )
  select format('alter schema %I owner to %I', nspname, $1::text) as change
    from pg_namespace where nspowner = current_user::regrole and nspname = 'graphile_worker'
  union all
  select format('alter %s %s owner to %I', case c.relkind when 'S' then 'sequence' when 'v' then 'view' else 'table' end,
      c.oid::regclass, $1::text)
    from pg_class c join ours on ours.oid = c.relnamespace and c.relowner = current_user::regrole
    where c.relkind in ('r', 'p', 'v', 'S')
      -- A sequence of a column goes with its table.
      and not exists (select from pg_depend d where d.objid = c.oid and d.deptype in ('a', 'i') and c.relkind = 'S')
      and not exists (select from pg_depend d where d.objid = c.oid and d.deptype = 'e')
  union all
  select format('alter routine %s owner to %I', p.oid::regprocedure, $1::text)
    from pg_proc p join ours on ours.oid = p.pronamespace and p.proowner = current_user::regrole
    where not exists (select from pg_depend d where d.objid = p.oid and d.deptype = 'e')
  union all
  select format('alter type %s owner to %I', t.oid::regtype, $1::text)
    from pg_type t join ours on ours.oid = t.typnamespace and t.typowner = current_user::regrole
    where t.typtype in ('c', 'e', 'd') and (t.typrelid = 0 or exists (
      select from pg_class c where c.oid = t.typrelid and c.relkind = 'c'
    )) and not exists (select from pg_depend d where d.objid = t.oid and d.deptype = 'e')`;
