import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { describe, expect, test } from 'vitest';
import { startService } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';
import { fleetOfTests, newFleet } from '../strokes/strokeFixture.ts';
import { linksOf, liveStroke, sayAll, sayPieces, sidesOf } from './liveFixture.ts';

const SILENT = 4408;
const POLICY = 1008;
const TOO_BIG = 1009;

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

const openFor = linksOf(() => service);
const open = (of: string = fleet.loggerToken, url: string = service.url) => openFor(of, {}, url);

const SIDES = [{ side: 'front', rateHz: 50 }];
const begin = (more: object = {}) => ({
  type: 'begin',
  key: randomUUID(),
  roomId: fleet.roomId,
  startedAt: '2026-05-02T16:20:11Z',
  sides: SIDES,
  ...more,
});

describe('messages that are none', () => {
  test.each<[string, () => unknown, number]>([
    ['no JSON', () => 'begin please', 400],
    ['an empty text', () => '', 400],
    ['bytes that are no CBOR', () => new Uint8Array([0xff, 0x00, 0x80]), 400],
    ['no bytes', () => new Uint8Array(0), 400],
    [
      'a length that is not there',
      () => new Uint8Array([0x5b, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff]),
      400,
    ],
    ['null', () => 'null', 422],
    ['a number', () => '1e999', 422],
    ['a list', () => [], 422],
    ['a type that is none', () => ({ type: 'shout' }), 422],
    ['no type', () => ({ key: 'x' }), 422],
    ['nothing for a type', () => ({ type: null }), 422],
    ['nothing at all', () => ({}), 422],
    ['a type of another kind', () => ({ type: { toString: 1 } }), 422],
    ['a prototype', () => '{"__proto__": {"type": "begin"}, "type": "constructor"}', 422],
    ['a deep nest', () => '['.repeat(100_000), 422],
    ['a beginning without anything', () => ({ type: 'begin' }), 422],
    ['a beginning without sides', () => begin({ sides: [] }), 422],
    ['sides that are none', () => begin({ sides: [null, 7] }), 422],
    ['a side without a rate', () => begin({ sides: [{ side: 'front' }] }), 422],
    ['a rate that is none', () => begin({ sides: [{ side: 'front', rateHz: 1e9 }] }), 422],
    ['times', () => begin({ sides: [{ side: 'front', rateHz: 50, t: [0, 1] }] }), 422],
    ['samples in the beginning', () => begin({ sides: [{ side: 'front', rateHz: 50, amps: [0, 1] }] }), 422],
    ['a side twice', () => begin({ sides: [...SIDES, ...SIDES] }), 422],
    ['a side that the room has not', () => begin({ sides: [{ side: 'left', rateHz: 50 }] }), 422],
    ['an empty key', () => begin({ key: '' }), 422],
    ['a key with a zero', () => begin({ key: 'a\0b' }), 422],
    ['half a character', () => `{"type":"begin","key":"\\ud800"}`, 422],
    ['a long key', () => begin({ key: 'k'.repeat(201) }), 422],
    ['a time that is none', () => begin({ startedAt: 'yesterday' }), 422],
    ['a field too many', () => begin({ colour: 'red' }), 422],
    ['a supply without a rate', () => begin({ supply: {} }), 422],
    ['a supply that is none', () => begin({ supply: 12 }), 422],
    ['a room with a zero', () => begin({ roomId: '\0' }), 422],
    [
      'samples before a beginning',
      () => ({ type: 'samples', key: 'never', seq: 0, side: 'front', amps: [1] }),
      409,
    ],
    ['an end before a beginning', () => ({ type: 'end', key: 'never' }), 409],
    ['an end without a key', () => ({ type: 'end', key: 7 }), 422],
  ])('%s is answered with a problem, and the link goes on', async (_, message, status) => {
    const link = await open();
    link.say(message());
    expect(await link.next()).toMatchObject({ type: 'problem', status, problem: { status } });
    const stroke = liveStroke(fleet);
    link.say(stroke.begin);
    await sayPieces(link, stroke.pieces.slice(0, 1));
  });

  test.each<[string, object]>([
    ['no seq', { seq: undefined }],
    ['a seq below zero', { seq: -1 }],
    ['half a seq', { seq: 0.5 }],
    ['a seq beyond all', { seq: 1e300 }],
    ['a text for a seq', { seq: '0' }],
    ['no side', { side: undefined }],
    ['a side that it did not begin with', { side: 'rear' }],
    ['no samples', { amps: undefined }],
    ['an empty piece', { amps: [] }],
    ['text for samples', { amps: ['1'] }],
    ['a text for all of them', { amps: '1,2,3' }],
    ['lightning', { amps: [1e6] }],
    ['too many samples', { amps: Array.from({ length: 200_001 }, () => 1) }],
    ['two forms', { milliamps: [1] }],
    ['volts with amperes', { volts: [12] }],
    ['volts without a supply', { side: undefined, amps: undefined, volts: [12] }],
    ['counts without a scale', { amps: undefined, counts: [1] }],
    ['a field too many', { colour: 'red' }],
  ])('%s in a piece is refused, and the stroke goes on with a sound one', async (_, fault) => {
    const link = await open();
    const { key, ...rest } = begin();
    link.say({ key, ...rest });
    const piece = { type: 'samples', key, seq: 0, side: 'front', amps: [1, 2] };
    link.say({ ...piece, ...fault });
    expect(await link.next()).toMatchObject({ type: 'problem', key, status: expect.any(Number) });
    link.say(piece);
    expect(await link.next()).toMatchObject({ type: 'ack', key, seq: 0 });
    link.say({ type: 'end', key });
    const { strokeId } = await link.next('stored');
    expect(await sidesOf(service, fleet.token, strokeId)).toEqual([
      { side: 'front', rateHz: 50, amps: [1, 2] },
    ]);
  });

  test('a stroke of no sample cannot end, and goes on', async () => {
    const link = await open();
    const { key, ...rest } = begin();
    link.say({ key, ...rest });
    link.say({ type: 'end', key });
    expect(await link.next()).toMatchObject({
      type: 'problem',
      key,
      status: 422,
      errors: [{ pointer: '/sides' }],
    });
    link.say({ type: 'samples', key, seq: 0, side: 'front', amps: [1] });
    link.say({ type: 'end', key });
    await link.next('stored');
  });

  test('a side holds so many samples and no more, on whatever links they came', async () => {
    const { key, ...rest } = begin();
    const most = (seq: number, samples: number) => ({
      type: 'samples',
      key,
      seq,
      side: 'front',
      amps: Array.from({ length: samples }, () => 1),
    });
    const link = await open();
    link.say({ key, ...rest });
    link.say(most(0, 150_000));
    await link.next('ack');
    await link.drop();
    const again = await open();
    again.say({ key, ...rest });
    await again.next('resume');
    again.say(most(1, 50_001));
    expect(await again.next()).toMatchObject({ type: 'problem', key, status: 422 });
    again.say(most(1, 50_000));
    expect(await again.next()).toMatchObject({ type: 'ack', seq: 1 });
  });

  test('one logger has so many strokes under way and no more, over all its links', async () => {
    const mine = await newFleet(service, fleet.token);
    const [link, other] = [await open(mine.loggerToken), await open(mine.loggerToken)];
    const beginHere = () => begin({ roomId: mine.roomId });
    const [first, second] = [Array.from({ length: 200 }, beginHere), Array.from({ length: 56 }, beginHere)];
    const piece = (key: string) => ({ type: 'samples', key, seq: 0, side: 'front', amps: [1, 2] });
    const last = beginHere();
    for (const [on, strokes] of [
      [link, first],
      [other, second],
    ] as const) {
      for (const each of strokes) on.say(each);
      for (const { key } of strokes) on.say(piece(key));
      for (const { key } of strokes) expect(await on.next()).toMatchObject({ type: 'ack', key, seq: 0 });
    }
    other.say(last);
    expect(await other.next()).toMatchObject({ type: 'problem', key: last.key, status: 429 });
    link.say({ type: 'end', key: first[0].key });
    await link.next('stored');
    other.say(last);
    other.say(piece(last.key));
    expect(await other.next()).toMatchObject({ type: 'ack', key: last.key });
  });

  test('a message beyond all bounds closes the link, and only that', async () => {
    const stroke = liveStroke(fleet);
    const [link, other] = [await open(), await open()];
    link.say(`{"type": "begin", "key": "${'x'.repeat(2 * 1024 * 1024)}"}`);
    expect(await link.closed).toBe(TOO_BIG);
    expect(await sidesOf(service, fleet.token, await sayAll(other, stroke))).toEqual(stroke.sides);
  });

  test('a program that does not listen to problems is cut off', async () => {
    const link = await open();
    for (let i = 0; i < 600; i++) link.say('nonsense');
    expect(await link.closed).toBe(POLICY);
  });

  test('a plain request is told that this takes WebSockets', async () => {
    const answer = await service.as(fleet.loggerToken, 'GET', '/strokes/live');
    expect([answer.status, answer.body.type]).toEqual([426, '/problems/upgrade-required']);
    expect(answer.headers.get('upgrade')).toBe('websocket');
  });
});

