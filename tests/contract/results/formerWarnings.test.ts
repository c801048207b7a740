import { beforeAll, expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests, newRoom, send, settled, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const fleet = fleetOfTests(service);
let roomId: string;
/** By which the warning was known at first, and after each of two late strokes. */
let ids: string[];

const read = (id: string, token = fleet.token) => service.as(token, 'GET', `/warnings/${id}`);
const list = async (): Promise<{ id: string }[]> =>
  (await service.as(fleet.token, 'GET', `/rooms/${roomId}/warnings?state=all`)).body.items;
const former = async (): Promise<number> =>
  (await service.pool.query('select from former_warnings where room_id = $1', [roomId])).rowCount ?? 0;

/** Sends strokes of a room that draws three times what it may, and answers the one warning's id. */
async function heavy(...days: number[]): Promise<string> {
  const bodies = days.map((day) => strokeBody(roomId, day, 14));
  expect((await send(service, fleet.loggerToken, bodies)).status).toBe(200);
  await settled(service, fleet.token, roomId);
  const found = await list();
  expect(found).toMatchObject([{ kind: 'heavy-room' }]);
  return found[0].id;
}

beforeAll(async () => {
  roomId = await newRoom(service, fleet.token, fleet.coachId);
  await service.as(fleet.token, 'PATCH', `/rooms/${roomId}`, { ratedAmps: 3 });
  ids = [await heavy(10, 11, 12, 13), await heavy(8), await heavy(6)];
});

test('an id that was answered once leads to the warning that has its place', async () => {
  expect(new Set(ids).size).toBe(3);
  for (const id of ids) {
    const { status, body } = await read(id);
    expect([status, body.id]).toEqual([200, ids[2]]);
  }
});

test('it is acknowledged by it, one by one and among many', async () => {
  const { token } = fleet;
  const note = 'Booked for Friday.';
  const one = await service.as(token, 'POST', `/warnings/${ids[0]}/acknowledgement`, { note });
  expect([one.status, one.body.id, one.body.state]).toEqual([200, ids[2], 'acknowledged']);
  expect((await read(ids[2])).body.acknowledgement.note).toBe(note);
  await service.pool.query('update warnings set acknowledged_at = null where id = $1', [ids[2]]);
  const many = () => service.as(token, 'POST', '/acknowledgements', { warnings: [ids[1]] });
  expect((await many()).body).toEqual({ acknowledged: [ids[2]] });
  expect((await many()).body).toEqual({ acknowledged: [] });
});

test('whoever may see the coach reads it so, and nobody else', async () => {
  const guest = await service.newAccount();
  const { token } = guest;
  for (const id of ids) expect((await read(id, token)).status).toBe(404);
  const answer = await service.as(token, 'POST', '/acknowledgements', { warnings: ids });
  expect(answer.body).toEqual({ acknowledged: [] });
  await service.as(fleet.token, 'POST', `/coaches/${fleet.coachId}/grants`, {
    email: guest.email,
    role: 'technician',
  });
  for (const id of ids) expect((await read(id, token)).body.id).toBe(ids[2]);
  expect((await read(ids[0], fleet.loggerToken)).status).toBe(401);
});

test('what stands again goes by its own id, and what nothing took the place of is not there', async () => {
  const { body } = await service.as(fleet.token, 'GET', `/rooms/${roomId}/strokes`);
  const strokes: { id: string }[] = body.items;
  const remove = async (some: readonly { id: string }[]) => {
    for (const { id } of some) await service.as(fleet.token, 'DELETE', `/strokes/${id}`);
    await settled(service, fleet.token, roomId);
  };
  await remove(strokes.slice(-1));
  expect(await list()).toMatchObject([{ id: ids[1] }]);
  for (const id of ids) expect((await read(id)).body.id).toBe(ids[1]);
  await remove(strokes.slice(0, -1));
  expect(await list()).toEqual([]);
  for (const id of ids) expect((await read(id)).status).toBe(404);
});

test('a room leaves none behind', async () => {
  expect(await former()).toBe(3);
  await service.as(fleet.token, 'DELETE', `/rooms/${roomId}`);
  expect(await former()).toBe(0);
});
