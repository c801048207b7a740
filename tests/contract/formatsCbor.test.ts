import { randomUUID } from 'node:crypto';
import { gzipSync } from 'node:zlib';
import { encode } from 'cbor2';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startService, type TestService } from '../support/service.ts';
import { countStrokes, sendAs, traceOf } from './formatsFixture.ts';
import { type Fleet, newFleet, strokeBody } from './strokeFixture.ts';

let service: TestService;
let fleet: Fleet;

beforeAll(async () => {
  service = await startService({ worker: false });
  fleet = await newFleet(service, await service.signIn());
});
afterAll(() => service.stop());

const CBOR = 'application/cbor';
const send = (body: Uint8Array) => sendAs(service, fleet, CBOR, body);
const stroke = (sides: object[], more: object = {}) => ({
  key: randomUUID(),
  roomId: fleet.roomId,
  direction: 'extend',
  startedAt: '2026-05-02T16:20:11Z',
  sides,
  ...more,
});

async function stored(body: Uint8Array) {
  const answer = await send(body);
  expect(answer.body, answer.text).toMatchObject({ results: [{ outcome: 'stored' }] });
  return traceOf(service, fleet, answer.body.results[0].strokeId);
}

describe('a stroke in CBOR', () => {
  test('is the same map as in JSON, and the same stroke', async () => {
    const body = strokeBody(fleet.roomId, 0, 9, { key: 'twice told', ambientC: 18.5 });
    const first = await send(encode(body));
    expect(first.body.results[0].outcome).toBe('stored');
    const again = await service.request('POST', '/strokes', { token: fleet.loggerToken, body });
    expect(again.body.results[0]).toEqual({ ...first.body.results[0], outcome: 'duplicate' });
    const trace = await traceOf(service, fleet, first.body.results[0].strokeId);
    expect(trace).toEqual({ sides: body.sides, ambientC: 18.5 });
  });

  test('takes typed arrays, whose NaN is a missed sample', async () => {
    const trace = await stored(
      encode(
        stroke(
          [
            {
              side: 'front',
              t: new Float64Array([0, 0.02, 0.041]),
              amps: new Float32Array([1.5, Number.NaN, -2]),
            },
            { side: 'rear', rateHz: 50, milliamps: new Int16Array([20, 14_800, -9100]) },
          ],
          { supply: { rateHz: 10, volts: new Float64Array([12.9, 12.1]) } },
        ),
      ),
    );
    expect(trace).toEqual({
      sides: [
        { side: 'front', t: [0, 0.02, 0.041], amps: [1.5, null, -2] },
        { side: 'rear', rateHz: 50, amps: [0.02, 14.8, -9.1] },
      ],
      supply: { rateHz: 10, volts: [12.9, 12.1] },
    });
  });

  test('takes counts with the amperes of one', async () => {
    const sides = [
      { side: 'front', rateHz: 50, counts: new Int16Array([0, 100, -7]), ampsPerCount: 0.0123 },
      { side: 'rear', rateHz: 50, counts: [0, 100, null], ampsPerCount: -0.5 },
    ];
    const trace = await stored(encode(stroke(sides)));
    expect(trace.sides[0].amps).toEqual([0, 100 * 0.0123, -7 * 0.0123]);
    expect(trace.sides[1].amps).toEqual([0, -50, null]);
  });

  test('takes an array of strokes, compressed, and rejects one without holding back the others', async () => {
    const side = { side: 'front', rateHz: 50, amps: new Float32Array([1, 2]) };
    const strokes = [stroke([side]), stroke([{ ...side, side: 'attic' }]), stroke([{ ...side, rateHz: 0 }])];
    const answer = await service.request('POST', '/strokes', {
      token: fleet.loggerToken,
      body: gzipSync(encode(strokes)),
      headers: { 'content-type': CBOR, 'content-encoding': 'gzip' },
    });
    expect(answer.body.results.map((one: { outcome: string }) => one.outcome)).toEqual([
      'stored',
      'rejected',
      'rejected',
    ]);
    expect(answer.body.results[1].problem.errors[0].pointer).toBe('/sides/0/side');
    expect(answer.body.results[2].problem.errors[0].pointer).toBe('/sides/0/rateHz');
  });

  test('with an Idempotency-Key brings the first answer again', async () => {
    const body = encode(stroke([{ side: 'front', rateHz: 50, amps: new Float32Array([1, 2]) }]));
    const headers = { 'content-type': CBOR, 'idempotency-key': randomUUID() };
    const keyed = (sent: Uint8Array) =>
      service.request('POST', '/strokes', { token: fleet.loggerToken, body: sent, headers });
    const first = await keyed(body);
    expect(first.body.results[0].outcome).toBe('stored');
    expect((await keyed(body)).body).toEqual(first.body);
    expect((await keyed(encode(stroke([])))).body).toEqual(first.body);
  });
});

const hex = (text: string) => Buffer.from(text.replaceAll(/\s/g, ''), 'hex');

