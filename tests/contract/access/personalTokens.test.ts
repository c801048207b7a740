import { beforeAll, describe, expect, test } from 'vitest';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { type Fleet, newFleet } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
let dealer: Member;
let colleague: Member;
let fleet: Fleet;

beforeAll(async () => {
  dealer = await service.newAccount();
  colleague = await service.newMember(dealer, 'technician');
  fleet = await newFleet(service, dealer.token);
});

const DAY_MS = 86_400_000;
const inDays = (days: number) => new Date(Date.now() + days * DAY_MS).toISOString();
const make = async (more: object = {}, token = dealer.token) =>
  (await service.as(token, 'POST', '/tokens', { name: 'Nightly list', until: inDays(30), ...more })).body;

test('it reads what its person reads, and is kept only as a hash', async () => {
  const { token, ...shown } = await make();
  expect(token).toMatch(/^slk_/);
  expect((await service.as(token, 'GET', `/coaches/${fleet.coachId}`)).status).toBe(200);
  expect((await service.as(token, 'GET', '/session')).body.person.id).toBe(dealer.person.id);
  const { items } = (await service.as(dealer.token, 'GET', '/tokens')).body;
  const listed = items.find(({ id }: { id: string }) => id === shown.id);
  expect(listed).toEqual({ ...shown, lastSeenAt: expect.any(String) });
  const { rows } = await service.pool.query('select string_agg(t::text, $1) as t from personal_tokens t', [
    '',
  ]);
  expect(rows[0].t).not.toContain(token);
});

test('it changes nothing unless it was made for that', async () => {
  const [reads, changes] = [await make(), await make({ mayChange: true })];
  for (const [method, path] of [
    ['PATCH', `/coaches/${fleet.coachId}`],
    ['DELETE', `/rooms/${fleet.roomId}`],
    ['POST', '/coaches'],
    ['POST', '/strokes'],
  ])
    expect([path, (await service.as(reads.token, method, path, {})).status]).toEqual([path, 403]);
  expect(
    (await service.as(changes.token, 'PATCH', `/coaches/${fleet.coachId}`, { notes: 'Swept.' })).status,
  ).toBe(200);
});

test('it never does what is for its person alone', async () => {
  const { token } = await make({ mayChange: true });
  const asked = [
    ['GET', '/tokens'],
    ['POST', '/tokens'],
    ['GET', '/sessions'],
    ['DELETE', '/sessions'],
    ['DELETE', '/session'],
    ['PUT', '/password'],
    ['GET', '/people'],
    ['POST', '/people'],
    ['DELETE', `/people/${colleague.person.id}`],
    ['POST', `/coaches/${fleet.coachId}/grants`],
  ];
  for (const [method, path] of asked)
    expect([path, (await service.as(token, method, path, method === 'GET' ? undefined : {})).status]).toEqual(
      [path, 403],
    );
  expect((await service.as(colleague.token, 'GET', '/session')).status).toBe(200);
});

test('it does not outlive its date, its end, its person or that one’s role', async () => {
  const [dated, ended, theirs] = [
    await make(),
    await make(),
    await make({ mayChange: true }, colleague.token),
  ];
  await service.pool.query('update personal_tokens set until = now() where id = $1', [dated.id]);
  expect((await service.as(dated.token, 'GET', '/coaches')).status).toBe(401);
  expect((await service.as(dealer.token, 'DELETE', `/tokens/${ended.id}`)).status).toBe(204);
  expect((await service.as(ended.token, 'GET', '/coaches')).status).toBe(401);
  await service.as(dealer.token, 'PATCH', `/people/${colleague.person.id}`, { role: 'owner' });
  expect((await service.as(theirs.token, 'POST', '/coaches', { name: 'Wren' })).status).toBe(403);
  await service.as(dealer.token, 'DELETE', `/people/${colleague.person.id}`);
  expect((await service.as(theirs.token, 'GET', '/coaches')).status).toBe(401);
});

test('a person has at most fifty, and those that have run out are none', async () => {
  const busy = await service.newAccount();
  const made = await Promise.all(Array.from({ length: 50 }, () => make({}, busy.token)));
  const oneMore = () => service.as(busy.token, 'POST', '/tokens', { name: 'One more', until: inDays(1) });
  expect((await oneMore()).status).toBe(409);
  await service.pool.query('update personal_tokens set until = now() where id = $1', [made[0].id]);
  expect((await oneMore()).status).toBe(201);
  expect((await oneMore()).status).toBe(409);
  expect((await service.as(busy.token, 'GET', '/tokens')).body.items).toHaveLength(50);
});

test('another’s token cannot be seen or ended', async () => {
  const { id, token } = await make();
  const stranger = await service.newAccount();
  expect((await service.as(stranger.token, 'DELETE', `/tokens/${id}`)).status).toBe(404);
  expect((await service.as(stranger.token, 'GET', '/tokens')).body.items).toEqual([]);
  expect((await service.as(token, 'GET', '/coaches')).status).toBe(200);
});

describe('its date', () => {
  test.each([
    ['is in the past', -1],
    ['is more than a year away', 400],
  ])('is refused when it %s', async (_, days) => {
    const answer = await service.as(dealer.token, 'POST', '/tokens', { name: 'x', until: inDays(days) });
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/until']);
  });
});
