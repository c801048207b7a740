import { beforeAll, expect, test } from 'vitest';
import { Trend } from '../../../server/schemas/results.ts';
import { Trace } from '../../../server/schemas/stroke.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import {
  dayAt,
  fleetOfTests,
  newFleet,
  newService,
  settled,
  store,
  strokeBody,
} from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const fleet = fleetOfTests(service);
let ids: string[];
const DAYS = Array.from({ length: 24 }, (_, day) => day);

beforeAll(async () => {
  ids = await store(
    service,
    fleet,
    DAYS.map((day) => strokeBody(fleet.roomId, day)),
  );
  await newService(service, fleet, dayAt(3.5));
  await settled(service, fleet.token, fleet.roomId);
});

const trend = (query: string) => service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/trend?${query}`);

test('an answer that is put together as text fits its schema', async () => {
  const { body } = await trend('measure=runningAmps&direction=extend&side=front');
  expect(Trend.strict().parse(body)).toEqual(body);
  expect(body.points.map((point: { strokeId: string }) => point.strokeId)).toEqual(
    ids.filter((_, i) => i % 2 === 0),
  );
  expect(body.points[0].at).toBe(dayAt(0));
  expect(body.points[0]).toMatchObject({ expected: null, beyond: false });
  expect(body.points[11].expected).toBeCloseTo(9, 0);
  expect(body.limits.lower).toBeLessThan(body.limits.upper);
  expect(body.services).toHaveLength(1);
  const trace = await service.as(fleet.token, 'GET', `/strokes/${ids[0]}/trace`);
  expect(Trace.strict().parse(trace.body)).toEqual(trace.body);
});

test('a span holds its strokes and its services', async () => {
  const { body } = await trend(
    `measure=durationS&direction=retract&side=rear&from=${dayAt(4)}&to=${dayAt(9)}`,
  );
  expect(body.points.map((point: { strokeId: string }) => point.strokeId)).toEqual([ids[5], ids[7], ids[9]]);
  expect(body.services).toEqual([]);
});

test('a measure of the whole stroke needs no side', async () => {
  const { status, body } = await trend('measure=lagS&direction=extend');
  expect(status).toBe(200);
  expect(body.points).toHaveLength(12);
});

test('what is left out is not chosen by: all sides, both directions, in order of time, and each point says whose it is', async () => {
  interface Point {
    readonly strokeId: string;
    readonly at: string;
    readonly side?: string | null;
    readonly direction?: string;
  }
  const series = ['front', 'rear'].flatMap((side) =>
    ['extend', 'retract'].map((direction) => ({ side, direction })),
  );
  const each = await Promise.all(
    series.map(async (whose) => {
      const { body } = await trend(`measure=runningAmps&${new URLSearchParams(whose)}`);
      return body.points.map((point: Point) => ({ ...point, ...whose })) as Point[];
    }),
  );
  const all = each.flat();
  for (const [query, isAsked] of [
    ['', () => true],
    ['&side=front', ({ side }: Point) => side === 'front'],
    ['&direction=retract', ({ direction }: Point) => direction === 'retract'],
    [`&from=${dayAt(4)}&to=${dayAt(9)}`, ({ at }: Point) => at >= dayAt(4) && at <= dayAt(9)],
  ] as const) {
    const { status, body } = await trend(`measure=runningAmps${query}`);
    expect(status, query).toBe(200);
    expect(Trend.strict().parse(body)).toEqual(body);
    const inOrder = all
      .filter(isAsked)
      .sort((a, b) => a.at.localeCompare(b.at) || String(a.side).localeCompare(String(b.side)));
    expect(body.points).toEqual(inOrder);
    expect([body.limits, body.forecast]).toEqual([null, null]);
    expect(body.services).toHaveLength(query.includes('from') ? 0 : 1);
  }
  const { body: lags } = await trend('measure=lagS');
  expect(lags.points.map(({ side, direction }: Point) => [side, direction])).toEqual(
    DAYS.map((day) => [null, day % 2 === 0 ? 'extend' : 'retract']),
  );
  const { body: thinned } = await trend('measure=runningAmps&points=100');
  expect([thinned.points.length, thinned.thinned]).toEqual([48, undefined]);
});

test('every measure of the table can be asked for', async () => {
  const { body: measures } = await service.as(fleet.token, 'GET', '/measures');
  const names = measures.map((measure: { name: string }) => measure.name);
  expect(names).toEqual(
    expect.arrayContaining([
      'runningAmps',
      'runningAmpsP90',
      'inrushAmps',
      'endStopAmps',
      'durationS',
      'chargeAs',
    ]),
  );
  expect(names).toEqual(expect.arrayContaining(['energyJ', 'share', 'lagS', 'roughness']));
  for (const name of names) {
    expect((await trend(`measure=${name}&direction=extend&side=front`)).status, name).toBe(200);
  }
});

test('an unknown measure is 422 and the answer names them all', async () => {
  const answer = await trend('measure=mood&direction=extend&side=front');
  expect(answer.status).toBe(422);
  expect(answer.body.errors[0].pointer).toBe('/measure');
  expect(answer.text).toContain('runningAmps');
  expect(answer.text).toContain('roughness');
});

test.each([
  ['a side that the room lacks', 'measure=runningAmps&direction=extend&side=attic', '/side'],
  ['a direction that is none', 'measure=runningAmps&direction=out&side=front', '/direction'],
  ['a time that is none', 'measure=runningAmps&direction=extend&side=front&to=later', '/to'],
])('%s is 422', async (_name, query, pointer) => {
  const answer = await trend(query);
  expect(answer.status).toBe(422);
  expect(answer.body.errors[0].pointer).toBe(pointer);
});

test('the comparison around a service and between spans', async () => {
  const services = await service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/services`);
  const id = services.body.items[0].id;
  const around = await service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/comparison?service=${id}`);
  expect(around.status, around.text).toBe(200);
  expect(around.body.sentence.length).toBeGreaterThan(10);
  const spans = `beforeFrom=${dayAt(0)}&beforeTo=${dayAt(3)}&afterFrom=${dayAt(4)}&afterTo=${dayAt(30)}`;
  const between = await service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/comparison?${spans}`);
  expect(between.body).toEqual(around.body);
  const none = await service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/comparison`);
  expect(none.status).toBe(422);
  expect(none.body.detail).toBe('Give service, or all of beforeFrom, beforeTo, afterFrom and afterTo.');
  for (const [span, pointer] of [
    [`beforeFrom=${dayAt(3)}&beforeTo=${dayAt(0)}&afterFrom=${dayAt(4)}&afterTo=${dayAt(30)}`, '/beforeTo'],
    [`beforeFrom=${dayAt(0)}&beforeTo=${dayAt(3)}&afterFrom=${dayAt(30)}&afterTo=${dayAt(4)}`, '/afterTo'],
  ]) {
    const turned = await service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/comparison?${span}`);
    expect([turned.status, turned.body.errors[0].pointer]).toEqual([422, pointer]);
  }
  for (const more of [spans, `afterTo=${dayAt(30)}`]) {
    const path = `/rooms/${fleet.roomId}/comparison?service=${id}&${more}`;
    const both = await service.as(fleet.token, 'GET', path);
    expect([both.status, both.body.errors[0].pointer]).toEqual([422, '/service']);
  }
  const unknown = await service.as(
    fleet.token,
    'GET',
    `/rooms/${fleet.roomId}/comparison?service=${fleet.roomId}`,
  );
  expect(unknown.status).toBe(422);
});

test('the overview shows the coach with its room', async () => {
  const { body } = await service.as(fleet.token, 'GET', '/overview');
  const status = await settled(service, fleet.token, fleet.roomId);
  expect(body.items).toHaveLength(1);
  expect(body.items[0]).toMatchObject({ id: fleet.coachId, rooms: [{ id: fleet.roomId, ...status }] });
});

test('a new room is learning', async () => {
  const other = await newFleet(service, fleet.token);
  const status = await settled(service, fleet.token, other.roomId);
  expect(status).toMatchObject({
    verdict: 'learning',
    strokes: 0,
    openWarnings: 0,
    lastStrokeAt: null,
    pending: 0,
  });
  expect(status.headline.length).toBeGreaterThan(5);
});
