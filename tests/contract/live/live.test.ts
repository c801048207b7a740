import { randomUUID } from 'node:crypto';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { type LiveFeed, openFeed } from '../../support/liveFeed.ts';
import { type Member, startService } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests, newFleet, newRoom, store, strokeBody } from '../strokes/strokeFixture.ts';

const NOT_SIGNED_IN = 4401;
const GOING_AWAY = 1001;
const POLICY = 1008;

const service = serviceOfTests();
const fleet = fleetOfTests(service);
let stranger: Member;
let feeds: LiveFeed[] = [];

beforeAll(async () => {
  stranger = await service.newAccount();
});
afterEach(() => {
  for (const feed of feeds) feed.close();
  feeds = [];
});

async function open(
  headers: Record<string, string> = { authorization: `Bearer ${fleet.token}` },
): Promise<LiveFeed> {
  const feed = await openFeed(service.url, headers);
  feeds.push(feed);
  return feed;
}

async function watching(roomId: string, of: string = fleet.token): Promise<LiveFeed> {
  const feed = await open({ authorization: `Bearer ${of}` });
  feed.say({ type: 'watch', roomId });
  expect(await feed.next()).toMatchObject({ type: 'status', roomId });
  return feed;
}

describe('a watched room', () => {
  test('is told as it stands, then with each stroke and what follows from it', async () => {
    const roomId = await newRoom(service, fleet.token, fleet.coachId);
    const feed = await open();
    feed.say({ type: 'watch', roomId });
    const first = await feed.next('status');
    expect(first.status).toMatchObject({ strokes: 0, pending: 0, verdict: 'learning' });
    const [strokeId] = await store(service, { ...fleet, roomId }, [
      strokeBody(roomId, 2, 9, { key: randomUUID() }),
    ]);
    const pushed = await feed.next('stroke');
    const read = await service.as(fleet.token, 'GET', `/strokes/${strokeId}`);
    expect(pushed).toEqual({ type: 'stroke', roomId, stroke: read.body });
    expect((await feed.next('status')).status).toMatchObject({ strokes: 1, pending: 0 });
  });

  test('is told of a stroke that could not be measured in the words in which it is read', async () => {
    const roomId = await newRoom(service, fleet.token, fleet.coachId);
    const feed = await watching(roomId);
    const sides = [{ side: 'front', rateHz: 50, amps: [0, 0, 0] }];
    const [strokeId] = await store(service, { ...fleet, roomId }, [
      strokeBody(roomId, 0, 9, { key: randomUUID(), sides }),
    ]);
    const pushed = await feed.next('stroke');
    const read = await service.as(fleet.token, 'GET', `/strokes/${strokeId}`);
    expect(pushed.stroke.analysis?.status).toBe('unusable');
    expect(pushed).toEqual({ type: 'stroke', roomId, stroke: read.body });
  });

  test('tells of a warning in the words of the list', async () => {
    const coach = await newFleet(service, fleet.token);
    await service.as(fleet.token, 'PATCH', `/rooms/${coach.roomId}`, { ratedAmps: 6 });
    const feed = await watching(coach.roomId);
    await store(
      service,
      coach,
      Array.from({ length: 8 }, (_, day) => strokeBody(coach.roomId, day, 16)),
    );
    const { warning } = await feed.next('warning');
    expect(warning).toMatchObject({ roomId: coach.roomId, state: 'open', headline: expect.any(String) });
  });

  test('is told once of each stroke, to everybody who watches', async () => {
    const coach = await newFleet(service, fleet.token);
    const both = [await watching(coach.roomId), await watching(coach.roomId)];
    const ids: string[] = [];
    for (const day of [0, 1]) {
      ids.push(...(await store(service, coach, [strokeBody(coach.roomId, day)])));
      for (const feed of both) expect((await feed.next('stroke')).stroke.id).toBe(ids[day]);
    }
  });

  test('is told of no more once it is not watched', async () => {
    const coach = await newFleet(service, fleet.token);
    const other = await newFleet(service, fleet.token);
    const feed = await watching(coach.roomId);
    const witness = await watching(coach.roomId);
    feed.say({ type: 'unwatch', roomId: coach.roomId });
    feed.say({ type: 'watch', roomId: other.roomId });
    await feed.next('status');
    await store(service, coach, [strokeBody(coach.roomId, 0)]);
    await witness.next('stroke');
    await store(service, other, [strokeBody(other.roomId, 0)]);
    expect((await feed.next()).roomId).toBe(other.roomId);
  });

  test('is told of what another process worked out', async () => {
    const feed = await watching(fleet.roomId);
    await service.pool.query('select pg_notify($1, $2)', [
      'room_results',
      `${stranger.person.accountId} ${fleet.roomId}`,
    ]);
    const { rows } = await service.pool.query('select account_id from rooms where id = $1', [fleet.roomId]);
    await service.pool.query('select pg_notify($1, $2)', ['room_results', 'nonsense']);
    await service.pool.query('select pg_notify($1, $2)', [
      'room_results',
      `${rows[0].account_id} ${fleet.roomId}`,
    ]);
    expect(await feed.next()).toMatchObject({ type: 'status', roomId: fleet.roomId });
  });
});