test('a piece that is sent twice and could not be kept is not acknowledged', async () => {
  const link = await open();
  const stroke = liveStroke(fleet);
  link.say(stroke.begin);
  await sayPieces(link, stroke.pieces.slice(0, 1));
  const client = new pg.Client(service.databaseUrl);
  await client.connect();
  await client.query('begin');
  await client.query('delete from live_strokes where key = $1', [stroke.key]);
  link.say(stroke.pieces[1]);
  // Until the service's own statement waits for the stroke.
  await untilSomebodyWaits(client);
  link.say(stroke.pieces[1]);
  // Messages are taken one after the other: at its answer the one before has been taken.
  link.say({ type: 'shout' });
  expect(await link.next()).toMatchObject({ type: 'problem', status: 422 });
  await client.query('commit');
  await client.end();
  expect(await link.next()).toMatchObject({ type: 'problem', key: stroke.key, status: 404 });
  link.say(stroke.end);
  expect(await link.next()).toMatchObject({ type: 'problem', key: stroke.key, status: 409 });
});

describe('a flood', () => {
  const PIECES = 20_000;

  test('from one logger does not slow another, and loses nothing', async () => {
    const neighbour = await newFleet(service, fleet.token);
    const [flooding, other] = [await open(), await open(neighbour.loggerToken)];
    const { key, ...rest } = begin();
    flooding.say({ key, ...rest });
    for (let seq = 0; seq < PIECES; seq++)
      flooding.say({ type: 'samples', key, seq, side: 'front', amps: [seq / 8] });
    await flooding.next('ack');
    // A whole stroke of the other goes through while most of the flood still waits for its turn.
    const stroke = liveStroke(neighbour);
    expect(await sidesOf(service, fleet.token, await sayAll(other, stroke))).toEqual(stroke.sides);
    expect(flooding.heard.length).toBeLessThan(PIECES / 2);
    flooding.say({ type: 'end', key });
    const { strokeId } = await flooding.next('stored');
    const [side] = await sidesOf(service, fleet.token, strokeId);
    expect(side.amps).toEqual(Array.from({ length: PIECES }, (_, i) => i / 8));
  });
});

describe('silence', () => {
  test('of a sender drops its link and keeps its stroke', async () => {
    const impatient = await startService({ worker: false, linkSilentAfterMs: 2_000 });
    const own = await newFleet(impatient, await impatient.signIn());
    const stroke = liveStroke(own);
    const link = await open(own.loggerToken, impatient.url);
    link.say(stroke.begin);
    await sayPieces(link, stroke.pieces.slice(0, 3));
    expect(await link.closed).toBe(SILENT);
    const again = await open(own.loggerToken, impatient.url);
    again.say(stroke.begin);
    expect((await again.next('resume')).nextSeq).toBe(3);
    await impatient.stop();
  });
});
