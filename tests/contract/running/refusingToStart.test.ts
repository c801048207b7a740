import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, expect, inject, onTestFinished, test } from 'vitest';
import { readConfiguration } from '../../../server/configuration.ts';
import { migrate } from '../../../server/database/migrate.ts';
import { openDatabase } from '../../../server/database/openDatabase.ts';
import { startService } from '../../../server/startService.ts';
import { startChild } from '../../support/childService.ts';
import { createDatabase } from '../../support/databases.ts';

let folder: string;
let database: { url: string; drop(): Promise<void> };
let taken: Server;
let takenPort: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'slideload-refuse-'));
  database = await createDatabase(inject('postgresUrl'), inject('postgresTemplate'));
  taken = createServer();
  await new Promise<void>((done) => taken.listen(0, '127.0.0.1', done));
  const address = taken.address();
  takenPort = typeof address === 'object' ? String(address?.port) : '';
});
afterAll(async () => {
  taken.close();
  await database.drop();
  await rm(folder, { recursive: true });
});

/** What the process says when it refuses: one line, nothing else, and an exit code that is not 0. */
async function refusalOfProcess(environment: Record<string, string>): Promise<string> {
  const child = startChild({ DATA_DIR: join(folder, 'unused'), ...environment }, 'node');
  expect(await child.exited, child.said.out).toBe(1);
  expect(child.said.err.trim().split('\n'), child.said.err).toHaveLength(1);
  expect(child.said.out).not.toContain('ready');
  return child.said.err;
}

/** The same without the process around it: main.ts prints the message of these errors. */
async function refusal(environment: Record<string, string>): Promise<string> {
  const configuration = readConfiguration({ PORT: '0', DATA_DIR: join(folder, 'unused'), ...environment });
  const stopOrError = await startService(configuration, { onTrouble: () => undefined }).catch(
    (error) => error,
  );
  if (typeof stopOrError === 'function') await stopOrError();
  expect(stopOrError.name).toBe('OperatorError');
  expect(stopOrError.message).not.toContain('\n');
  return stopOrError.message;
}

test('a bad variable, by its name', async () => {
  expect(await refusalOfProcess({ PORT: '80a' })).toBe(
    'The environment variable PORT is wrong: must be a number from 0 to 65535.\n',
  );
});

test('a taken port', async () => {
  expect(await refusalOfProcess({ DATABASE_URL: database.url, PORT: takenPort })).toBe(
    `Cannot listen on 127.0.0.1:${takenPort}: another program uses that port.\n`,
  );
});

test('a database that does not let us in', async () => {
  const url = new URL(database.url);
  url.pathname = '/no_such_database';
  expect(await refusal({ DATABASE_URL: url.href })).toMatch(/no_such_database/);
});

test('a database newer than the program', async () => {
  const newer = await createDatabase(inject('postgresUrl'), inject('postgresTemplate'));
  const client = new pg.Client(newer.url);
  await client.connect();
  await client.query("insert into kysely_migration values ('9999-from-the-future', now()::text)");
  await client.end();
  expect(await refusal({ DATABASE_URL: newer.url })).toMatch(/newer than this program.*9999-from-the-future/);
  await newer.drop();
});

test('a database whose user may make nothing in it, until it may', async () => {
  const user = `stranger_${randomUUID().replaceAll('-', '')}`;
  const empty = await createDatabase(inject('postgresUrl'));
  const url = new URL(empty.url);
  const name = url.pathname.slice(1);
  const server = new pg.Client(empty.url);
  await server.connect();
  onTestFinished(async () => {
    await server.query(`drop owned by ${user}`);
    await server.query(`drop role ${user}`).finally(() => server.end());
    await empty.drop();
  });
  await server.query(`create role ${user} login password 'of nobody'`);
  url.username = user;
  url.password = 'of nobody';
  const start = () => refusal({ DATABASE_URL: url.href });
  expect(await start()).toMatch(
    new RegExp(`^The database user ${user} may not make tables in the schema public: `),
  );
  await server.query(`grant create on schema public to ${user}`);
  expect(await start()).toMatch(/ may not make schemas in the database: /);
  await server.query(`grant create on database ${name} to ${user}`);
  const opened = openDatabase(url.href, 2);
  onTestFinished(() => opened.pool.end());
  await migrate(opened);
});

test('a database in whose encoding not every name can be written', async () => {
  const server = new pg.Client(inject('postgresUrl'));
  await server.connect();
  const name = `slideload_test_latin_${randomUUID().replaceAll('-', '')}`;
  onTestFinished(async () => {
    await server.query(`drop database ${name} with (force)`).finally(() => server.end());
  });
  await server.query(
    `create database ${name} template template0 encoding 'LATIN1' locale_provider libc locale 'C'`,
  );
  const url = new URL(inject('postgresUrl'));
  url.pathname = `/${name}`;
  expect(await refusal({ DATABASE_URL: url.href })).toMatch(/LATIN1.* encoding UTF8/);
});

test('data of another version of Postgres', async () => {
  const older = join(folder, 'older');
  await mkdir(join(older, 'postgres'), { recursive: true });
  await writeFile(join(older, 'postgres', 'PG_VERSION'), '12\n');
  expect(await refusal({ DATA_DIR: older })).toMatch(/was written by Postgres 12, and this is Postgres \d+/);
});

test('a data folder that is a file', async () => {
  const file = join(folder, 'file');
  await writeFile(file, '');
  expect(await refusal({ DATA_DIR: join(file, 'below') })).toMatch(/^DATA_DIR .* cannot be made: ENOTDIR/);
});
