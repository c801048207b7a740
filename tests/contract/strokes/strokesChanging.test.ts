import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';
import { dayAt, fleetOfTests, newFleet, newRoom, send, settled, store, strokeBody } from './strokeFixture.ts';

const service = serviceOfTests();
const fleet = fleetOfTests(service);
let ids: string[];

const DAYS = [0, 1, 2, 3, 4, 5, 6, 7];

beforeAll(async () => {
  ids = await store(
    service,
    fleet,
    DAYS.map((day) => strokeBody(fleet.roomId, day)),
  );
  await settled(service, fleet.token, fleet.roomId);
});

const patch = (id: string, body: object) => service.as(fleet.token, 'PATCH', `/strokes/${id}`, body);

async function trendIds(direction: string, roomId = fleet.roomId): Promise<string[]> {
  await settled(service, fleet.token, roomId);
  const path = `/rooms/${roomId}/trend?measure=runningAmps&side=front&direction=${direction}`;
  const { body } = await service.as(fleet.token, 'GET', path);
  return body.points.map((point: { strokeId: string }) => point.strokeId);
}

test('a stroke is measured', async () => {
  const { body } = await service.as(fleet.token, 'GET', `/strokes/${ids[0]}`);
  expect(body.analysis.status).toBe('done');
  expect(body.analysis.sides.front.runningAmps).toBeCloseTo(9, 0);
  expect(body.analysis.sides.front.profile).toHaveLength(64);
});

test('the same room written in capitals is the same room: nothing is measured again', async () => {
  const answer = await patch(ids[0], { roomId: fleet.roomId.toUpperCase() });
  expect([answer.status, answer.body.analysis?.status]).toEqual([200, 'done']);
});

test('another direction moves it to the other trend', async () => {
  expect(await trendIds('extend')).toEqual([ids[0], ids[2], ids[4], ids[6]]);
  const answer = await patch(ids[4], { direction: 'retract' });
  expect(answer.status).toBe(200);
  expect(answer.body).toMatchObject({ direction: 'retract', analysis: null });
  expect(await trendIds('extend')).toEqual([ids[0], ids[2], ids[6]]);
  expect(await trendIds('retract')).toContain(ids[4]);
  await patch(ids[4], { direction: 'extend' });
  expect(await trendIds('extend')).toEqual([ids[0], ids[2], ids[4], ids[6]]);
});

test('another time moves it within the trend', async () => {
  const answer = await patch(ids[2], { startedAt: dayAt(20) });
  expect(answer.body.startedAt).toBe(dayAt(20));
  expect(await trendIds('extend')).toEqual([ids[0], ids[4], ids[6], ids[2]]);
  await patch(ids[2], { startedAt: dayAt(2) });
  expect(await trendIds('extend')).toEqual([ids[0], ids[2], ids[4], ids[6]]);
});

test('set aside, it is noted and no longer judged', async () => {
  const answer = await patch(ids[6], { excluded: true, note: 'Somebody leaned on it' });
  expect(answer.body).toMatchObject({ excluded: true, note: 'Somebody leaned on it' });
  await settled(service, fleet.token, fleet.roomId);
  const { rows } = await service.pool.query('select expected from measures where stroke_id = $1', [ids[6]]);
  for (const { expected } of rows) expect(expected.every((value: unknown) => value === null)).toBe(true);
  await patch(ids[6], { excluded: false, note: null });
});

test('another room of the coach takes it over', async () => {
  const other = await newRoom(service, fleet.token, fleet.coachId);
  await patch(ids[0], { roomId: other });
  expect(await trendIds('extend', other)).toEqual([ids[0]]);
  expect(await trendIds('extend')).not.toContain(ids[0]);
  await patch(ids[0], { roomId: fleet.roomId });
  expect(await trendIds('extend')).toContain(ids[0]);
});

test.each<[string, () => object | Promise<object>, string]>([
  ['a room that does not exist', () => ({ roomId: randomUUID() }), '/roomId'],
  [
    'a room of another coach',
    async () => ({ roomId: (await newFleet(service, fleet.token)).roomId }),
    '/roomId',
  ],
  ['an unknown direction', () => ({ direction: 'up' }), '/direction'],
  ['no time', () => ({ startedAt: 'yesterday' }), '/startedAt'],
  ['a field that cannot be changed', () => ({ key: 'x' }), '/key'],
])('%s is refused', async (_name, body, pointer) => {
  const answer = await patch(ids[1], await body());
  expect(answer.status).toBe(422);
  expect(answer.body.errors[0].pointer).toBe(pointer);
});

test('removed, it is gone from everywhere', async () => {
  const [id] = await store(service, fleet, [strokeBody(fleet.roomId, 30)]);
  await settled(service, fleet.token, fleet.roomId);
  expect((await service.as(fleet.token, 'DELETE', `/strokes/${id}`)).status).toBe(204);
  expect((await service.as(fleet.token, 'GET', `/strokes/${id}`)).status).toBe(404);
  expect((await service.as(fleet.token, 'GET', `/strokes/${id}/trace`)).status).toBe(404);
  expect(await trendIds('extend')).not.toContain(id);
  const again = await send(service, fleet.loggerToken, strokeBody(fleet.roomId, 30));
  expect(again.body.results).toMatchObject([{ strokeId: id, outcome: 'duplicate' }]);
  expect((await service.as(fleet.token, 'GET', `/strokes/${id}`)).status).toBe(404);
});

