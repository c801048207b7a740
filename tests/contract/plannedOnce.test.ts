import { sql } from 'kysely';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { type Database, openDatabase } from '../../server/database/openDatabase.ts';
import { createDatabase } from '../support/databases.ts';

let database: Awaited<ReturnType<typeof createDatabase>>;
let opened: Database;

beforeAll(async () => {
  database = await createDatabase(inject('postgresUrl'));
  opened = openDatabase(database.url, 1, { plansOnce: true });
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

test('a connection whose plans no longer fit the tables is not used again', async () => {
  await thing(1);
  await opened.pool.query('alter table things add column size integer');
  await expect(thing(1)).rejects.toThrow('cached plan');
  expect(await thing(1)).toEqual({ id: 1, name: 'one', size: null });
});

test('within a transaction too, which is taken back', async () => {
  await thing(1);
  await opened.pool.query('alter table things add column weight integer');
  const removing = opened.db.transaction().execute(async (trx) => {
    await sql`delete from things where id = ${2}`.execute(trx);
    await sql`select * from things where id = ${1}`.execute(trx);
  });
  await expect(removing).rejects.toThrow('cached plan');
  expect(await thing(2)).toMatchObject({ id: 2, weight: null });
});

test('of texts without end only some are kept', async () => {
  for (let i = 0; i < 250; i++) await sql`select ${i}::integer + ${sql.lit(i)} as sum`.execute(opened.db);
  expect((await plans()).length).toBeLessThanOrEqual(200);
});
