import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { postgresProcessesIn } from '../../../server/database/embedded/processes.ts';
import { type ChildService, postmasterPid, startChild } from '../../support/childService.ts';
import { openFeed } from '../../support/liveFeed.ts';
import { sendRequest } from '../../support/request.ts';
import { newFleet, send, strokeBody } from '../strokes/strokeFixture.ts';
import {
  ACKNOWLEDGED_BEFORE,
  ADMIN,
  askedAt,
  KILLS,
  STROKES_A_KILL,
  signInAsAdmin,
  startLoad,
} from './durabilityFixture.ts';

let dataDir: string;
let service: ChildService;
let url: string;

beforeAll(async () => {
  dataDir = await mkdtemp(join(tmpdir(), 'slideload-durable-'));
  service = startChild({ DATA_DIR: dataDir, ...ADMIN, LOG_LEVEL: 'fatal' }, 'node');
  url = await service.ready;
}, 300_000);
afterAll(async () => {
  service?.child.kill('SIGTERM');
  await service?.exited;
  await rm(dataDir, { recursive: true });
});

/** All of its processes at once, as a machine that runs out of memory or of power does. */
async function killPostgres(): Promise<void> {
  const pids = postgresProcessesIn(join(dataDir, 'postgres'), await postmasterPid(dataDir));
  expect(pids.length).toBeGreaterThan(1);
  for (const pid of pids) {
    try {
      process.kill(pid, 'SIGKILL');
    } catch (error) {
      // One that ended by itself meanwhile, as its connection was closed.
      if (!(error instanceof Error && 'code' in error && error.code === 'ESRCH')) throw error;
    }
  }
}

/** Asks what is answered also without a database; fails with what the service said where it is gone itself. */
async function statusOf(path: string): Promise<number> {
  try {
    return (await sendRequest(url, 'GET', path)).status;
  } catch (cause) {
    const { exitCode, signalCode } = service.child;
    throw new Error(`No answer; ended by ${exitCode ?? signalCode}: ${service.said.err}`, { cause });
  }
}

let recovering: Promise<string> | null = null;

/** Waits for the service to say that it is ready, once for all who ask meanwhile. */
function recovered(): Promise<string> {
  recovering ??= (async () => {
    for (;;) {
      const status = await statusOf('/readyz');
      if (status === 200) return url;
      expect(status).toBe(503);
    }
  })().finally(() => {
    recovering = null;
  });
  return recovering;
}

test(`Postgres is killed ${KILLS} times under load: what was acknowledged is there, once and to the last digit`, {
  timeout: 900_000,
}, async () => {
  const { load, expectAllKept } = await startLoad(url, recovered);
  for (let kill = 1; kill <= KILLS; kill++) {
    load.allow(STROKES_A_KILL);
    await load.reach(load.count + ACKNOWLEDGED_BEFORE);
    await killPostgres();
    expect(await statusOf('/healthz')).toBe(200);
    await load.reach(kill * STROKES_A_KILL);
  }
  await load.finish();
  await expectAllKept(askedAt(url));
  expect(service.child.exitCode).toBeNull();
});

test('a live feed that was open while Postgres was killed goes on', { timeout: 300_000 }, async () => {
  const asked = askedAt(url);
  const fleet = await newFleet(asked, await signInAsAdmin(asked));
  const feed = await openFeed(url, { authorization: `Bearer ${fleet.token}` });
  feed.say({ type: 'watch', roomId: fleet.roomId });
  await feed.next('status');
  await killPostgres();
  await recovered();
  expect((await send(asked, fleet.loggerToken, strokeBody(fleet.roomId, 1))).status).toBe(200);
  expect((await feed.next('stroke')).stroke.key).toBe('day 1');
  feed.close();
});