describe('the list of a room', () => {
  const list = async (query: string) => {
    const { body } = await service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/strokes${query}`);
    return body as { items: { id: string; key: string; loggerId: string }[]; next: string | null };
  };

  test('is newest first, page by page', async () => {
    const first = await list('?limit=5');
    expect(first.items.map((item) => item.id)).toEqual([7, 6, 5, 4, 3].map((day) => ids[day]));
    expect(first.items[0]).toMatchObject({ key: 'day 7', loggerId: fleet.loggerId });
    const second = await list(`?limit=5&cursor=${first.next}`);
    expect(second.items.map((item) => item.id)).toEqual([2, 1, 0].map((day) => ids[day]));
    expect(second.next).toBeNull();
  });

  test('by direction and span', async () => {
    expect((await list('?direction=retract')).items.map((item) => item.id)).toEqual(
      [7, 5, 3, 1].map((day) => ids[day]),
    );
    const span = await list(`?from=${dayAt(2)}&to=${dayAt(4)}`);
    expect(span.items.map((item) => item.id)).toEqual([ids[4], ids[3], ids[2]]);
  });

  test.each(['?limit=0', '?limit=501', '?cursor=abc', '?direction=up', '?from=now'])(
    '%s is 422',
    async (query) => {
      const answer = await service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/strokes${query}`);
      expect(answer.status).toBe(422);
      expect(answer.body.errors[0].pointer).toBe(`/${query.slice(1).split('=')[0]}`);
    },
  );
});

test.each([
  { amps: [0.02, 14.8, 9.1], direction: 'extend' },
  { amps: [-0.02, -14.8, -9.1, -9], direction: 'retract' },
])(
  'a record too short to measure still tells by its sign that it is a $direction',
  async ({ amps, direction }) => {
    const roomId = await newRoom(service, fleet.token, fleet.coachId);
    const [front] = strokeBody(roomId, 0).sides;
    const sent = { ...strokeBody(roomId, 0), direction: undefined, key: `short ${direction}` };
    const [id] = await store(service, fleet, [{ ...sent, sides: [{ ...front, amps }] }]);
    await settled(service, fleet.token, roomId);
    const read = await service.as(fleet.token, 'GET', `/strokes/${id}`);
    expect(read.body).toMatchObject({ direction, analysis: { status: 'unusable' } });
    const listed = await service.as(fleet.token, 'GET', `/rooms/${roomId}/strokes?direction=${direction}`);
    expect(listed.body.items.map((item: { id: string }) => item.id)).toEqual([id]);
  },
);

describe('at once with others', () => {
  /** What the writing of measures does to those of a stroke, and to the stroke that the first are written of. */
  const REWRITES = 'delete from measures where stroke_id = $1';
  const WRITES_FIRST = 'select from strokes where id = $1 for key share';

  test('changes of one stroke are all made, one after the other', async () => {
    const other = await newRoom(service, fleet.token, fleet.coachId);
    const [id] = await store(service, fleet, [strokeBody(fleet.roomId, 40, 9, { key: randomUUID() })]);
    const changes = Array.from({ length: 4 }, (_, i) => [
      { roomId: i % 2 === 0 ? other : fleet.roomId },
      { startedAt: dayAt(40 + i) },
    ]).flat();
    const answers = await Promise.all([
      ...changes.map((each) => patch(id, each)),
      patch(id, { note: 'Seen.' }),
    ]);
    expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 200));
    const removals = await Promise.all([
      patch(id, { roomId: other }),
      service.as(fleet.token, 'DELETE', `/strokes/${id}`),
      patch(id, { startedAt: dayAt(60) }),
    ]);
    expect(removals[1].status, removals[1].text).toBe(204);
    for (const { status } of removals) expect([200, 204, 404]).toContain(status);
  });

  test.each([
    ['moved to another room', 200, REWRITES, (id: string, roomId: string) => patch(id, { roomId })],
    ['removed', 204, REWRITES, (id: string) => service.as(fleet.token, 'DELETE', `/strokes/${id}`)],
    [
      'removed at its first',
      204,
      WRITES_FIRST,
      (id: string) => service.as(fleet.token, 'DELETE', `/strokes/${id}`),
    ],
  ])(
    'one whose measures are being written is %s after that, and nobody waits in a ring',
    async (_, status, write, change) => {
      const other = await newRoom(service, fleet.token, fleet.coachId);
      const [id] = await store(service, fleet, [strokeBody(fleet.roomId, 41, 9, { key: randomUUID() })]);
      await settled(service, fleet.token, fleet.roomId);
      const writer = await service.pool.connect();
      try {
        await writer.query('begin');
        await writer.query(write, [id]);
        const changed = change(id, other);
        await untilSomebodyWaits(writer);
        await writer.query('select from room_progress where room_id = $1 for update nowait', [fleet.roomId]);
        await writer.query('commit');
        expect((await changed).status).toBe(status);
      } finally {
        writer.release(true);
      }
    },
  );
});