describe('a warning that is acknowledged', () => {
  test('is pushed as it stands then, whether one was or many were', async () => {
    const coach = await newFleet(service, fleet.token);
    await service.as(fleet.token, 'PATCH', `/rooms/${coach.roomId}`, { ratedAmps: 6 });
    const feed = await watching(coach.roomId);
    await store(
      service,
      coach,
      Array.from({ length: 8 }, (_, day) => strokeBody(coach.roomId, day, 16)),
    );
    const { warning } = await feed.next('warning');
    await service.as(fleet.token, 'POST', `/warnings/${warning.id}/acknowledgement`, { note: 'Seen.' });
    for (;;) {
      const push = await feed.next('warning');
      if (push.warning.id === warning.id && push.warning.state === 'acknowledged') break;
    }
  });
});

describe('who may open it', () => {
  test('a session cookie from our own page, and none from another', async () => {
    const cookie = `session=${fleet.token}`;
    const feed = await open({ cookie, origin: service.url });
    feed.say({ type: 'watch', roomId: fleet.roomId });
    expect((await feed.next()).type).toBe('status');
    const others: readonly Record<string, string>[] = [
      { origin: 'https://elsewhere.example.com' },
      { origin: 'null' },
      { 'sec-fetch-site': 'cross-site' },
    ];
    for (const foreign of others) {
      const theirs = await open({ cookie, ...foreign });
      theirs.say({ type: 'watch', roomId: fleet.roomId });
      expect(await theirs.next()).toMatchObject({ type: 'problem', status: 401 });
      expect(await theirs.closed).toBe(NOT_SIGNED_IN);
    }
  });

  test('a token from a page of another site, with the request or in the first message', async () => {
    const origin = 'https://elsewhere.example.com';
    const cookie = `session=${stranger.token}`;
    const byHeader = await open({ authorization: `Bearer ${fleet.token}`, cookie, origin });
    const byMessage = await open({ cookie, origin });
    byMessage.say({ type: 'hello', token: fleet.token });
    for (const feed of [byHeader, byMessage]) {
      feed.say({ type: 'watch', roomId: fleet.roomId });
      expect((await feed.next()).type).toBe('status');
    }
    await expect(open({ authorization: 'Bearer slp_nonsense', origin })).rejects.toThrow('401');
  });

  test.each([
    ['a token that is none', () => 'slp_nonsense'],
    ["a logger's token", () => fleet.loggerToken],
  ])('not %s', async (_, of) => {
    await expect(open({ authorization: `Bearer ${of()}` })).rejects.toThrow('401');
    const feed = await open({});
    feed.say({ type: 'token', token: of() });
    expect(await feed.next('problem')).toMatchObject({ problem: { status: 401 } });
    expect(await feed.closed).toBe(NOT_SIGNED_IN);
  });

  test('a token as the first message, and nothing before it', async () => {
    const feed = await open({});
    feed.say({ type: 'token', token: fleet.token });
    feed.say({ type: 'watch', roomId: fleet.roomId });
    expect((await feed.next()).type).toBe('status');
    const hasty = await open({});
    hasty.say({ type: 'watch', roomId: fleet.roomId });
    expect(await hasty.next('problem')).toMatchObject({ problem: { status: 401 } });
    expect(await hasty.closed).toBe(NOT_SIGNED_IN);
  });

  test("a stranger's room is answered exactly as one that does not exist", async () => {
    const feed = await open({ authorization: `Bearer ${stranger.token}` });
    const answers = [];
    for (const roomId of [fleet.roomId, randomUUID()]) {
      feed.say({ type: 'watch', roomId });
      const answer = await feed.next('problem');
      expect(answer.roomId).toBe(roomId);
      answers.push(answer.problem);
    }
    expect(answers[0]).toMatchObject({ status: 404, type: '/problems/not-found' });
    expect(answers[1]).toEqual(answers[0]);
  });

  test('a session that ended hears nothing more', async () => {
    const coach = await newFleet(service, fleet.token);
    const ending = await service.signIn();
    const feed = await watching(coach.roomId, ending);
    expect((await service.as(ending, 'DELETE', '/session')).status).toBe(204);
    await store(service, coach, [strokeBody(coach.roomId, 0)]);
    expect(await feed.next()).toMatchObject({ type: 'problem', problem: { status: 401 } });
    expect(await feed.closed).toBe(NOT_SIGNED_IN);
    await expect(feed.next()).rejects.toThrow('closed');
  });
});

