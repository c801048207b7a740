import pg from 'pg';
import { beforeAll, expect, onTestFinished, test } from 'vitest';
import { Normal, TravelTrace } from '../../../server/schemas/travel.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';
import { fleetOfTests, newRoom, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const fleet = fleetOfTests(service);
let ids: string[];

beforeAll(async () => {
  const strokes = Array.from({ length: 24 }, (_, day) => strokeBody(fleet.roomId, day, day < 22 ? 9 : 14));
  ids = await store(service, fleet, strokes);
  await settled(service, fleet.token, fleet.roomId);
});

const get = (path: string) => service.as(fleet.token, 'GET', path);

test('the normal of each side lies about its running current, and a stroke that draws more lies above', async () => {
  const { status, text, body } = await get(`/rooms/${fleet.roomId}/normal?direction=extend`);
  expect(status, text).toBe(200);
  expect(Normal.strict().parse(body)).toEqual(body);
  expect(Object.keys(body.sides)).toEqual(['front', 'rear']);
  const { strokes, lower, centre, upper } = body.sides.front;
  expect(strokes).toBeGreaterThanOrEqual(8);
  const inner = centre.flatMap((amps: number | null, i: number) =>
    amps === null ? [] : [[lower[i], amps, upper[i]]],
  );
  expect(inner.length).toBeGreaterThan(50);
  for (const [low, middle, high] of inner) {
    expect(middle).toBeGreaterThan(8.5);
    expect(middle).toBeLessThan(9.5);
    expect(low).toBeLessThan(middle);
    expect(high).toBeGreaterThan(middle);
    expect(high).toBeLessThan(14);
  }
  const { body: worse } = await get(`/strokes/${ids[22]}`);
  const above = worse.analysis.sides.front.profile.filter(
    (amps: number | null, bin: number) => amps !== null && upper[bin] !== null && amps > upper[bin],
  );
  expect(above.length).toBeGreaterThan(50);
});

test('for a stroke it stands at the level that was expected of it', async () => {
  const [{ body: of }, { body: trend }] = await Promise.all([
    get(`/rooms/${fleet.roomId}/normal?direction=extend&stroke=${ids[22]}`),
    get(`/rooms/${fleet.roomId}/trend?measure=runningAmps&direction=extend&side=front`),
  ]);
  const { expected } = trend.points.find((point: { strokeId: string }) => point.strokeId === ids[22]);
  const sorted = of.sides.front.centre
    .filter((amps: number | null) => amps !== null)
    .sort((a: number, b: number) => a - b);
  expect(sorted[Math.floor(sorted.length / 2)]).toBeCloseTo(expected, 0);
});

test('a list of strokes leaves out their profiles for whoever draws none, and nothing else', async () => {
  const [{ body: whole }, { body: lean }] = await Promise.all([
    get(`/rooms/${fleet.roomId}/strokes?limit=3`),
    get(`/rooms/${fleet.roomId}/strokes?limit=3&profiles=false`),
  ]);
  expect(whole.items[0].analysis.sides.front.profile).toHaveLength(64);
  for (const { analysis } of whole.items)
    for (const side of Object.values<{ profile: unknown[] }>(analysis.sides)) side.profile = [];
  expect(lean).toEqual(whole);
  expect((await get(`/rooms/${fleet.roomId}/strokes?profiles=no`)).status).toBe(422);
});

test('of a new room nothing is known', async () => {
  const roomId = await newRoom(service, fleet.token, fleet.coachId);
  const { body } = await get(`/rooms/${roomId}/normal?direction=retract`);
  expect(body).toEqual({ direction: 'retract', sides: { front: null, rear: null } });
});

test.each([
  ['no direction', '', '/direction'],
  ['a stroke of nobody', 'direction=extend&stroke=01900000-0000-7000-8000-000000000000', '/stroke'],
  ['a stroke that is no id', 'direction=extend&stroke=first', '/stroke'],
])('with %s it is 422', async (_, query, pointer) => {
  const answer = await get(`/rooms/${fleet.roomId}/normal?${query}`);
  expect([answer.status, answer.body.errors?.[0].pointer]).toEqual([422, pointer]);
});

test('the travel of a stroke rises from fully in to fully out, whichever way it ran', async () => {
  for (const [id, direction] of [
    [ids[0], 'extend'],
    [ids[1], 'retract'],
  ]) {
    const { status, text, body } = await get(`/strokes/${id}/travel`);
    expect(status, text).toBe(200);
    expect(TravelTrace.strict().parse(body)).toEqual(body);
    expect(body.direction).toBe(direction);
    expect(body.sides.map(({ side }: { side: string }) => side)).toEqual(['front', 'rear']);
    const { positions, amps, inrushEnd, endStop } = body.sides[0];
    expect(positions).toEqual([...positions].sort((a: number, b: number) => a - b));
    expect(positions).toHaveLength(amps.length);
    expect(positions[0]).toBeLessThan(0.01);
    expect(positions.at(-1)).toBeGreaterThan(0.99);
    expect(endStop).toBeCloseTo(direction === 'extend' ? 1 : 0, 1);
    expect(inrushEnd).toBeCloseTo(direction === 'extend' ? 0 : 1, 1);
    expect(body.supply).toBeNull();
  }
});

test('thinning keeps the highest sample, of the travel and of the trace', async () => {
  const [whole, thin] = await Promise.all([
    get(`/strokes/${ids[0]}/trace`),
    get(`/strokes/${ids[0]}/trace?points=100`),
  ]);
  const [all, few] = [whole, thin].map(({ body }) => body.sides[0]);
  expect([whole.body.thinned, thin.body.thinned]).toEqual([undefined, true]);
  expect(all.rateHz).toBe(50);
  expect(few.amps.length).toBeLessThanOrEqual(100);
  expect(Math.max(...few.amps)).toBe(Math.max(...all.amps));
  for (const [i, t] of few.t.entries()) expect(few.amps[i]).toBe(all.amps[Math.round(t * 50)]);
  const { body: travel } = await get(`/strokes/${ids[0]}/travel?points=100`);
  expect(travel.sides[0].amps.length).toBeLessThanOrEqual(100);
  expect((await get(`/strokes/${ids[0]}/travel?points=1`)).status).toBe(422);
  expect((await get(`/strokes/${ids[0]}/trace?points=1e9`)).status).toBe(422);
});

test('a stroke that cannot be measured has no travel', async () => {
  const [id] = await store(service, fleet, [
    {
      key: 'flat',
      roomId: fleet.roomId,
      direction: 'extend',
      startedAt: '2026-06-01T00:00:00Z',
      sides: [{ side: 'front', rateHz: 10, amps: [0, 0, 0] }],
    },
  ]);
  expect((await get(`/strokes/${id}/travel`)).status).toBe(404);
  await settled(service, fleet.token, fleet.roomId);
  expect((await get(`/rooms/${fleet.roomId}/normal?direction=extend&stroke=${id}`)).status).toBe(200);
});

test.each(['travel', 'trace', 'trace?points=100'])(
  'however many strokes are asked for their %s, the database is there for others',
  async (path) => {
    const other = new pg.Client(service.databaseUrl);
    await other.connect();
    onTestFinished(() => other.end());
    await other.query('begin; lock table traces in access exclusive mode');
    const drawn = Array.from({ length: 12 }, (_, i) => get(`/strokes/${ids[i]}/${path}`));
    await untilSomebodyWaits(other, 2);
    for (let asked = 0; asked < 5; asked++) expect((await get('/session')).status).toBe(200);
    const { rows } = await other.query(
      'select count(distinct pid)::int as waiting from pg_locks where not granted and database = (select oid from pg_database where datname = current_database())',
    );
    await other.query('rollback');
    expect(rows).toEqual([{ waiting: 2 }]);
    expect((await Promise.all(drawn)).map(({ status }) => status)).toEqual(Array(12).fill(200));
  },
);
