import { afterEach, beforeEach, expect, test } from 'vitest';
import { buildApp } from '../../../server/app.ts';
import { openDatabase } from '../../../server/database/openDatabase.ts';
import type { LiveSamples } from '../../../server/schemas/live.ts';
import { type LiveFeed, openFeed } from '../../support/liveFeed.ts';
import { type LoggerLink, openLink } from '../../support/loggerLink.ts';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { type Fleet, newFleet } from '../strokes/strokeFixture.ts';
import { type LiveStroke, liveStroke, sayAll, sayPieces } from './liveFixture.ts';

const service = serviceOfTests();
const dealer = dealerOfTests(service);
let fleet: Fleet;
let opened: { close?(): void; drop?(): Promise<number> }[] = [];

beforeEach(async () => {
  fleet = await newFleet(service, dealer.token);
});
afterEach(() => {
  for (const each of opened) void (each.close?.() ?? each.drop?.());
  opened = [];
});

async function watching(
  roomId: string,
  url: string = service.url,
  of: string = dealer.token,
): Promise<LiveFeed> {
  const feed = await openFeed(url, { authorization: `Bearer ${of}` });
  opened.push(feed);
  feed.say({ type: 'watch', roomId });
  await feed.next('status');
  return feed;
}

async function linked(url: string = service.url): Promise<LoggerLink> {
  const link = await openLink(url, fleet.loggerToken);
  opened.push(link);
  return link;
}

/** Hears of a stroke until all of its samples were told; fails where one was told twice or in the wrong place. */
async function hear(feed: LiveFeed, stroke: LiveStroke): Promise<LiveSamples[]> {
  const heard: LiveSamples[] = [];
  const told = new Map(stroke.sides.map(({ side }) => [side, [] as (number | null)[]]));
  while (stroke.sides.some(({ side, amps }) => (told.get(side)?.length ?? 0) < amps.length)) {
    const push = await feed.next('samples');
    heard.push(push);
    if (push.side === null) throw new Error('This stroke has no supply.');
    const amps = told.get(push.side);
    expect(push.startsAtS).toBe((amps?.length ?? 0) / push.rateHz);
    amps?.push(...push.amps);
  }
  for (const { side, amps } of stroke.sides) expect(told.get(side)).toEqual(amps);
  return heard;
}

test('whoever watches a room sees the samples as they are committed, and then the stroke', async () => {
  const stroke = liveStroke(fleet, 2);
  const feed = await watching(fleet.roomId);
  const strokeId = await sayAll(await linked(), stroke);
  const [first] = await hear(feed, stroke);
  expect(first).toMatchObject({
    roomId: fleet.roomId,
    strokeId,
    key: stroke.key,
    direction: 'extend',
    startedAt: '2026-03-03T09:30:00.000Z',
    side: 'front',
    rateHz: 50,
    startsAtS: 0,
  });
  expect((await feed.next('stroke')).stroke.id).toBe(strokeId);
});

test('one that comes in the midst is told of the beginning too, each sample once', async () => {
  const stroke = liveStroke(fleet, 4);
  const early = await watching(fleet.roomId);
  const link = await linked();
  link.say(stroke.begin);
  await sayPieces(link, stroke.pieces.slice(0, 15));
  const late = await watching(fleet.roomId);
  await sayPieces(link, stroke.pieces.slice(15));
  await hear(early, stroke);
  const [first] = await hear(late, stroke);
  // All that was there by then in one push, and whatever came while it was read.
  expect(first).toMatchObject({ side: 'front', startsAtS: 0 });
  expect(first.seq).toBeGreaterThanOrEqual(14);
});

test('another process on the same database pushes them too', async () => {
  const { pool, db } = openDatabase(service.databaseUrl, 4);
  const app = await buildApp({ pool, db });
  const url = await app.listen({ port: 0, host: '127.0.0.1' });
  const stroke = liveStroke(fleet, 6);
  const feed = await watching(fleet.roomId, url);
  await sayAll(await linked(), stroke);
  await hear(feed, stroke);
  await app.close();
  await pool.end();
});

test('nobody hears of a room that is not theirs to see', async () => {
  const other = await newFleet(service, dealer.token);
  const feed = await watching(other.roomId);
  const witness = await watching(fleet.roomId);
  const stroke = liveStroke(fleet, 8);
  await sayAll(await linked(), stroke);
  await hear(witness, stroke);
  const own = liveStroke(other, 10);
  const link = await openLink(service.url, other.loggerToken);
  opened.push(link);
  await sayAll(link, own);
  const [first] = await hear(feed, own);
  expect(first.roomId).toBe(other.roomId);
});

test('missed samples are nulls, the supply comes as volts', async () => {
  const feed = await watching(fleet.roomId);
  const link = await linked();
  const { key, begin } = liveStroke(fleet, 12);
  link.say({ ...begin, supply: { rateHz: 10 } });
  link.say({ type: 'samples', key, seq: 0, side: 'rear', amps: [1, null] });
  expect(await feed.next('samples')).toMatchObject({ side: 'rear', seq: 0, amps: [1, null] });
  link.say({ type: 'samples', key, seq: 1, volts: [12.5, 12.25] });
  link.say({ type: 'samples', key, seq: 2, volts: [12] });
  const first = await feed.next('samples');
  expect(first).toMatchObject({ side: null, rateHz: 10, startsAtS: 0 });
  link.say({ type: 'samples', key, seq: 3, volts: [null] });
  let latest = await feed.next('samples');
  while (latest.seq < 3) latest = await feed.next('samples');
  expect('volts' in latest && latest.volts.at(-1)).toBeNull();
});
