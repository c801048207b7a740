import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { type Database, inScope, openDatabase } from '../../../server/database/openDatabase.ts';
import type { RowScope } from '../../../server/database/rowScope.ts';
import { createDatabase } from '../../support/databases.ts';

let database: Awaited<ReturnType<typeof createDatabase>>;
let opened: Database;

beforeAll(async () => {
  database = await createDatabase(inject('postgresUrl'));
  opened = openDatabase(database.url, 2);
});
afterAll(async () => {
  await opened.pool.end();
  await database.drop();
});

const [ONE, OTHER]: RowScope[] = [
  { accounts: ['01900000-0000-7000-8000-000000000001'] },
  { accounts: ['01900000-0000-7000-8000-000000000002'] },
];

interface Row {
  readonly pid: number;
  readonly accounts: string;
}

async function connectionOf(scope: RowScope): Promise<Row> {
  const text = `select pg_backend_pid() as pid, current_setting('slideload.accounts') as accounts`;
  return (await inScope(opened, scope).pool.query<Row>({ text })).rows[0];
}

test('whoever comes back in a scope is given the connection that is in it still', async () => {
  const [one, other] = await Promise.all([connectionOf(ONE), connectionOf(OTHER)]);
  expect(one.pid).not.toBe(other.pid);
  for (const [scope, before] of [
    [ONE, one],
    [ONE, one],
    [OTHER, other],
    [ONE, one],
    [OTHER, other],
  ] as const) {
    expect(await connectionOf(scope)).toEqual(before);
  }
});

test('where that one is in use, another enters the scope', async () => {
  const { pid } = await connectionOf(ONE);
  const held = await inScope(opened, ONE).pool.connect();
  try {
    const meanwhile = await connectionOf(ONE);
    expect(meanwhile.pid).not.toBe(pid);
    expect(meanwhile.accounts).toBe(`{${ONE.accounts?.[0]}}`);
  } finally {
    held.release();
  }
});

test('a burst waits for its connections as long as they come free, longer than for a new one', async () => {
  const asked = Array.from({ length: 14 }, () =>
    inScope(opened, ONE).pool.query({ text: 'select pg_sleep(1)' }),
  );
  await Promise.all(asked);
  expect(opened.pool.waitedFor).toBe(0);
}, 30_000);
