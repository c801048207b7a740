import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { type ChildService, startChild } from '../../support/childService.ts';
import { createDatabase } from '../../support/databases.ts';
import {
  ACKNOWLEDGED_BEFORE,
  ADMIN,
  askedAt,
  KILLS,
  STROKES_A_KILL,
  startLoad,
} from './durabilityFixture.ts';

let database: Awaited<ReturnType<typeof createDatabase>>;
const started: ChildService[] = [];

beforeAll(async () => {
  database = await createDatabase(inject('postgresUrl'), inject('postgresTemplate'));
});
afterAll(async () => {
  for (const { child, exited } of started) {
    child.kill('SIGKILL');
    await exited;
  }
  await database.drop();
});

/** A process on the one database; any number of them may serve it at once. */
function start(): ChildService {
  const service = startChild({ DATABASE_URL: database.url, ...ADMIN }, 'node');
  started.push(service);
  return service;
}

test(`the service is killed ${KILLS} times under load: what it acknowledged is there, once and to the last digit`, {
  timeout: 900_000,
}, async () => {
  let current = start();
  // Under way while its forerunner still serves, so that the load goes on at once.
  let next = start();
  const { load, expectAllKept } = await startLoad(await current.ready, () => current.ready);
  for (let kill = 1; kill <= KILLS; kill++) {
    await next.ready;
    const dying = current;
    load.allow(STROKES_A_KILL);
    await load.reach(load.count + ACKNOWLEDGED_BEFORE);
    current = next;
    dying.child.kill('SIGKILL');
    if (kill < KILLS) next = start();
    await dying.exited;
    expect(dying.child.signalCode).toBe('SIGKILL');
  }
  await load.finish();
  expect(load.count).toBe(KILLS * STROKES_A_KILL);
  await expectAllKept(askedAt(await current.ready));
});
