import { beforeAll, describe, expect, test } from 'vitest';
import { createAccount } from '../../../server/access/people/createAccount.ts';
import { openFeed } from '../../support/liveFeed.ts';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { settled, store } from '../strokes/strokeFixture.ts';
import { lentTo, newRoomOf, type RoomOfModel, strokesOf, trendOf } from './lentFixture.ts';

const service = serviceOfTests();
const dealer = dealerOfTests(service);

/** A model whose five rooms lend; nothing here changes them. */
const MODEL = 'Tarn 30';

beforeAll(async () => {
  await siblings(MODEL);
});

const AMPS = [9, 9.2, 8.8, 9.1, 8.9];
/** Eight strokes each way. */
const LEARNT = 16;
const ARRIVES = 40;

/** Rooms of one model that have learnt their normal. */
async function siblings(model: string, amps: readonly number[] = AMPS): Promise<RoomOfModel[]> {
  const rooms = await Promise.all(amps.map(() => newRoomOf(service, dealer.token, { model })));
  for (const [i, room] of rooms.entries()) await store(service, room, strokesOf(room, 0, LEARNT, amps[i]));
  for (const room of rooms) await settled(service, dealer.token, room.roomId);
  return rooms;
}

async function arrival(model: string, more: object = {}): Promise<RoomOfModel> {
  return newRoomOf(service, dealer.token, { model, ...more });
}

const patch = (path: string, body: object) => service.as(dealer.token, 'PATCH', path, body);

describe('a new arrival', () => {
  test('has a usable normal from its second stroke of a direction, and says how much is borrowed', async () => {
    const room = await arrival('  tarn 30 ');
    await store(service, room, strokesOf(room, ARRIVES, 1));
    expect(await settled(service, dealer.token, room.roomId)).toMatchObject({ verdict: 'learning' });
    await store(service, room, strokesOf(room, ARRIVES + 1, 3));
    const status = await settled(service, dealer.token, room.roomId);
    expect(status).toMatchObject({ verdict: 'clear', borrowed: { rooms: AMPS.length } });
    expect(status.headline).toContain('Judged by others of the same model');
    expect(status.borrowed.share).toBeGreaterThan(0);
    expect(status.borrowed.share).toBeLessThan(1);
    const { points, limits } = await trendOf(service, room);
    expect(points.map((point) => point.expected === null)).toEqual([true, false]);
    expect(points.map((point) => point.beyond)).toEqual([false, false]);
    expect(limits?.lower).toBeLessThan(points[1].adjusted ?? 0);
    expect(limits?.upper).toBeGreaterThan(points[1].adjusted ?? 0);
    const overview = await service.as(dealer.token, 'GET', '/overview?limit=500');
    const coach = overview.body.items.find((item: { id: string }) => item.id === room.coachId);
    expect(coach.rooms[0].borrowed).toEqual(status.borrowed);
  });

  test('that draws far more than its model on one side is heavy within eight strokes', async () => {
    const room = await arrival(MODEL);
    await store(service, room, strokesOf(room, ARRIVES, 8, 9, { front: 1.4 }));
    expect(await settled(service, dealer.token, room.roomId)).toMatchObject({ verdict: 'service' });
    const { body } = await service.as(dealer.token, 'GET', `/rooms/${room.roomId}/warnings`);
    expect(body.items).toMatchObject([{ kind: 'heavy-room', side: 'front' }]);
  });

  test.each([
    { name: 'another drive', more: { drive: 'cable' } },
    { name: 'other sides', more: { sides: ['rear', 'front'] } },
    { name: 'no model', more: { model: null } },
  ])('borrows nothing across $name', async ({ more }) => {
    const room = await arrival(MODEL, more);
    await store(service, room, strokesOf(room, ARRIVES, 4));
    expect(await settled(service, dealer.token, room.roomId)).toMatchObject({
      verdict: 'learning',
      borrowed: null,
    });
  });

  test('borrows from rooms of its own name where there are enough of them', async () => {
    await siblings('Holt 33');
    const bedrooms = await Promise.all([5, 5.1, 4.9].map(() => arrival('Holt 33', { name: 'Bedroom' })));
    for (const room of bedrooms) await store(service, room, strokesOf(room, 0, LEARNT, 5));
    for (const room of bedrooms) await settled(service, dealer.token, room.roomId);
    const room = await arrival('Holt 33', { name: ' BEDROOM ' });
    await store(service, room, strokesOf(room, ARRIVES, 2, 5));
    expect(await settled(service, dealer.token, room.roomId)).toMatchObject({ borrowed: { rooms: 3 } });
  });

  test('borrows from all of its model where no more than two have its name', async () => {
    await siblings('Wold 33', AMPS.slice(0, 3));
    const bedrooms = await Promise.all([9, 9.1].map(() => arrival('Wold 33', { name: 'Bedroom' })));
    for (const room of bedrooms) await store(service, room, strokesOf(room, 0, LEARNT, 9));
    for (const room of bedrooms) await settled(service, dealer.token, room.roomId);
    const room = await arrival('Wold 33', { name: 'Bedroom' });
    await store(service, room, strokesOf(room, ARRIVES, 2));
    expect(await settled(service, dealer.token, room.roomId)).toMatchObject({ borrowed: { rooms: 5 } });
  });
});

