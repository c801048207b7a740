import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { isRunning } from '../../../server/database/embedded/processes.ts';
import { type ChildService, postmasterPid, servicePid, startChild } from '../../support/childService.ts';
import { sendRequest } from '../../support/request.ts';

/** One history of one data folder, told in order: each test goes on where the one before it ended. */
let dataDir: string;
let running: ChildService;
let url: string;
let token: string;
let names: string[] = [];

const ADMIN = { ADMIN_EMAIL: 'mara@example.com', ADMIN_PASSWORD: 'a long enough secret' };

beforeAll(async () => {
  // Its mode is 0700: Postgres's own user must find its way in.
  dataDir = await mkdtemp(join(tmpdir(), 'slideload-start-'));
});
afterAll(async () => {
  if (running?.child.exitCode === null) running.signalGroup('SIGTERM');
  await running?.exited;
  await rm(dataDir, { recursive: true });
});

async function start(environment: Record<string, string> = {}): Promise<void> {
  running = startChild({ DATA_DIR: join(dataDir, 'below'), ...environment });
  url = await running.ready;
}

async function addCoach(name: string): Promise<void> {
  const made = await sendRequest(url, 'POST', '/coaches', { token, body: { name } });
  expect(made.status, made.text).toBe(201);
  names = [...names, name];
}

async function expectAllThere(): Promise<void> {
  const list = await sendRequest(url, 'GET', '/coaches', { token });
  expect(list.body.items.map((item: { name: string }) => item.name)).toEqual(names);
}

function folder(): string {
  return join(dataDir, 'below');
}

async function expectCleanEnd(): Promise<void> {
  const startedMs = Date.now();
  const postgres = await postmasterPid(folder());
  const code = await running.exited;
  expect(code).toBe(0);
  expect(Date.now() - startedMs, 'ends within 10 s').toBeLessThan(10_000);
  expect(isRunning(postgres)).toBe(false);
  expect(existsSync(join(folder(), 'service.pid'))).toBe(false);
  expect(await readFile(join(folder(), 'postgres.log'), 'utf8')).toMatch(/database system is shut down\n$/);
}

test('the first start makes the first account and says where it serves', async () => {
  await start(ADMIN);
  expect(running.said.out).toMatch(/^ready http:\/\/127\.0\.0\.1:\d+$/m);
  expect((await sendRequest(url, 'GET', '/healthz')).status).toBe(200);
  expect((await sendRequest(url, 'GET', '/readyz')).status).toBe(200);
  const body = { email: ADMIN.ADMIN_EMAIL, password: ADMIN.ADMIN_PASSWORD };
  const signedIn = await sendRequest(url, 'POST', '/session', { body });
  expect(signedIn.body.person.role).toBe('dealer');
  token = signedIn.body.token;
  await addCoach('first');
});

test('a second service on the same data is refused in one line', async () => {
  const second = startChild({ DATA_DIR: folder() }, 'node');
  expect(await second.exited).toBe(1);
  expect(second.said.err).toMatch(/^Another service \(process \d+\) is running on the data folder .*\.\n$/);
});

test('SIGTERM to npm ends all of it in good order, and without a word', async () => {
  running.signal('SIGTERM');
  await expectCleanEnd();
  expect(running.said.err.replaceAll(/^npm .*\n/gm, '')).toBe('');
});

test('a second start finds everything, and the first account as it was', async () => {
  await start({ ...ADMIN, ADMIN_PASSWORD: 'another long secret' });
  await expectAllThere();
  await addCoach('second');
});

test('after the death of every process a start recovers what was acknowledged', async () => {
  process.kill(await postmasterPid(folder()), 'SIGKILL');
  running.signalGroup('SIGKILL');
  await running.exited;
  await start();
  await expectAllThere();
  await addCoach('third');
});

test('after the death of npm alone the service ends in order, and a start at its port waits for that', async () => {
  const before = await servicePid(folder());
  running.signal('SIGKILL');
  const old = running;
  await start({ PORT: new URL(url).port });
  expect(isRunning(before)).toBe(false);
  await old.exited;
  await expectAllThere();
});

test('after the death of the service alone its database is ended in order and started anew', async () => {
  const orphan = await postmasterPid(folder());
  process.kill(await servicePid(folder()), 'SIGKILL');
  await running.exited;
  expect(isRunning(orphan)).toBe(true);
  await start();
  expect(isRunning(orphan)).toBe(false);
  await expectAllThere();
});

test('the database is started again when it dies by itself', async () => {
  const dead = await postmasterPid(folder());
  process.kill(dead, 'SIGKILL');
  const next = async () => ((await postmasterPid(folder())) || dead) !== dead;
  await expect.poll(next).toBe(true);
  const isReady = async () => (await sendRequest(url, 'GET', '/readyz')).status;
  await expect.poll(isReady).toBe(200);
  await expectAllThere();
});

test('Ctrl-C, which a terminal sends to every process, ends all of it in good order', async () => {
  running.signalGroup('SIGINT');
  await expectCleanEnd();
});