describe('hostile messages', () => {
  test.each<[string, unknown, number]>([
    ['no JSON', 'watch please', 400],
    ['an empty text', '', 400],
    ['bytes', new Uint8Array([0xff, 0x00, 0x80]), 415],
    ['null', 'null', 422],
    ['a number', '1e999', 422],
    ['a list', [], 422],
    ['a type that is none', { type: 'shout' }, 422],
    ['a type of another kind', { type: { toString: 1 } }, 422],
    ['a prototype', '{"__proto__": {"type": "watch"}}', 422],
    ['a room that is none', { type: 'watch', roomId: "' or 1=1 --" }, 422],
    ['a room that is text with a zero', { type: 'watch', roomId: '\u0000' }, 422],
    ['a deep nest', '['.repeat(4000), 400],
    ['a long text', JSON.stringify({ type: 'watch', roomId: 'x'.repeat(5000) }), 413],
  ])('%s is answered with a problem, and the feed goes on', async (_, message, status) => {
    const feed = await open();
    feed.say(message);
    const answer = await feed.next();
    expect(answer).toMatchObject({ type: 'problem', problem: { status } });
    expect(JSON.stringify(answer)).not.toMatch(/invalid (?!field)|expected|received/i);
    feed.say({ type: 'watch', roomId: fleet.roomId });
    expect((await feed.next()).type).toBe('status');
  });

  test('a message beyond all bounds closes the socket, and only that', async () => {
    const feed = await open();
    feed.say('x'.repeat(2 * 1024 * 1024));
    expect(await feed.closed).toBeGreaterThan(1000);
    expect((await service.request('GET', '/healthz')).status).toBe(200);
  });

  test('too many rooms are refused, too many messages end it', async () => {
    const feed = await open({ authorization: `Bearer ${fleet.token}` });
    const rooms = await Promise.all(
      Array.from({ length: 51 }, () => newRoom(service, fleet.token, fleet.coachId)),
    );
    for (const roomId of rooms) feed.say({ type: 'watch', roomId });
    const refused = await feed.next('problem');
    expect([refused.roomId, refused.problem.status]).toEqual([rooms[50], 429]);
    for (let i = 0; i < 200; i++) feed.say({ type: 'unwatch', roomId: fleet.roomId });
    expect(await feed.closed).toBe(POLICY);
  });

  test('one person has so many pages open and no more', async () => {
    const member = await service.newAccount();
    const all = [];
    for (let i = 0; i < 33; i++) all.push(await open({ authorization: `Bearer ${member.token}` }));
    const one = await Promise.race(all.map(async (feed) => [await feed.next('problem'), await feed.closed]));
    expect(one).toEqual([expect.objectContaining({ status: 429 }), POLICY]);
    all[0].close();
    await all[0].closed;
    await open({ authorization: `Bearer ${member.token}` });
  });

  test('a plain request is told that this takes WebSockets', async () => {
    const answer = await service.as(fleet.token, 'GET', '/live');
    expect([answer.status, answer.body.type]).toEqual([426, '/problems/upgrade-required']);
    expect(answer.headers.get('upgrade')).toBe('websocket');
  });
});

test('a service that stops says so to its watchers, and ends in order', async () => {
  const stopping = await startService();
  const feed = await openFeed(stopping.url, { authorization: `Bearer ${await stopping.signIn()}` });
  const { coachId } = await newFleet(stopping, await stopping.signIn());
  feed.say({ type: 'watch', roomId: await newRoom(stopping, await stopping.signIn(), coachId) });
  await feed.next('status');
  await stopping.stop();
  expect(await feed.closed).toBe(GOING_AWAY);
});
