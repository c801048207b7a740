import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';
import { type Fleet, fleetOfTests, newFleet, send, strokeBody } from '../strokes/strokeFixture.ts';
import { linksOf, liveStroke, sayAll, sayPieces, sidesOf } from './liveFixture.ts';

const NOT_SIGNED_IN = 4401;

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

const openFor = linksOf(() => service);
const open = (of: string | null = fleet.loggerToken, headers = {}) => openFor(of, headers);

test('a token with the first message, by itself or with the beginning', async () => {
  const stroke = liveStroke(fleet, 50);
  const link = await open(null);
  link.say({ type: 'hello', token: fleet.loggerToken });
  expect(await sidesOf(service, fleet.token, await sayAll(link, stroke))).toEqual(stroke.sides);
  const other = liveStroke(fleet, 51);
  const hasty = await open(null);
  hasty.say({ ...other.begin, token: fleet.loggerToken });
  await sayPieces(hasty, other.pieces.slice(0, 2));
});

test.each([{ type: 'auth' }, { type: 'hello' }, { type: null }, { type: 7 }, {}])(
  'a token in a first message %o, and nothing is said to it',
  async (greeting) => {
    const stroke = liveStroke(fleet, 52);
    const link = await open(null);
    link.say({ ...greeting, token: fleet.loggerToken });
    link.say(stroke.begin);
    link.say(stroke.pieces[0]);
    expect(await link.next()).toMatchObject({ type: 'ack', seq: 0 });
  },
);

test.each([
  ['a person', () => fleet.token],
  ['nobody', () => 'sll_nonsense'],
])('not %s', async (_, of) => {
  await expect(open(of())).rejects.toThrow('401');
  const link = await open(null);
  link.say({ type: 'hello', token: of() });
  expect(await link.next('problem')).toMatchObject({
    status: 401,
    problem: { type: '/problems/not-signed-in' },
  });
  expect(await link.closed).toBe(NOT_SIGNED_IN);
});

test('nobody without a token; a page of any site with one', async () => {
  const link = await open(null);
  link.say(liveStroke(fleet).begin);
  expect(await link.next('problem')).toMatchObject({ status: 401 });
  expect(await link.closed).toBe(NOT_SIGNED_IN);
  const { begin } = liveStroke(fleet);
  const origin = 'https://elsewhere.example.com';
  const byHeader = await open(fleet.loggerToken, { origin });
  byHeader.say(begin);
  byHeader.say(begin);
  expect(await byHeader.next()).toMatchObject({ type: 'resume', nextSeq: 0 });
  const byMessage = await open(null, { origin, cookie: `session=${fleet.token}` });
  byMessage.say({ ...begin, token: fleet.loggerToken });
  expect(await byMessage.next()).toMatchObject({ type: 'resume', nextSeq: 0 });
  const byCookie = await open(null, { origin, cookie: `session=${fleet.token}` });
  byCookie.say(begin);
  expect(await byCookie.next('problem')).toMatchObject({ status: 401 });
});

test('a logger is a stranger to the rooms of others, as to those that do not exist', async () => {
  const stranger = await newFleet(service, (await service.newAccount()).token);
  const sibling = await newFleet(service, fleet.token);
  const link = await open();
  const answers = [];
  for (const roomId of [stranger.roomId, sibling.roomId, randomUUID(), 'no id']) {
    link.say({ ...liveStroke(fleet).begin, key: 'same', roomId });
    answers.push(await link.next());
  }
  expect(answers[0]).toMatchObject({ type: 'problem', status: 422, errors: [{ pointer: '/roomId' }] });
  for (const answer of answers) expect(answer).toEqual(answers[0]);
});

/** A stroke of a coach of its own, of which two pieces were sent and kept. */
async function underWay() {
  const coach = await newFleet(service, fleet.token);
  const stroke = liveStroke(coach);
  const link = await open(coach.loggerToken);
  link.say(stroke.begin);
  await sayPieces(link, stroke.pieces.slice(0, 2));
  return { coach, stroke, link };
}

