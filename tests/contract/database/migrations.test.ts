import pg from 'pg';
import { afterEach, beforeEach, describe, expect, inject, test } from 'vitest';
import { MIGRATIONS } from '../../../migrations/index.ts';
import { isMigrated, migrate } from '../../../server/database/migrate.ts';
import { type Database, openDatabase } from '../../../server/database/openDatabase.ts';
import { createDatabase } from '../../support/databases.ts';

let database: { url: string; drop(): Promise<void> };
beforeEach(async () => {
  database = await createDatabase(inject('postgresUrl'));
});
afterEach(() => database.drop());

async function on<Result>(work: (opened: Database) => Promise<Result>): Promise<Result> {
  const opened = openDatabase(database.url, 2);
  return work(opened).finally(() => opened.pool.end());
}
const onIsMigrated = () => on(({ db }) => isMigrated(db));

/** Columns, keys and indexes, in words that are the same for the same schema. */
async function schema(): Promise<string[]> {
  const client = new pg.Client(database.url);
  await client.connect();
  const { rows } = await client.query(`
    select table_name || '.' || column_name || ' ' || data_type || ' ' || is_nullable as line
    from information_schema.columns where table_schema = 'public'
    union all select indexdef from pg_indexes where schemaname = 'public'
    union all select conrelid::regclass || ' ' || pg_get_constraintdef(oid) from pg_constraint
      where connamespace = 'public'::regnamespace
    order by 1`);
  await client.end();
  return rows.map((row) => row.line);
}

describe('migrating', () => {
  test('an empty database, and once more, gives one schema', async () => {
    expect(await onIsMigrated()).toBe(false);
    await on(migrate);
    expect(await onIsMigrated()).toBe(true);
    const first = await schema();
    await on(migrate);
    expect(await schema()).toEqual(first);
  });

  test('by twenty at once is done once', async () => {
    await Promise.all(Array.from({ length: 20 }, () => on(migrate)));
    expect(await onIsMigrated()).toBe(true);
    const { rows } = await queryOn('select count(*)::int as n from kysely_migration');
    expect(rows[0].n).toBe(Object.keys(MIGRATIONS).length);
  });

  test('that fails leaves nothing, so that it can be tried again', async () => {
    await queryOn('create table warnings (in_the_way int)');
    await expect(on(migrate)).rejects.toThrow('0001-first-tables');
    expect((await queryOn("select to_regclass('accounts') as t")).rows[0].t).toBeNull();
    await queryOn('drop table warnings');
    await on(migrate);
    expect(await onIsMigrated()).toBe(true);
  });

  test('leaves a newer database alone', async () => {
    await on(migrate);
    await queryOn("insert into kysely_migration values ('9999-later', now()::text)");
    await expect(on(migrate)).rejects.toThrow('newer than this program');
  });

  test('takes the migrations in the order of their names, no two with one number', () => {
    const names = Object.keys(MIGRATIONS);
    expect(names).toEqual([...names].sort());
    const numbers = names.map((name) => /^(\d{4})-[a-z]/.exec(name)?.[1]);
    expect(numbers).not.toContain(undefined);
    expect(new Set(numbers).size).toBe(names.length);
  });
});

/** Asked before an account is known. */
const WITHOUT_ACCOUNT = ['directory', 'sign_in_failures'];

test('every table that grows has the account first in its primary key', async () => {
  await on(migrate);
  const { rows } = await queryOn(`
    select c.relname as name, (
      select a.attname from pg_index i join pg_attribute a on a.attrelid = i.indrelid and a.attnum = i.indkey[0]
      where i.indrelid = c.oid and i.indisprimary
    ) as first
    from pg_class c where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p')
      and c.relname not like 'kysely%'`);
  const wrong = rows.filter(({ name, first }) => {
    if (name === 'accounts') return first !== 'id';
    return !WITHOUT_ACCOUNT.includes(name) && first !== 'account_id';
  });
  expect(wrong).toEqual([]);
  expect(rows.length).toBeGreaterThan(10);
});

async function queryOn(text: string): Promise<pg.QueryResult> {
  const client = new pg.Client(database.url);
  await client.connect();
  return client.query(text).finally(() => client.end());
}
