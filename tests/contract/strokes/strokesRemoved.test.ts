import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { openLink } from '../../support/loggerLink.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';
import { liveStroke, sayAll, sayPieces } from '../live/liveFixture.ts';
import { type Fleet, fleetOfTests, newFleet, newRoom, send, strokeBody } from './strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

const stroke = (more: object = {}) => strokeBody(fleet.roomId, 0, 9, { key: randomUUID(), ...more });

async function remove(strokeId: string): Promise<void> {
  expect((await service.as(fleet.token, 'DELETE', `/strokes/${strokeId}`)).status).toBe(204);
}

async function strokesOf(key: string): Promise<string[]> {
  const { rows } = await service.pool.query<{ id: string }>('select id from strokes where key = $1', [key]);
  return rows.map(({ id }) => id);
}

async function removedOf(key: string): Promise<number> {
  return (await service.pool.query('select from removed_strokes where key = $1', [key])).rowCount ?? 0;
}

test.each([
  ['a logger', () => fleet.loggerToken],
  ['a person', () => fleet.token],
])('sent again by %s, a removed stroke is a duplicate and stays away', async (_, sender) => {
  const [body, other] = [stroke(), stroke()];
  const [{ strokeId }] = (await send(service, sender(), body)).body.results;
  await remove(strokeId);
  const again = { key: body.key, strokeId, outcome: 'duplicate' };
  expect((await send(service, sender(), body)).body.results).toEqual([again]);
  const { results } = (await send(service, sender(), [body, other, { ...body, ambientC: 3 }])).body;
  expect([results[0], results[1].outcome, results[2]]).toEqual([again, 'stored', again]);
  expect(await strokesOf(body.key)).toEqual([]);
  expect((await service.as(fleet.token, 'GET', `/strokes/${strokeId}`)).status).toBe(404);
});

test('the same key of another sender is another stroke still', async () => {
  const body = stroke();
  const [{ strokeId }] = (await send(service, fleet.loggerToken, body)).body.results;
  await remove(strokeId);
  expect((await send(service, fleet.token, body)).body.results[0].outcome).toBe('stored');
});

test('sent again while it is being removed, it is a duplicate as well', async () => {
  const body = stroke();
  const [{ strokeId }] = (await send(service, fleet.loggerToken, body)).body.results;
  const { rows } = await service.pool.query('select account_id from strokes where id = $1', [strokeId]);
  const client = await service.pool.connect();
  try {
    // As the service removes it, stopped before its end.
    await client.query('begin');
    await client.query(
      `insert into removed_strokes (account_id, sender_id, key, stroke_id, coach_id, logger_id)
       select account_id, sender_id, key, id, $3, logger_id from strokes where account_id = $1 and id = $2`,
      [rows[0].account_id, strokeId, fleet.coachId],
    );
    await client.query('delete from strokes where account_id = $1 and id = $2', [
      rows[0].account_id,
      strokeId,
    ]);
    const beside = stroke();
    const sent = send(service, fleet.loggerToken, [body, beside]);
    await untilSomebodyWaits(client);
    await client.query('commit');
    expect((await sent).body.results).toMatchObject([
      { key: body.key, strokeId, outcome: 'duplicate' },
      { key: beside.key, outcome: 'stored' },
    ]);
    expect(await strokesOf(body.key)).toEqual([]);
  } finally {
    client.release();
  }
});

test('however removing and sending again meet, it stays away', async () => {
  const bodies = Array.from({ length: 12 }, () => stroke());
  const { results } = (await send(service, fleet.loggerToken, bodies)).body;
  const removed = results.map(({ strokeId }: { strokeId: string }) => remove(strokeId));
  const sent = bodies.flatMap((body) => [1, 2, 3].map(() => send(service, fleet.loggerToken, body)));
  await Promise.all(removed);
  const outcomes = (await Promise.all(sent)).map((answer) => answer.body.results[0].outcome);
  expect(new Set(outcomes)).toEqual(new Set(['duplicate']));
  for (const { key } of bodies) expect(await strokesOf(key)).toEqual([]);
});

test('live it is answered as stored, when it begins and when it ends', async () => {
  const live = liveStroke(fleet);
  const link = await openLink(service.url, fleet.loggerToken);
  const strokeId = await sayAll(link, live);
  await remove(strokeId);
  link.say(live.begin);
  expect(await link.next()).toMatchObject({ type: 'stored', key: live.key, strokeId });

  // Sent whole and removed while a link brought it too.
  const other = liveStroke(fleet, 2);
  link.say(other.begin);
  await sayPieces(link, other.pieces);
  const [sent] = (await send(service, fleet.loggerToken, stroke({ key: other.key }))).body.results;
  await remove(sent.strokeId);
  link.say(other.end);
  expect(await link.next()).toMatchObject({ type: 'stored', key: other.key, strokeId: sent.strokeId });
  expect([await strokesOf(live.key), await strokesOf(other.key)]).toEqual([[], []]);
  await link.drop();
});

