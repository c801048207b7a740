import { randomUUID } from 'node:crypto';
import { gzipSync } from 'node:zlib';
import { encode, Tag } from 'cbor2';
import { describe, expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests, strokeBody } from '../strokes/strokeFixture.ts';
import { countStrokes, sendAs, traceOf } from './formatsFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

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
    const again = await service.as(fleet.loggerToken, 'POST', '/strokes', body);
    expect(again.body.results[0]).toEqual({ ...first.body.results[0], outcome: 'duplicate' });
    const trace = await traceOf(service, fleet, first.body.results[0].strokeId);
    expect(trace).toEqual({ sides: body.sides, ambientC: 18.5 });
  });

  test('takes bignums that are in range, and undefined for a missed sample', async () => {
    const amps = [1, new Tag(2, Uint8Array.of(0, 1, 2)), new Tag(3, Uint8Array.of(2)), undefined];
    const trace = await stored(encode(stroke([{ side: 'front', rateHz: 50, amps }])));
    expect(trace.sides[0].amps).toEqual([1, 258, -3, null]);
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

  test('takes NaN in a plain list for a missed sample', async () => {
    const sides = [
      { side: 'front', rateHz: 50, amps: [1.5, Number.NaN, -2] },
      { side: 'rear', rateHz: 50, milliamps: [Number.NaN, 14_800, 9100] },
    ];
    const trace = await stored(encode(stroke(sides, { supply: { rateHz: 0.1, volts: [Number.NaN, 12.5] } })));
    expect(trace).toEqual({
      sides: [
        { side: 'front', rateHz: 50, amps: [1.5, null, -2] },
        { side: 'rear', rateHz: 50, amps: [null, 14.8, 9.1] },
      ],
      supply: { rateHz: 0.1, volts: [null, 12.5] },
    });
  });

  test.each([
    ['text under tag 0', 'c0 74 323032362d30352d30325431363a32303a31315a', '2026-05-02T16:20:11.000Z'],
    ['whole seconds under tag 1', 'c1 1a 69f6243b', '2026-05-02T16:20:11.000Z'],
    ['seconds and a part of one under tag 1', 'c1 fb 41da7d890ee0c49c', '2026-05-02T16:20:11.512Z'],
    ['seconds before 1970 under tag 1', 'c1 29', '1969-12-31T23:59:50.000Z'],
  ])('takes a start that is %s', async (_, bytes, startedAt) => {
    const { startedAt: _sent, ...rest } = stroke([{ side: 'front', rateHz: 50, amps: [1, 2] }]);
    const fields = Object.entries(rest).flatMap(([name, value]) => [encode(name), encode(value)]);
    const start = [encode('startedAt'), hex(bytes)];
    const body = Buffer.concat([Buffer.of(0xa0 + Object.keys(rest).length + 1), ...fields, ...start]);
    const answer = await send(body);
    expect(answer.body.results, answer.text).toMatchObject([{ outcome: 'stored' }]);
    const path = `/strokes/${answer.body.results[0].strokeId}`;
    expect((await service.as(fleet.token, 'GET', path)).body.startedAt).toBe(startedAt);
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

describe('of two strokes in CBOR one that means nothing does not hold back the other', () => {
  const side = { side: 'front', rateHz: 50, amps: new Float32Array([1, 2]) };
  const tagged = (head: string, content: unknown) => Buffer.concat([hex(head), encode(content)]);
  /** A stroke with the fields given and one more, as bytes. */
  const withField = (fields: Record<string, unknown>, name: Uint8Array, value: Uint8Array) => {
    const entries = Object.entries(fields).flatMap(([key, its]) => [encode(key), encode(its)]);
    return Buffer.concat([Buffer.of(0xa0 + Object.keys(fields).length + 1), ...entries, name, value]);
  };
  const without = (field: string) =>
    Object.fromEntries(Object.entries(stroke([side])).filter(([name]) => name !== field));
  const withSide = (amps: Uint8Array) =>
    withField(
      without('sides'),
      encode('sides'),
      Buffer.concat([hex('81'), withField({ side: 'front', rateHz: 50 }, encode('amps'), amps)]),
    );
  const extra = (value: Uint8Array) => withField(stroke([side]), encode('extra'), value);

  test.each<[string, () => Buffer, string]>([
    ['the reserved tag of RFC 8746', () => withSide(hex('d84c 420102')), '/sides/0/amps'],
    ['half a number in a typed array', () => withSide(hex('d845 43010203')), '/sides/0/amps'],
    ['a typed array that is a list', () => withSide(hex('d845 820102')), '/sides/0/amps'],
    ['a bignum beyond 64 bits', () => withSide(hex('83 01 c249010000000000000000 02')), '/sides/0/amps/1'],
    ['a decimal of a bignum', () => withSide(hex('82 01 c4 82 20 c2420102')), '/sides/0/amps/1'],
    ['a decimal beyond any number', () => withSide(hex('82 01 c4 82 1a7fffffff 01')), '/sides/0/amps/1'],
    ...['never', [1.7e9], 1e300, Number.NaN, null].map((sent): [string, () => Buffer, string] => [
      `seconds that are no time: ${JSON.stringify(sent)}`,
      () => withField(without('startedAt'), encode('startedAt'), tagged('c1', sent)),
      '/startedAt',
    ]),
    ['a time among numbers', () => withSide(hex('82 01 c1 02')), '/sides/0/amps/1'],
    ['an unknown tag in an unknown field', () => extra(tagged('d903e8', { a: [1, 2] })), '/extra'],
    ['a whole number for a key', () => withField(stroke([side]), encode(7), encode('x')), ''],
    ['a list for a key', () => withField(stroke([side]), encode([1, { a: 2 }]), encode('x')), ''],
    ['a key in pieces', () => withField(stroke([side]), hex('7f 6161 6162 ff'), encode('x')), ''],
    ['a field that comes twice', () => withField(stroke([side]), encode('key'), encode('x')), '/key'],
    ['text that is no text', () => extra(hex('62 ffff')), '/extra'],
    ['depth', () => extra(Buffer.concat([Buffer.alloc(8000, 0x81), hex('00')])), `/extra${'/0'.repeat(11)}`],
    [
      'depth without lengths',
      () => extra(hex(`${'9f'.repeat(40)}bf0102ff${'ff'.repeat(40)}`)),
      `/extra${'/0'.repeat(11)}`,
    ],
    ['tags on tags', () => extra(Buffer.concat([Buffer.alloc(100_000, 0xc0), hex('00')])), '/extra'],
    ['more fields than there are', () => extra(Buffer.concat([hex('b841'), Buffer.alloc(130)])), '/extra'],
  ])('%s', async (_, bad, pointer) => {
    const good = stroke([side]);
    const bytes = bad();
    const answer = await send(Buffer.concat([hex('83'), bytes, encode(good), bytes]));
    expect(answer.status, answer.text.slice(0, 500)).toBe(200);
    const results: { key: string; outcome: string; problem?: { errors: { pointer: string }[] } }[] =
      answer.body.results;
    expect(results.map(({ outcome }) => outcome)).toEqual(['rejected', 'stored', 'rejected']);
    expect([results[0].problem?.errors[0].pointer, results[2].problem]).toEqual([
      pointer,
      results[0].problem,
    ]);
    expect(results[0].key).toEqual(expect.any(String));
    const alone = await send(Buffer.concat([hex('81'), bytes]));
    expect([alone.status, alone.body.errors[0].pointer]).toEqual([422, `/0${pointer}`]);
  });

  test.each([
    ['an array that ends too early', '9a000000ff01'],
    ['a name without its value', 'd903e8 bf01ff'],
    ['a tag without number', 'df00'],
    ['a simple value in two bytes', 'd903e8 f801'],
  ])('bytes that are no CBOR refuse both: %s', async (_, broken) => {
    const before = await countStrokes(service);
    const answer = await send(Buffer.concat([hex('82'), encode(stroke([side])), extra(hex(broken))]));
    expect([answer.status, await countStrokes(service)]).toEqual([422, before]);
  });
});

describe('numbers of every spelling', () => {
  const front = (amps: string) => {
    const body = stroke([{ side: 'front', rateHz: 50, amps: 'HERE' }]);
    const mark = encode('HERE');
    const bytes = Buffer.from(encode(body));
    const at = bytes.indexOf(mark);
    return Buffer.concat([bytes.subarray(0, at), hex(amps), bytes.subarray(at + mark.length)]);
  };

  test.each([
    ['decimal fractions', '83 c4 82 20 03 c4 82 22 39464f c4 9f 01 02 ff', [0.3, -18, 20]],
    ['a homogeneous array', 'd829 82 fb3ff8000000000000 02', [1.5, 2]],
    ['a typed array in pieces', 'd84d 5f 43 0100fe 41 ff 40 ff', [1, -2]],
    [
      'quadruple floats, either way round',
      'd853 5820 3fff8000000000000000000000000000 c0000000000000000000000000000000',
      [1.5, -2],
    ],
    [
      'quadruple floats, little end first',
      'd857 5820 000000000000000000000000 0080ff3f 000000000000000000000000 0080ff7f',
      [1.5, null],
    ],
  ])('%s', async (_, amps, read) => {
    expect((await stored(front(amps))).sides[0].amps).toEqual(read);
  });
});

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

test('parameters of the media type change nothing of CBOR', async () => {
  const body = encode(strokeBody(fleet.roomId, 0, 9, { key: 'with parameters' }));
  for (const [parameters, outcome] of [
    ['; charset=utf-16', 'stored'],
    [';version=1', 'duplicate'],
  ]) {
    const answer = await sendAs(service, fleet, `application/cbor${parameters}`, body);
    expect(answer.body.results[0].outcome, answer.text).toBe(outcome);
  }
});

test('no other route takes these forms', async () => {
  const answer = await service.request('POST', '/coaches', {
    token: fleet.token,
    body: encode({ name: 'Meadow Drift' }),
    headers: { 'content-type': CBOR },
  });
  expect(answer.status).toBe(415);
});