describe('hostile CBOR is a clear 422 in no time', () => {
  const text = (word: string) => encode(word);
  const field = (name: string, value: Uint8Array) => Buffer.concat([text(name), value]);
  const map = (...fields: Uint8Array[]) => Buffer.concat([Buffer.of(0xa0 + fields.length), ...fields]);
  const deep = Buffer.concat([Buffer.alloc(4_000_000, 0x81), Buffer.of(0)]);
  const deepTags = Buffer.concat([Buffer.alloc(900_000, 0xc0), Buffer.of(0)]);

  test.each<[string, Buffer, string]>([
    ['nothing at all', Buffer.alloc(0), ''],
    ['a text', Buffer.from(text('hello')), ''],
    ['arrays in arrays', deep, `${'/0'.repeat(13)}`],
    ['tags on tags', deepTags, ''],
    ['maps in maps', Buffer.alloc(1_000_000, hex('a16161')), '/a'.repeat(13)],
    ['an array of 2^63 items', hex('9b7fffffffffffffff'), ''],
    ['a byte string of 4 GiB', hex('5affffffff00'), ''],
    ['a text of 2^64 - 1 bytes', hex('7bffffffffffffffff'), ''],
    ['a map of a million fields', hex('ba000f4240'), ''],
    ['a typed array cut short', map(field('sides', hex('d84d 5a00ffffff 0000'))), '/sides'],
    ['a typed array with half a number', map(field('sides', hex('d84d 43000000'))), '/sides'],
    ['a typed array that is a list', map(field('sides', hex('d84d 820102'))), '/sides'],
    ['a bignum', map(field('key', hex('c2 42ffff'))), '/key'],
    ['a regular expression', map(field('key', Buffer.concat([hex('d823'), text('(a+)+$')]))), '/key'],
    ['a reference to a shared value', map(field('key', hex('d81d 00'))), '/key'],
    ['an unknown tag of 64 bits', map(field('key', hex('dbffffffffffffffff 00'))), '/key'],
    ['the same field twice', map(field('key', text('a')), field('key', text('b'))), '/key'],
    ['numbers for keys', hex('a10102'), ''],
    ['a map for a key', hex('a1a000'), ''],
    ['a key in pieces', hex('a17f6161ff00'), ''],
    ['__proto__', map(field('__proto__', map(field('key', text('a'))))), '/__proto__'],
    ['constructor', map(field('constructor', map(field('prototype', text('a'))))), '/constructor'],
    ['a break of nothing', hex('ff'), ''],
    ['an array that never ends', Buffer.concat([hex('9f'), Buffer.alloc(100_000, 0)]), '/99999'],
    ['a string that never ends', Buffer.concat([hex('7f'), Buffer.alloc(100_000, 0x60)]), ''],
    ['a reserved length', hex('1c'), ''],
    ['text that is not UTF-8', map(field('key', hex('61ff'))), '/key'],
    ['bytes behind the end', Buffer.concat([map(), hex('00')]), ''],
    [
      'more items than are taken singly',
      Buffer.concat([hex('9a00500000'), Buffer.alloc(0x500000)]),
      '/1999999',
    ],
  ])('%s', async (_, body, pointer) => {
    const before = { rss: process.memoryUsage().rss, strokes: await countStrokes(service) };
    const answer = await send(body);
    expect([answer.status, answer.body.type], answer.text.slice(0, 300)).toEqual([
      422,
      '/problems/invalid-field',
    ]);
    const pointers = answer.body.errors.map((fault: { pointer: string }) => fault.pointer);
    expect(pointers).toContain(pointer);
    expect(process.memoryUsage().rss - before.rss).toBeLessThan(200 * 1024 * 1024);
    expect(await countStrokes(service)).toBe(before.strokes);
  });

  test('no prototype is touched', () => {
    expect(Object.hasOwn(Object.prototype, 'key')).toBe(false);
  });

  test('indefinite lengths are taken where they are well-formed', async () => {
    const body = stroke([{ side: 'front', rateHz: 50, amps: [1, 2] }]);
    const sides = Buffer.concat([hex('9f'), encode(body.sides[0]), hex('ff')]);
    const rest = Object.entries({ ...body, sides: undefined }).filter(([, value]) => value !== undefined);
    const fields = rest.map(([name, value]) => field(name, encode(value)));
    const bytes = Buffer.concat([hex('bf'), ...fields, field('sides', sides), hex('ff')]);
    expect((await send(bytes)).body.results[0].outcome).toBe('stored');
  });
});

test('the OpenAPI document lists the media types', async () => {
  const { body } = await service.request('GET', '/api/openapi.json');
  expect(Object.keys(body.paths['/api/v1/strokes'].post.requestBody.content)).toEqual([
    'application/json',
    CBOR,
    'application/senml+json',
    'application/senml+cbor',
    'text/csv',
  ]);
});

test.each(['text/plain', 'application/cbor-seq', 'application/senml+xml', 'text/csv; charset=utf-16'])(
  '%s is 415',
  async (type) => {
    expect((await sendAs(service, fleet, type, 'a')).status).toBe(415);
  },
);

test('no other route takes these forms', async () => {
  const answer = await service.request('POST', '/coaches', {
    token: fleet.token,
    body: encode({ name: 'Meadow Drift' }),
    headers: { 'content-type': CBOR },
  });
  expect(answer.status).toBe(415);
});