test('what was removed is forgotten with its logger or its coach, and not kept once the logger is gone', async () => {
  const mine = await newFleet(service, fleet.token);
  const [byLogger, byPerson, late] = [1, 2, 3].map(() =>
    strokeBody(mine.roomId, 0, 9, { key: randomUUID() }),
  );
  const sent = [
    ...(await send(service, mine.loggerToken, [byLogger, late])).body.results,
    ...(await send(service, fleet.token, byPerson)).body.results,
  ].map(({ strokeId }: { strokeId: string }) => strokeId);
  await remove(sent[0]);
  await remove(sent[2]);
  expect([await removedOf(byLogger.key), await removedOf(byPerson.key)]).toEqual([1, 1]);
  await service.as(fleet.token, 'DELETE', `/loggers/${mine.loggerId}`);
  await remove(sent[1]);
  expect([await removedOf(byLogger.key), await removedOf(late.key)]).toEqual([0, 0]);
  await service.pool.query('delete from coaches where id = $1', [mine.coachId]);
  expect(await removedOf(byPerson.key)).toBe(0);
});

describe('what went with its room', () => {
  /** A stroke of a room that is there still, which its sender means, and another room that it stands in. */
  async function moved(): Promise<{ mine: Fleet; body: { key: string }; strokeId: string; other: string }> {
    const mine = await newFleet(service, fleet.token);
    const other = await newRoom(service, fleet.token, mine.coachId);
    const body = strokeBody(mine.roomId, 0, 9, { key: randomUUID() });
    const [{ strokeId }] = (await send(service, mine.loggerToken, body)).body.results;
    const patch = { token: fleet.token, body: { roomId: other } };
    expect((await service.request('PATCH', `/strokes/${strokeId}`, patch)).status).toBe(200);
    return { mine, body, strokeId, other };
  }
  const removeRoom = async (id: string) =>
    expect((await service.as(fleet.token, 'DELETE', `/rooms/${id}`)).status).toBe(204);

  test.each([true, false])('stays away, removed by itself before: %s', async (byItself) => {
    const { mine, body, strokeId, other } = await moved();
    if (byItself) await remove(strokeId);
    await removeRoom(other);
    const again = { key: body.key, strokeId, outcome: 'duplicate' };
    expect((await send(service, mine.loggerToken, [body, body])).body.results).toEqual([again, again]);
    expect(await strokesOf(body.key)).toEqual([]);
    const link = await openLink(service.url, mine.loggerToken);
    link.say(liveStroke(mine, 0, body.key).begin);
    expect(await link.next()).toMatchObject({ type: 'stored', key: body.key, strokeId });
    await link.drop();
  });

  test('is a duplicate in that room, which is gone, and in another; a new key is rejected there as ever', async () => {
    const mine = await newFleet(service, fleet.token);
    const other = await newRoom(service, fleet.token, mine.coachId);
    const body = strokeBody(other, 0, 9, { key: randomUUID() });
    const [{ strokeId }] = (await send(service, mine.loggerToken, body)).body.results;
    await removeRoom(other);
    const nowhere = { ...body, key: randomUUID(), roomId: randomUUID() };
    const inRooms = [body, { ...body, roomId: mine.roomId }, { ...nowhere, roomId: other }, nowhere];
    const { results } = (await send(service, mine.loggerToken, inRooms)).body;
    expect(results).toMatchObject([
      { outcome: 'duplicate', strokeId },
      { outcome: 'duplicate', strokeId },
      { outcome: 'rejected', problem: { errors: [{ pointer: '/roomId' }] } },
      { outcome: 'rejected', problem: results[2].problem },
    ]);
    const link = await openLink(service.url, mine.loggerToken);
    link.say({ ...liveStroke(mine, 0, body.key).begin, roomId: other });
    expect(await link.next()).toMatchObject({ type: 'stored', key: body.key, strokeId });
    link.say({ ...liveStroke(mine, 0, nowhere.key).begin, roomId: other });
    expect(await link.next()).toMatchObject({ type: 'problem', status: 422, key: nowhere.key });
    await link.drop();
  });

  test('stays away however sending it again meets the removing of its room', async () => {
    const { mine, body, other } = await moved();
    const bodies = Array.from({ length: 8 }, () => strokeBody(other, 0, 9, { key: randomUUID() }));
    const removed = removeRoom(other);
    const sent = bodies.map((one) => send(service, mine.loggerToken, one));
    await removed;
    for (const [n, answer] of (await Promise.all(sent)).entries()) {
      const [{ outcome, strokeId }] = answer.body.results;
      const [repeated] = (await send(service, mine.loggerToken, bodies[n])).body.results;
      expect(repeated).toMatchObject(
        outcome === 'stored' ? { outcome: 'duplicate', strokeId } : { outcome: 'rejected' },
      );
      const elsewhere = { ...bodies[n], roomId: mine.roomId };
      const [again] = (await send(service, mine.loggerToken, elsewhere)).body.results;
      expect(again).toMatchObject(
        outcome === 'stored' ? { outcome: 'duplicate', strokeId } : { outcome: 'stored' },
      );
    }
    expect(await strokesOf(body.key)).toEqual([]);
  });
});
