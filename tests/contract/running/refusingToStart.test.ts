import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { readConfiguration } from '../../../server/configuration.ts';
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
