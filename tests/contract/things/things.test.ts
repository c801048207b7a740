import { validate, version } from 'uuid';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';

const service = serviceOfTests({ worker: false });
let token: string;
let stranger: Member;
let coach: string;
let room: string;

const COACH = { name: 'Fern', model: 'Hallmoor 310', year: 2021, notes: 'On consignment.' };
const ROOM = {
  name: 'Living room',
  drive: 'in-wall',
  sides: ['front', 'rear'],
  travelMetres: 0.96,
  gearTeeth: 18,
  rackPitchMm: 6.2,
  ratedAmps: 14,
  nominalVolts: 24,
  positiveDirection: 'retract',
};
const LOGGER = { name: 'Clamp at the breaker', sensor: 'clamp' };
const SERVICE = { kind: 'lubricated', at: '2026-04-02T10:00:00.000Z', side: 'rear', notes: 'Both racks.' };

beforeAll(async () => {
  [token, stranger] = await Promise.all([service.signIn(), service.newAccount()]);
});

beforeEach(async () => {
  coach = await create('/coaches', COACH);
  room = await create(`/coaches/${coach}/rooms`, ROOM);
});

async function create(path: string, body: object): Promise<string> {
  const made = await service.as(token, 'POST', path, body);
  expect(made.status, made.text).toBe(201);
  return made.body.id;
}

const THINGS = [
  {
    thing: 'coaches',
    listed: () => '/coaches',
    body: COACH,
    change: { name: 'Fern II', model: null },
    wrong: { year: 'new' },
    pointer: '/year',
  },
  {
    thing: 'rooms',
    listed: () => `/coaches/${coach}/rooms`,
    body: ROOM,
    change: { name: 'Bedroom', ratedAmps: null, travelMetres: null },
    wrong: { drive: 'steam' },
    pointer: '/drive',
  },
  {
    thing: 'loggers',
    listed: () => `/coaches/${coach}/loggers`,
    body: LOGGER,
    change: { sensor: 'shunt' },
    wrong: { sensor: 'ear' },
    pointer: '/sensor',
  },
  {
    thing: 'services',
    listed: () => `/rooms/${room}/services`,
    body: SERVICE,
    change: { side: null, notes: null, kind: 'other' },
    wrong: { side: 'roof' },
    pointer: '/side',
  },
] as const;

