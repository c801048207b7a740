import { beforeEach, expect, test } from 'vitest';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { type Fleet, newFleet, newRoom, settled, store, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const dealer = dealerOfTests(service);
let fleet: Fleet;

beforeEach(async () => {
  fleet = await newFleet(service, dealer.token);
});

const setSides = (sides: string[], roomId = fleet.roomId) =>
  service.as(dealer.token, 'PATCH', `/rooms/${roomId}`, { sides });

function refused(answer: Awaited<ReturnType<typeof setSides>>, named: string): void {
  expect([answer.status, answer.body.type]).toEqual([409, '/problems/conflict']);
  expect(answer.body.errors).toEqual([
    { pointer: '/sides', detail: `Strokes of this room name ${named}: it must keep what they name.` },
  ]);
}

test('sides that strokes name stay; others are added, turned about and taken away again', async () => {
  await store(service, fleet, [strokeBody(fleet.roomId, 0)]);
  await settled(service, dealer.token, fleet.roomId);
  const status = async () => (await service.as(dealer.token, 'GET', `/rooms/${fleet.roomId}/status`)).body;
  const before = await status();
  refused(await setSides(['left', 'right']), 'front, rear');
  refused(await setSides(['rear', 'right']), 'front');
  expect(await status()).toEqual(before);
  expect((await setSides(['rear', 'middle', 'front'])).body.sides).toEqual(['rear', 'middle', 'front']);
  expect((await setSides(['front', 'rear'])).body.sides).toEqual(['front', 'rear']);
  await settled(service, dealer.token, fleet.roomId);
  expect((await status()).headline).toBe(before.headline);
});

test('a room without strokes has any sides, whatever other rooms have', async () => {
  const empty = await newRoom(service, dealer.token, fleet.coachId);
  await store(service, fleet, [strokeBody(fleet.roomId, 0)]);
  expect((await setSides(['left', 'right'], empty)).body.sides).toEqual(['left', 'right']);
});

test('a stroke that is still under way keeps its sides too', async () => {
  const header = { sides: [{ side: 'rear', rateHz: 50 }] };
  await service.pool.query(
    `insert into live_strokes (account_id, id, logger_id, key, room_id, header, link_id)
     select account_id, gen_random_uuid(), id, 'under way', $2, $3, gen_random_uuid() from loggers where id = $1`,
    [fleet.loggerId, fleet.roomId, header],
  );
  refused(await setSides(['front']), 'rear');
  expect((await setSides(['rear'])).status).toBe(200);
});

test('a stroke that is being stored at this very moment is waited for', async () => {
  const storing = await service.pool.connect();
  try {
    await storing.query('begin');
    await storing.query(
      `insert into strokes (account_id, id, room_id, sender_id, logger_id, key, started_at, placed_at, placed_by,
         recorded_sides, has_supply)
       select account_id, gen_random_uuid(), $2, id, id, 'being stored', now(), now(), 'sender', '{front,rear}', false
       from loggers where id = $1`,
      [fleet.loggerId, fleet.roomId],
    );
    const changing = setSides(['left', 'right']);
    await Promise.race([changing, somebodyWaits()]);
    await storing.query('commit');
    refused(await changing, 'front, rear');
  } finally {
    storing.release();
  }
});

/** Ends once a statement waits for the strokes' table. */
async function somebodyWaits(): Promise<void> {
  for (;;) {
    const { rows } = await service.pool.query(
      "select from pg_locks where not granted and relation = 'strokes'::regclass",
    );
    if (rows.length > 0) return;
  }
}
