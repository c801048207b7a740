import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { type ChildOnDatabase, childOnDatabase } from '../../support/childOnDatabase.ts';
import { endedByItself, endWithUs } from '../../support/endWithUs.ts';
import { type Fleet, newFleet } from '../strokes/strokeFixture.ts';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
/** Each death takes a start, and a start some seconds on a busy machine. */
const WITHIN_MS = 240_000;

let service: ChildOnDatabase;
let token: string;
let fleet: Fleet;
let spool: string;

beforeAll(async () => {
  service = await childOnDatabase();
  token = await service.signIn();
}, WITHIN_MS);
afterAll(() => service?.stop());
beforeEach(async () => {
  fleet = await newFleet(service, token);
  spool = await mkdtemp(join(tmpdir(), 'slideload-logger-'));
});
afterEach(() => rm(spool, { recursive: true }));

interface Running {
  readonly child: ChildProcess;
  readonly code: Promise<number | null>;
  readonly said: { out: string; err: string };
  /** Resolves once it said this. */
  heard(what: RegExp): Promise<void>;
}

function start(...words: string[]): Running {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', 'server/demo/logger/main.ts', '--url', service.url, '--spool', spool, ...words],
    {
      cwd: ROOT,
      env: { ...process.env, LOGGER_TOKEN: fleet.loggerToken },
      stdio: ['ignore', 'pipe', 'pipe'],
      detached: true,
    },
  );
  if (child.pid === undefined) throw new Error('The logger cannot be started.');
  const group = child.pid;
  endWithUs({ group });
  const said = { out: '', err: '' };
  child.stdout.on('data', (chunk: Buffer) => {
    said.out += chunk.toString();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    said.err += chunk.toString();
  });
  return {
    child,
    said,
    code: once(child, 'close').then(([code]) => {
      endedByItself(group);
      return code;
    }),
    heard: async (what) => {
      while (!what.test(said.out)) await once(child.stdout, 'data');
    },
  };
}

const SIMULATED = ['--sides', 'front,rear', '--most-wait-s', '0.2'];

async function strokesOfRoom(): Promise<{ id: string; key: string; loggerId: string }[]> {
  const { body } = await service.request('GET', `/rooms/${fleet.roomId}/strokes?limit=500`, { token });
  return body.items;
}

const waiting = async () => (await readdir(spool)).filter((name) => name.endsWith('.json'));

test.each(['json', 'cbor'])('strokes of the simulator are sent in %s, and leave the spool', async (form) => {
  const logger = start('--room', fleet.roomId, '--simulate', '3', '--form', form, ...SIMULATED);
  expect([await logger.code, logger.said.err]).toEqual([0, '']);
  expect(logger.said.out).toMatch(/^3 stored, 0 refused\.$/m);
  expect(await strokesOfRoom()).toHaveLength(3);
  expect(await waiting()).toEqual([]);
});

test('a recording is played, and played twice stored once', async () => {
  const file = join(spool, 'recording.csv');
  await writeFile(file, 't (s),front A\n0,0.02\n0.5,14.8\n1,9.1\n');
  const words = ['--room', fleet.roomId, '--play', file, '--direction', 'extend'];
  for (const outcome of ['stored', 'duplicate']) {
    const logger = start(...words, '--started-at', '2026-05-02T16:20:11Z');
    expect([await logger.code, logger.said.err]).toEqual([0, '']);
    expect(logger.said.out).toContain(`${outcome} recording.csv`);
  }
  expect(await strokesOfRoom()).toHaveLength(1);
});

test('what the service refuses is set aside and said', async () => {
  const logger = start('--room', fleet.coachId, '--simulate', '1', ...SIMULATED);
  expect(await logger.code).toBe(2);
  expect(logger.said.out).toContain('There is no such room.');
  expect(await readdir(join(spool, 'refused'))).toHaveLength(1);
});

test('a token that is none ends it, and the strokes wait', async () => {
  const logger = start('--token', 'sll_nonsense', '--room', fleet.roomId, '--simulate', '2', ...SIMULATED);
  expect(await logger.code).toBe(3);
  expect(await waiting()).toHaveLength(2);
  const live = start('--token', 'sll_nonsense', '--live');
  expect(await live.code).toBe(3);
});

test('words that are wrong are answered with help', async () => {
  const logger = start('--form', 'morse');
  expect(await logger.code).toBe(1);
  expect(logger.said.err).toContain('Usage: logger');
});

test(
  'strokes survive the death of the service and of the logger, and are stored once each',
  async () => {
    await service.kill();
    const first = start('--room', fleet.roomId, '--simulate', '4', ...SIMULATED);
    await first.heard(/No answer/);
    first.child.kill('SIGKILL');
    await first.code;
    expect(await waiting()).toHaveLength(4);
    const second = start('--most-wait-s', '0.2');
    await second.heard(/No answer/);
    await service.start();
    expect(await second.code).toBe(0);
    expect(await strokesOfRoom()).toHaveLength(4);
  },
  WITHIN_MS,
);

test(
  'a stroke sent as it happens goes on after the death of the service',
  async () => {
    const logger = start(
      '--room',
      fleet.roomId,
      '--simulate',
      '1',
      '--live',
      '--form',
      'cbor',
      '--speed',
      '4',
      ...SIMULATED,
    );
    const pieces = 'select from live_strokes where next_seq > 5 and stored_at is null';
    await service.until(pieces);
    await service.kill();
    await logger.heard(/The link was lost/);
    await service.start();
    expect([await logger.code, logger.said.err]).toEqual([0, '']);
    const [stroke, ...more] = await strokesOfRoom();
    expect(more).toEqual([]);
    expect(stroke.loggerId).toBe(fleet.loggerId);
  },
  WITHIN_MS,
);