describe.each(THINGS)('one of $thing', ({ thing, listed, body, change, wrong, pointer }) => {
  test('is created whole, with an id of version 7 and its address', async () => {
    const made = await service.as(token, 'POST', listed(), body);
    expect(made.status).toBe(201);
    expect(made.body).toMatchObject(body);
    expect(validate(made.body.id) && version(made.body.id)).toBe(7);
    expect(made.headers.get('location')).toBe(`/api/v1/${thing}/${made.body.id}`);
    const { token: _, ...shown } = made.body;
    expect((await service.as(token, 'GET', `/${thing}/${made.body.id}`)).body).toEqual(shown);
  });

  test('is listed under its parent', async () => {
    const id = await create(listed(), body);
    const list = await service.as(token, 'GET', `${listed()}?limit=500`);
    expect(list.body.items.map((item: { id: string }) => item.id)).toContain(id);
    expect(list.body.next).toBeNull();
  });

  test('is changed in the fields that are named and no others; null empties an optional one', async () => {
    const id = await create(listed(), body);
    const changed = await service.as(token, 'PATCH', `/${thing}/${id}`, change);
    expect(changed.status, changed.text).toBe(200);
    expect(changed.body).toMatchObject({ ...body, ...change });
    expect((await service.as(token, 'GET', `/${thing}/${id}`)).body).toEqual(changed.body);
  });

  test('is not changed by a patch with a field at fault', async () => {
    const id = await create(listed(), body);
    const refused = await service.as(token, 'PATCH', `/${thing}/${id}`, { ...change, ...wrong });
    expect(refused.status).toBe(422);
    expect(refused.body.errors[0].pointer).toBe(pointer);
    expect((await service.as(token, 'GET', `/${thing}/${id}`)).body).toMatchObject(body);
  });

  test('is gone once removed', async () => {
    const id = await create(listed(), body);
    const removed = await service.as(token, 'DELETE', `/${thing}/${id}`);
    expect([removed.status, removed.text]).toEqual([204, '']);
    for (const method of ['GET', 'DELETE'])
      expect((await service.as(token, method, `/${thing}/${id}`)).status).toBe(404);
    expect((await service.as(token, 'PATCH', `/${thing}/${id}`, change)).status).toBe(404);
  });

  test('does not exist for a stranger', async () => {
    const id = await create(listed(), body);
    const as = { token: stranger.token };
    const attempts = [
      await service.request('GET', `/${thing}/${id}`, as),
      await service.request('PATCH', `/${thing}/${id}`, { ...as, body: change }),
      await service.request('DELETE', `/${thing}/${id}`, as),
    ];
    if (thing !== 'coaches')
      attempts.push(
        await service.request('GET', listed(), as),
        await service.request('POST', listed(), { ...as, body }),
      );
    for (const attempt of attempts)
      expect([attempt.status, attempt.body.type]).toEqual([404, '/problems/not-found']);
    const kept = await service.as(token, 'GET', `/${thing}/${id}`);
    expect(kept.body).toMatchObject(body);
    expect((await service.request('GET', '/coaches', as)).body.items).toEqual([]);
  });

  test.each(['DELETE', 'PATCH', 'GET'])('%s with an address that holds no id is 404', async (method) => {
    const answer = await service.as(
      token,
      method,
      `/${thing}/not-an-id`,
      method === 'PATCH' ? {} : undefined,
    );
    expect([answer.status, answer.body.type]).toEqual([404, '/problems/not-found']);
  });

  test('needs somebody who signed in', async () => {
    for (const path of [listed(), `/${thing}/${coach}`]) {
      const answer = await service.request('GET', path);
      expect([answer.status, answer.headers.get('www-authenticate')]).toEqual([401, 'Bearer']);
    }
    expect((await service.request('POST', listed(), { body })).status).toBe(401);
  });
});

test('a coach takes its rooms, loggers, strokes and services along', async () => {
  const logger = await create(`/coaches/${coach}/loggers`, LOGGER);
  const work = await create(`/rooms/${room}/services`, SERVICE);
  await service.as(token, 'DELETE', `/coaches/${coach}`);
  for (const path of [`/rooms/${room}`, `/loggers/${logger}`, `/services/${work}`])
    expect((await service.as(token, 'GET', path)).status).toBe(404);
});

test('a room has defaults where nothing is said, and a patch does not bring them back', async () => {
  const id = await create(`/coaches/${coach}/rooms`, { name: 'Small', drive: 'cable', sides: ['main'] });
  const read = async () => (await service.as(token, 'GET', `/rooms/${id}`)).body;
  expect(await read()).toMatchObject({ nominalVolts: 12, positiveDirection: 'extend', gearTeeth: null });
  await service.as(token, 'PATCH', `/rooms/${id}`, { nominalVolts: 24 });
  await service.as(token, 'PATCH', `/rooms/${id}`, { name: 'Smaller' });
  expect(await read()).toMatchObject({ nominalVolts: 24, name: 'Smaller' });
});

test('a nominal voltage of null is as good as none said', async () => {
  const body = { name: 'Null', drive: 'cable', sides: ['main'], nominalVolts: null };
  const id = await create(`/coaches/${coach}/rooms`, body);
  const read = async () => (await service.as(token, 'GET', `/rooms/${id}`)).body;
  expect(await read()).toMatchObject({ nominalVolts: 12 });
  await service.as(token, 'PATCH', `/rooms/${id}`, { nominalVolts: 24 });
  await service.as(token, 'PATCH', `/rooms/${id}`, { nominalVolts: null });
  expect(await read()).toMatchObject({ nominalVolts: 12 });
});