test("another account's rooms never lend", async () => {
  const stranger = { email: 'stranger@example.com', name: 'A stranger', password: 'a stranger at the gate' };
  await createAccount(service.db, { ...stranger, accountName: 'Strangers' });
  const theirs = await service.signIn(stranger.email, stranger.password);
  const room = await newRoomOf(service, theirs, { model: MODEL });
  await store(service, room, strokesOf(room, ARRIVES, 4));
  expect(await settled(service, theirs, room.roomId)).toMatchObject({ verdict: 'learning', borrowed: null });
  const { rows } = await service.pool.query(
    'select count(*)::int as n from lent_normals where room_id = $1 and learnt_at is not null',
    [room.roomId],
  );
  expect(rows[0].n).toBe(0);
});

test('whoever sees a coach by a grant is told how much is borrowed, and nowhere from how many', async () => {
  const room = await arrival(MODEL);
  await store(service, room, strokesOf(room, ARRIVES, 4));
  const own = await settled(service, dealer.token, room.roomId);
  const visitor = await service.newAccount();
  const granted = { email: visitor.email, role: 'technician' };
  await service.as(dealer.token, 'POST', `/coaches/${room.coachId}/grants`, granted);
  const path = `/rooms/${room.roomId}/status`;
  const seen = (await service.as(visitor.token, 'GET', path)).body;
  expect(seen.borrowed).toEqual({ share: own.borrowed.share, rooms: null });
  expect(seen.headline).toBe(own.headline);
  expect(seen.headline).toContain('Judged by others of the same model');
  const [coach] = (await service.as(visitor.token, 'GET', '/overview')).body.items;
  expect(coach.rooms[0]).toMatchObject(seen);
  const headers = { accept: 'text/csv' };
  const csv = await service.request('GET', '/overview', { token: visitor.token, headers });
  expect(csv.text).toContain(seen.headline);
  expect((await service.request('GET', '/overview', { token: dealer.token, headers })).text).toContain(
    own.headline,
  );

  const feeds = await Promise.all(
    [visitor.token, dealer.token].map((each) => openFeed(service.url, { authorization: `Bearer ${each}` })),
  );
  const told: unknown[] = [];
  for (const feed of feeds) {
    feed.say({ type: 'watch', roomId: room.roomId });
    told.push((await feed.next('status')).status);
  }
  expect(told).toEqual([seen, own]);
  await store(service, room, strokesOf(room, ARRIVES + 4, 1));
  for (const [i, feed] of feeds.entries()) {
    let { status } = await feed.next('status');
    while (status.strokes < 5 || status.pending > 0) status = (await feed.next('status')).status;
    expect(status.borrowed?.rooms).toBe([null, 5][i]);
    feed.close();
  }
});

describe('what is lent changes', () => {
  test('with the model of the coach that borrows', async () => {
    const room = await arrival('Croft 26');
    await store(service, room, strokesOf(room, ARRIVES, 4));
    expect(await settled(service, dealer.token, room.roomId)).toMatchObject({
      verdict: 'learning',
      borrowed: null,
    });
    await patch(`/coaches/${room.coachId}`, { model: 'TARN 30' });
    expect(await settled(service, dealer.token, room.roomId)).toMatchObject({
      verdict: 'clear',
      borrowed: { rooms: 5 },
    });
    await patch(`/coaches/${room.coachId}`, { model: null });
    expect(await settled(service, dealer.token, room.roomId)).toMatchObject({
      verdict: 'learning',
      borrowed: null,
    });
  });

  test('with a sibling that is given another model, loses it, or is removed', async () => {
    const rooms = await siblings('Dene 29');
    const room = await arrival('Dene 29');
    await store(service, room, strokesOf(room, ARRIVES, 4));
    await settled(service, dealer.token, room.roomId);
    await patch(`/coaches/${rooms[0].coachId}`, { model: 'Dene 31' });
    await lentTo(service, room, 4);
    await patch(`/coaches/${rooms[1].coachId}`, { model: null });
    await lentTo(service, room, 3);
    await service.as(dealer.token, 'DELETE', `/rooms/${rooms[2].roomId}`);
    // Two tell too little of how rooms of the model differ: its own strokes weigh all but everything, and a third is needed.
    await lentTo(service, room, 0);
    const { verdict, headline } = await settled(service, dealer.token, room.roomId);
    expect([verdict, headline]).toEqual(['learning', expect.stringContaining('2 of 3 strokes out')]);
  });

  test('with a stroke of a sibling that is set aside, and back when it is not', async () => {
    const rooms = await siblings('Beck 27');
    const room = await arrival('Beck 27');
    await store(service, room, strokesOf(room, ARRIVES, 4));
    const before = await settled(service, dealer.token, room.roomId);
    const { body } = await service.as(
      dealer.token,
      'GET',
      `/rooms/${rooms[0].roomId}/strokes?direction=extend`,
    );
    const stroke = body.items[0].id;
    await patch(`/strokes/${stroke}`, { excluded: true });
    await settled(service, dealer.token, rooms[0].roomId);
    await lentTo(service, room, 5);
    const { rows } = await service.pool.query(
      'select count(*)::int as n from lent_normals where room_id = $1 and learnt_at is null',
      [rooms[0].roomId],
    );
    expect(rows[0].n).toBe(2);
    await patch(`/strokes/${stroke}`, { excluded: false });
    await settled(service, dealer.token, rooms[0].roomId);
    expect(await settled(service, dealer.token, room.roomId)).toEqual(before);
  });
});

test('a room that learnt before the others keeps its results whatever they come to lend', async () => {
  const [first] = await siblings('Mere 35', [9]);
  const before = await trendOf(service, first);
  const { rows } = await service.pool.query('select revision from room_progress where room_id = $1', [
    first.roomId,
  ]);
  await siblings('Mere 35');
  expect(await trendOf(service, first)).toEqual(before);
  const after = await service.pool.query('select revision from room_progress where room_id = $1', [
    first.roomId,
  ]);
  expect(after.rows).toEqual(rows);
});
