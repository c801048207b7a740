import { sql } from 'kysely';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { inTransaction } from '../../../server/database/inTransaction.ts';
import { type Database, inScope, openDatabase } from '../../../server/database/openDatabase.ts';
import { createDatabase } from '../../support/databases.ts';

let database: Awaited<ReturnType<typeof createDatabase>>;
let opened: Database;

beforeAll(async () => {
  database = await createDatabase(inject('postgresUrl'));
  opened = openDatabase(database.url, 1);
  await sql`create table things (id integer primary key, name text)`.execute(opened.db);
  await sql`insert into things values (${1}, ${'one'}), (${2}, ${'two'})`.execute(opened.db);
});
afterAll(async () => {
  await opened.pool.end();
  await database.drop();
});

const thing = async (id: number) =>
  (await sql<object>`select * from things where id = ${id}`.execute(opened.db)).rows[0];
const plans = async () =>
  (await sql<{ statement: string }>`select statement from pg_prepared_statements`.execute(opened.db)).rows;

test('a statement that is asked again with other values is planned once, and answers by its values', async () => {
  expect(await thing(1)).toEqual({ id: 1, name: 'one' });
  expect(await thing(2)).toEqual({ id: 2, name: 'two' });
  expect(
    (await plans()).filter(({ statement }) => statement.startsWith('select * from things')),
  ).toHaveLength(1);
});

test('where somebody has changed a table, the statement is planned anew', async () => {
  await thing(1);
  await thing(1);
  await opened.pool.query('alter table things add column size integer');
  expect(await thing(1)).toEqual({ id: 1, name: 'one', size: null });
});

test('within a transaction, which is taken back and made again', async () => {
  await thing(1);
  await thing(1);
  await opened.pool.query('alter table things add column weight integer');
  const tried: string[] = [];
  await inTransaction(opened.db, async (trx) => {
    tried.push(
      (await sql<{ name: string }>`select name from things where id = ${2}`.execute(trx)).rows[0].name,
    );
    await sql`update things set name = name || ${'!'} where id = ${2}`.execute(trx);
    await sql`select * from things where id = ${1}`.execute(trx);
  });
  expect(tried).toEqual(['two', 'two']);
  expect(await thing(2)).toMatchObject({ name: 'two!', weight: null });
});

test('what Postgres refuses for another reason is not asked again', async () => {
  const again = () => sql`insert into things (id) values (${1})`.execute(opened.db);
  await expect(again()).rejects.toMatchObject({ code: '23505' });
  await expect(again()).rejects.toMatchObject({ code: '23505' });
});

test('scopes of one pool share the plans of a connection', async () => {
  const before = (await plans()).length;
  for (const account of ['0198c6a0-0000-7000-8000-000000000001', '0198c6a0-0000-7000-8000-000000000002']) {
    const { db } = inScope(opened, { accounts: [account] });
    await sql`select name from things where id = ${1} -- of a scope`.execute(db);
    await sql`select name from things where id = ${2} -- of a scope`.execute(db);
  }
  expect((await plans()).filter(({ statement }) => statement.endsWith('-- of a scope'))).toHaveLength(1);
  expect((await plans()).length).toBeGreaterThan(before);
});

test('of texts without end only some are kept', async () => {
  for (let i = 0; i < 500; i++)
    await sql`select ${i % 250}::integer + ${sql.lit(i % 250)} as sum`.execute(opened.db);
  const sums = (await plans()).filter(({ statement }) => statement.endsWith('as sum'));
  expect(sums.length).toBeGreaterThan(100);
  expect(sums.length).toBeLessThanOrEqual(200);
});