async function expectShutOut(link: Awaited<ReturnType<typeof open>>): Promise<void> {
  expect(await link.next()).toMatchObject({ type: 'problem', status: 401 });
  expect(await link.closed).toBe(NOT_SIGNED_IN);
}

test('a logger that was removed is shut out with its next piece', async () => {
  const { coach, stroke, link } = await underWay();
  const removed = await service.as(fleet.token, 'DELETE', `/loggers/${coach.loggerId}`);
  expect(removed.status).toBe(204);
  link.say(stroke.pieces[2]);
  await expectShutOut(link);
});

test('a coach that was deleted takes nothing more, and goes on where it was once it is restored', async () => {
  const { coach, stroke, link } = await underWay();
  expect((await service.as(fleet.token, 'DELETE', `/coaches/${coach.coachId}`)).status).toBe(204);
  link.say(stroke.pieces[2]);
  await expectShutOut(link);
  const restored = await service.as(fleet.token, 'POST', `/coaches/${coach.coachId}/restoration`, {});
  expect(restored.status).toBe(200);
  const again = await open(coach.loggerToken);
  again.say(stroke.begin);
  expect(await again.next()).toMatchObject({ type: 'resume', key: stroke.key, nextSeq: 2 });
});

test('a stroke that ends after its coach was deleted shuts its logger out', async () => {
  const { coach, stroke, link } = await underWay();
  expect((await service.as(fleet.token, 'DELETE', `/coaches/${coach.coachId}`)).status).toBe(204);
  link.say(stroke.end);
  await expectShutOut(link);
});

/** As a coach is deleted while a message is answered that waits for what `lock` holds. */
async function deletedBehind(
  coach: Fleet,
  lock: string,
  values: string[],
  message: () => void,
): Promise<void> {
  const client = await service.pool.connect();
  try {
    await client.query('begin');
    await client.query(lock, values);
    message();
    await untilSomebodyWaits(client);
    await client.query('update coaches set deleted_at = now() where id = $1', [coach.coachId]);
    await client.query('update rooms set deleted_at = now() where coach_id = $1', [coach.coachId]);
    await client.query('commit');
  } finally {
    client.release();
  }
}

test('a coach that is deleted while a stroke is taken up shuts its logger out', async () => {
  const { coach, stroke } = await underWay();
  const again = await open(coach.loggerToken);
  const held = 'select from live_strokes where key = $1 for update';
  await deletedBehind(coach, held, [stroke.key], () => again.say(stroke.begin));
  await expectShutOut(again);
});

test('a coach that is deleted while a stroke ends shuts its logger out, and nothing is stored', async () => {
  const coach = await newFleet(service, fleet.token);
  await send(service, coach.loggerToken, strokeBody(coach.roomId, 0));
  const stroke = liveStroke(coach, 1);
  const link = await open(coach.loggerToken);
  link.say(stroke.begin);
  await sayPieces(link, stroke.pieces.slice(0, 2));
  const held = 'select from room_progress where room_id = $1 for update';
  await deletedBehind(coach, held, [coach.roomId], () => link.say(stroke.end));
  await expectShutOut(link);
  const stored = 'select from strokes where key = $1';
  expect((await service.pool.query(stored, [stroke.key])).rowCount).toBe(0);
});

test('a room that was removed takes its strokes along, and the link goes on', async () => {
  const { coach, stroke, link } = await underWay();
  await service.as(fleet.token, 'DELETE', `/rooms/${coach.roomId}`);
  link.say(stroke.pieces[2]);
  expect(await link.next()).toMatchObject({ type: 'problem', key: stroke.key, status: 404 });
  link.say(stroke.begin);
  expect(await link.next()).toMatchObject({ type: 'problem', key: stroke.key, status: 422 });
});