test("a logger's token is answered once, kept nowhere, and worth nothing when the logger is removed", async () => {
  const made = await service.as(token, 'POST', `/coaches/${coach}/loggers`, LOGGER);
  expect(made.body.token).toMatch(/^sll_[\w-]{64}$/);
  const read = await service.as(token, 'GET', `/loggers/${made.body.id}`);
  expect(read.body).not.toHaveProperty('token');
  const rows = await service.pool.query('select l::text from loggers l where id = $1', [made.body.id]);
  expect(JSON.stringify(rows.rows)).not.toContain(made.body.token);
});

test('what a service or a change of its room alters is queued to be made anew', async () => {
  const dirtyFrom = async () => {
    const { rows } = await service.pool.query('select dirty_from from room_progress where room_id = $1', [
      room,
    ]);
    return rows[0]?.dirty_from?.toISOString() ?? null;
  };
  expect(await dirtyFrom()).toBeNull();
  const id = await create(`/rooms/${room}/services`, SERVICE);
  expect(await dirtyFrom()).toBe(SERVICE.at);
  const earlier = '2026-03-01T00:00:00.000Z';
  await service.as(token, 'PATCH', `/services/${id}`, { at: earlier });
  expect(await dirtyFrom()).toBe(earlier);
  await service.as(token, 'PATCH', `/rooms/${room}`, { name: 'LIVING ROOM' });
  expect(await dirtyFrom()).toBe(earlier);
  await service.as(token, 'PATCH', `/rooms/${room}`, { ratedAmps: 9 });
  expect(await dirtyFrom()).toBe('0001-01-01T00:00:00.000Z');
});

test('a service is listed by when it was done, newest first, in UTC', async () => {
  await create(`/rooms/${room}/services`, { kind: 'cleaned', at: '2026-04-01T23:30:00-02:00' });
  await create(`/rooms/${room}/services`, { kind: 'retimed', at: '2026-04-03T00:00:00Z' });
  await create(`/rooms/${room}/services`, { kind: 'adjusted', at: '2026-04-02T00:00:00.5Z' });
  const list = await service.as(token, 'GET', `/rooms/${room}/services`);
  expect(list.body.items.map((item: { at: string }) => item.at)).toEqual([
    '2026-04-03T00:00:00.000Z',
    '2026-04-02T01:30:00.000Z',
    '2026-04-02T00:00:00.500Z',
  ]);
});

test.each([
  ['2026-04-02T10:00:00.1234567+02:00', '2026-04-02T08:00:00.123Z'],
  ['2026-04-02t10:00:00z', '2026-04-02T10:00:00.000Z'],
  ['2026-04-02T10:00:00+23:59', '2026-04-01T10:01:00.000Z'],
  ['2026-06-30T23:59:60Z', '2026-07-01T00:00:00.000Z'],
])('a time is any of RFC 3339, as in strokes: %s', async (at, answered) => {
  const made = await service.as(token, 'POST', `/rooms/${room}/services`, { ...SERVICE, at });
  expect([made.status, made.body.at], made.text).toEqual([201, answered]);
  const read = await service.as(token, 'GET', `/services/${made.body.id}`);
  expect(read.body.at).toBe(answered);
});

test('a service lies neither in the future nor before the year 2000, at its making and at its change', async () => {
  const id = await create(`/rooms/${room}/services`, { ...SERVICE, at: hoursAhead(23) });
  for (const at of [hoursAhead(25), '2126-01-01T00:00:00Z', '1999-12-31T23:59:59Z']) {
    for (const [method, path, body] of [
      ['POST', `/rooms/${room}/services`, { ...SERVICE, at }],
      ['PATCH', `/services/${id}`, { at }],
    ] as const) {
      const refused = await service.as(token, method, path, body);
      expect([method, at, refused.status, refused.body.errors?.[0].pointer]).toEqual([
        method,
        at,
        422,
        '/at',
      ]);
    }
  }
  await create(`/rooms/${room}/services`, { ...SERVICE, at: '2000-01-01T00:00:00Z' });
});

const hoursAhead = (hours: number) => new Date(Date.now() + hours * 3_600_000).toISOString();
