import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { type ChildService, startChild } from '../../support/childService.ts';
import { createDatabase } from '../../support/databases.ts';
import { openFeed } from '../../support/liveFeed.ts';
import { sendRequest } from '../../support/request.ts';
import { ADMIN, askedAt, signInAsAdmin, startLoad } from '../database/durabilityFixture.ts';
import { newFleet, settled, strokeBody } from '../strokes/strokeFixture.ts';

/** Strokes sent before, while and after one of each kind of process is killed. */
const STROKES = 60;

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
  await database?.drop();
});

function start(role: 'web' | 'worker'): ChildService {
  const service = startChild({ DATABASE_URL: database.url, ROLE: role, ...ADMIN }, 'node');
  started.push(service);
  return service;
}

test('two that serve and two that work: one of each is killed under load, and nothing is lost, doubled or left behind', {
  timeout: 300_000,
}, async () => {
  const [web, dyingWeb, worker, dyingWorker] = [start('web'), start('web'), start('worker'), start('worker')];
  const [url, dyingUrl] = await Promise.all([web.ready, dyingWeb.ready, worker.ready, dyingWorker.ready]);

  // A worker answers how it is, and serves nobody.
  const workerUrl = await worker.ready;
  expect((await sendRequest(workerUrl, 'GET', '/readyz')).status).toBe(200);
  expect((await sendRequest(workerUrl, 'GET', '/metrics')).text).toContain('slideload_rooms_analysed_total');
  expect((await sendRequest(workerUrl, 'GET', '/session')).status).toBe(404);

  let sent = 0;
  let isDead = false;
  // In turns to the one and the other, while there are two.
  const { load, expectAllKept } = await startLoad(url, async () =>
    isDead || sent++ % 2 === 0 ? url : dyingUrl,
  );
  load.allow(3 * STROKES);
  await load.reach(STROKES);
  dyingWeb.child.kill('SIGKILL');
  dyingWorker.child.kill('SIGKILL');
  isDead = true;
  await Promise.all([dyingWeb.exited, dyingWorker.exited]);
  await load.finish();
  expect(load.count).toBe(3 * STROKES);
  await expectAllKept(askedAt(url));

  // Whoever watches at one process hears of what another took in and a third worked out.
  const another = start('web');
  const anotherUrl = await another.ready;
  const fleet = await newFleet(askedAt(url), await signInAsAdmin(askedAt(url)));
  const feed = await openFeed(url, { authorization: `Bearer ${fleet.token}` });
  feed.say({ type: 'watch', roomId: fleet.roomId });
  await feed.next('status');
  const answer = await sendRequest(anotherUrl, 'POST', '/strokes', {
    token: fleet.loggerToken,
    body: strokeBody(fleet.roomId, 0),
  });
  expect(answer.body.results[0].outcome).toBe('stored');
  const pushed = await feed.next('stroke');
  expect(pushed.roomId).toBe(fleet.roomId);
  feed.close();
  expect((await settled(askedAt(anotherUrl), fleet.token, fleet.roomId)).pending).toBe(0);
});
