import { afterAll, beforeAll, expect, test } from 'vitest';
import { startService, type TestService } from '../../support/service.ts';
import { type Fleet, newFleet, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

let service: TestService;
let fleet: Fleet;

beforeAll(async () => {
  service = await startService();
  fleet = await newFleet(service, await service.signIn());
});
afterAll(() => service?.stop());

/** The value of one line of the text form; null where there is none. */
async function read(line: string, from = service): Promise<number | null> {
  const { text } = await from.request('GET', '/metrics');
  const found = text.split('\n').find((each) => each.startsWith(`${line} `));
  return found === undefined ? null : Number(found.split(' ').at(-1));
}

test('strokes are counted by what became of them', async () => {
  await store(service, fleet, [strokeBody(fleet.roomId, 0), strokeBody(fleet.roomId, 1)]);
  await service.request('POST', '/strokes', { token: fleet.loggerToken, body: strokeBody(fleet.roomId, 1) });
  await settled(service, fleet.token, fleet.roomId);
  expect(await read('slideload_strokes_total{outcome="stored"}')).toBe(2);
  expect(await read('slideload_strokes_total{outcome="duplicate"}')).toBe(1);
  expect(await read('slideload_rooms_waiting')).toBe(0);
});

test('answers are counted by the pattern of their route, and problems by name', async () => {
  await service.request('GET', `/coaches/${fleet.coachId}`, { token: fleet.token });
  await service.request('GET', `/coaches/${crypto.randomUUID()}`, { token: fleet.token });
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
