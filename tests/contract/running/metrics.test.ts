import { expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const fleet = fleetOfTests(service);

/** The value of one line of the text form; null where there is none. */
async function read(line: string, from = service): Promise<number | null> {
  const { text } = await from.request('GET', '/metrics');
  const found = text.split('\n').find((each) => each.startsWith(`${line} `));
  return found === undefined ? null : Number(found.split(' ').at(-1));
}

test('strokes are counted by what became of them', async () => {
  await store(service, fleet, [strokeBody(fleet.roomId, 0), strokeBody(fleet.roomId, 1)]);
  await service.as(fleet.loggerToken, 'POST', '/strokes', strokeBody(fleet.roomId, 1));
  await settled(service, fleet.token, fleet.roomId);
  expect(await read('slideload_strokes_total{outcome="stored"}')).toBe(2);
  expect(await read('slideload_strokes_total{outcome="duplicate"}')).toBe(1);
  expect(await read('slideload_rooms_waiting')).toBe(0);
});

test('answers are counted by the pattern of their route, and problems by name', async () => {
  await service.as(fleet.token, 'GET', `/coaches/${fleet.coachId}`);
  await service.as(fleet.token, 'GET', `/coaches/${crypto.randomUUID()}`);
  const route = 'method="GET",route="/api/v1/coaches/:id"';
  expect(await read(`slideload_http_answer_seconds_count{${route},status="2xx"}`)).toBe(1);
  expect(await read(`slideload_http_answer_seconds_count{${route},status="4xx"}`)).toBe(1);
  expect(await read('slideload_problems_total{problem="not-found"}')).toBe(1);
  const { text } = await service.request('GET', '/metrics');
  expect(text).not.toContain(fleet.coachId);
});

test('for whoever comes through a proxy it is not there', async () => {
  const answer = await service.request('GET', '/metrics', { headers: { 'x-forwarded-for': '203.0.113.9' } });
  expect(answer.status).toBe(404);
});
