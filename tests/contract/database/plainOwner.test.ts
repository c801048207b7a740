import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { createFirstAccount } from '../../../server/access/people/setUp.ts';
import { migrate } from '../../../server/database/migrate.ts';
import { type Database, inScope, openDatabase } from '../../../server/database/openDatabase.ts';
import { plainOwnerUrl } from '../../../server/database/plainOwnerUrl.ts';
import { prepareQueue } from '../../../server/work/jobs/queue.ts';
import { createDatabase } from '../../support/databases.ts';

let database: { url: string; drop(): Promise<void> };
let warnings: string[];
let roles: string[];
beforeEach(async () => {
  database = await createDatabase(inject('postgresUrl'));
  warnings = [];
  roles = [];
});
afterEach(async () => {
  await database.drop();
  for (const role of roles) await ask(inject('postgresUrl'), `drop role ${role}`);
});

const PERSON = { email: 'mara@example.com', password: 'a long enough secret', name: 'Mara' };

async function ask(url: string, text: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client(url);
  await client.connect();
  return (await client.query(text).finally(() => client.end())).rows;
}

async function on<Result>(url: string, work: (opened: Database) => Promise<Result>): Promise<Result> {
  const opened = openDatabase(url, 2);
  return work(opened).finally(() => opened.pool.end());
}

const prepare = (url: string) =>
  on(url, async (opened) => {
    await migrate(opened);
    await prepareQueue(opened.pool);
    await createFirstAccount(opened, PERSON);
  });

/** How many accounts each scope shows: nobody, somebody else, and whoever spans them. */
const seen = (url: string) =>
  on(url, async (opened) => {
    const count = async (scope: Parameters<typeof inScope>[1]) =>
      (await inScope(opened, scope).db.selectFrom('accounts').select('id').execute()).length;
    return [await count({}), await count({ accounts: [randomUUID()] }), await count({ spanning: 'tidying' })];
  });

/** A user of its own that owns the database, as a provider gives out. */
async function ownedBy(rights: string): Promise<string> {
  const name = `plain_${randomUUID().replaceAll('-', '')}`;
  roles.push(name);
  const url = new URL(database.url);
  await ask(database.url, `create role ${name} login password 'secret' ${rights}`);
  await ask(database.url, `alter database ${url.pathname.slice(1)} owner to ${name}`);
  url.username = name;
  url.password = 'secret';
  return url.href;
}

const warn = (message: string) => warnings.push(message);

test('a superuser becomes a role that is held to the locks', async () => {
  const url = await plainOwnerUrl(database.url, warn);
  await prepare(url);
  expect(await seen(url)).toEqual([0, 0, 1]);
  expect(await seen(await plainOwnerUrl(database.url, warn))).toEqual([0, 0, 1]);
  expect(warnings).toEqual([]);
});

test('options that the address has already stay', async () => {
  const url = await plainOwnerUrl(`${database.url}?options=-c%20work_mem%3D5MB`, warn);
  const [row] = await ask(url, `select current_setting('work_mem') as memory, current_user as user`);
  expect(row).toEqual({ memory: '5MB', user: 'slideload_owner' });
});

test('a database that a superuser made before there was such a role is taken over, by many at once', async () => {
  await prepare(database.url);
  expect(await seen(database.url)).toEqual([1, 1, 1]);
  const urls = await Promise.all(Array.from({ length: 6 }, () => plainOwnerUrl(database.url, warn)));
  await on(urls[0], async (opened) => {
    await migrate(opened);
    await prepareQueue(opened.pool);
  });
  expect(await seen(urls[0])).toEqual([0, 0, 1]);
  const left = await ask(
    database.url,
    `select relname from pg_class where relowner = current_user::regrole
       and relnamespace in ('public'::regnamespace, 'graphile_worker'::regnamespace)`,
  );
  expect(left).toEqual([]);
});

test('tables of others in the same database keep their owner until it is ours', async () => {
  await ask(database.url, 'create table guests (name text)');
  await plainOwnerUrl(database.url, warn);
  expect(
    await ask(
      database.url,
      `select tableowner = current_user as kept from pg_tables where tablename = 'guests'`,
    ),
  ).toEqual([{ kept: true }]);
});

test('a plain user that may make no roles is held to the locks as it is', async () => {
  const url = await ownedBy('');
  expect(await plainOwnerUrl(url, warn)).toBe(url);
  await prepare(url);
  expect(await seen(url)).toEqual([0, 0, 1]);
});

test('a user that bypasses the locks and may make no role is warned of', async () => {
  const url = await ownedBy('bypassrls');
  expect(await plainOwnerUrl(url, warn)).toBe(url);
  expect(warnings).toEqual([expect.stringContaining('bypasses row-level security')]);
});
