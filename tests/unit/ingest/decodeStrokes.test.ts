import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DecodeError } from '../../../ingest/decodeError.ts';
import { decodeStrokes } from '../../../ingest/json/strokes.ts';
import { toStrokeTrace } from '../../../ingest/stroke.ts';

const side = { side: 'front', rateHz: 50, amps: [0.02, 14.8, null, -9.1] };
const stroke = {
  key: 'a',
  roomId: '018f4d5e-0000-7000-8000-000000000000',
  startedAt: '2026-05-02T16:20:11Z',
  sides: [side],
};

/** Through text, as a body comes: 1e999 and `__proto__` have their JSON meaning. */
const decode = (body: unknown) => decodeStrokes(typeof body === 'string' ? JSON.parse(body) : body);

function faultsOf(body: unknown) {
  try {
    decode(body);
  } catch (error) {
    if (error instanceof DecodeError) return error.faults;
    throw error;
  }
  throw new Error('It was read.');
}

describe('a stroke is read as it was sent', () => {
  test('every field', () => {
    const [{ stroke: read }] = decode({
      ...stroke,
      direction: 'retract',
      sides: [side, { side: 'rear', t: [-0.01, 0, 0.02], milliamps: [20, 14_800, null] }],
      supply: { rateHz: 10, volts: [12.9] },
      ambientC: 18.5,
    });
    expect(read).toEqual({
      key: 'a',
      roomId: stroke.roomId,
      direction: 'retract',
      startedAtMs: Date.UTC(2026, 4, 2, 16, 20, 11),
      sides: [
        { side: 'front', clock: { rateHz: 50 }, amps: Float64Array.of(0.02, 14.8, Number.NaN, -9.1) },
        {
          side: 'rear',
          clock: { t: Float64Array.of(-0.01, 0, 0.02) },
          amps: Float64Array.of(0.02, 14.8, Number.NaN),
        },
      ],
      supply: { clock: { rateHz: 10 }, volts: Float64Array.of(12.9) },
      ambientC: 18.5,
    });
  });

  test('null counts as left out', () => {
    const [{ stroke: read }] = decode({ ...stroke, direction: null, supply: null, ambientC: null });
    expect(read).toMatchObject({ direction: null, supply: null, ambientC: null });
  });

  test('200 characters are counted as characters, not as units of UTF-16', () => {
    expect(decode({ ...stroke, key: '\u{1f69a}'.repeat(200) })).toHaveLength(1);
    expect(faultsOf({ ...stroke, key: '\u{1f69a}'.repeat(201) })[0].pointer).toBe('/key');
  });
});

describe('a wrong field is named', () => {
  const withSide = (changed: object) => ({ ...stroke, sides: [{ ...side, ...changed }] });
  const asText = (amps: string) => JSON.stringify(withSide({ amps: 'HERE' })).replace('"HERE"', amps);

  test.each<[string, unknown, string]>([
    ['no object', 'null', ''],
    ['a number', '7', ''],
    ['no stroke at all', [], ''],
    ['501 strokes', Array.from({ length: 501 }, () => stroke), ''],
    ['an array of arrays', [[stroke]], '/0'],
    ['no key', { ...stroke, key: undefined }, '/key'],
    ['an empty key', { ...stroke, key: '' }, '/key'],
    ['a key of 201 characters', { ...stroke, key: 'x'.repeat(201) }, '/key'],
    ['a key with U+0000', { ...stroke, key: 'a\0b' }, '/key'],
    ['half a surrogate pair', { ...stroke, key: 'a\ud800' }, '/key'],
    ['a key that is a number', { ...stroke, key: 3 }, '/key'],
    ['no room', { ...stroke, roomId: undefined }, '/roomId'],
    ['an unknown direction', { ...stroke, direction: 'sideways' }, '/direction'],
    ['a time without an offset', { ...stroke, startedAt: '2026-05-02T16:20:11' }, '/startedAt'],
    ['a time that is a number', { ...stroke, startedAt: 1 }, '/startedAt'],
    ['no sides', { ...stroke, sides: [] }, '/sides'],
    ['sides that are none', { ...stroke, sides: { 0: side } }, '/sides'],
    ['nine sides', { ...stroke, sides: Array.from({ length: 9 }, () => side) }, '/sides'],
    ['a side twice', { ...stroke, sides: [side, side] }, '/sides/1/side'],
    ['a side that is text', { ...stroke, sides: ['front'] }, '/sides/0'],
    ['no name of a side', withSide({ side: undefined }), '/sides/0/side'],
    ['no amps', withSide({ amps: undefined }), '/sides/0/amps'],
    ['amps and milliamps', withSide({ milliamps: [1, 2, 3, 4] }), '/sides/0/milliamps'],
    ['one sample', withSide({ amps: [1] }), '/sides/0/amps'],
    ['200,001 samples', withSide({ amps: new Array(200_001).fill(1) }), '/sides/0/amps'],
    ['text among the amps', withSide({ amps: [1, '2'] }), '/sides/0/amps/1'],
    ['an object for amps', withSide({ amps: { length: 3 } }), '/sides/0/amps'],
    ['infinity by overflow', asText('[1,1e999]'), '/sides/0/amps/1'],
    ['absurd amperes', withSide({ amps: [1, -10_001] }), '/sides/0/amps/1'],
    ['half a milliampere', withSide({ amps: undefined, milliamps: [1, 1.5] }), '/sides/0/milliamps/1'],
    ['a rate of 0', withSide({ rateHz: 0 }), '/sides/0/rateHz'],
    ['a rate of 5001', withSide({ rateHz: 5001 }), '/sides/0/rateHz'],
    ['a rate in words', withSide({ rateHz: '50' }), '/sides/0/rateHz'],
    ['neither rateHz nor t', withSide({ rateHz: undefined }), '/sides/0'],
    ['a rateHz of null', withSide({ rateHz: null }), '/sides/0/rateHz'],
    ['rateHz and t', withSide({ t: [0, 1, 2, 3] }), '/sides/0/t'],
    ['times that stand still', withSide({ rateHz: undefined, t: [0, 1, 1, 2] }), '/sides/0/t/2'],
    ['times that fall', withSide({ rateHz: undefined, t: [0, 2, 1, 3] }), '/sides/0/t/2'],
    ['a gap among the times', withSide({ rateHz: undefined, t: [0, 1, null, 3] }), '/sides/0/t/2'],
    ['fewer times than samples', withSide({ rateHz: undefined, t: [0, 1] }), '/sides/0/t'],
    ['supply without volts', { ...stroke, supply: { rateHz: 10 } }, '/supply/volts'],
    ['text among the volts', { ...stroke, supply: { rateHz: 10, volts: [12, '12'] } }, '/supply/volts/1'],
    [
      'a supply that is hardly looked at',
      { ...stroke, supply: { rateHz: 0.009, volts: [12] } },
      '/supply/rateHz',
    ],
    ['a side that is hardly looked at', withSide({ rateHz: 0.5 }), '/sides/0/rateHz'],
    ['supply without a clock', { ...stroke, supply: { volts: [12] } }, '/supply'],
    ['a thousand and one volts', { ...stroke, supply: { rateHz: 1, volts: [1001] } }, '/supply/volts/0'],
    ['ambient in kelvin', { ...stroke, ambientC: 291 }, '/ambientC'],
    ['ambient in words', { ...stroke, ambientC: 'warm' }, '/ambientC'],
    ['a misspelt field', { ...stroke, ambientc: 3 }, '/ambientc'],
    ['a field with a slash', { ...stroke, 'a/b~c': 3 }, '/a~1b~0c'],
    ['a prototype', JSON.stringify(stroke).replace('{', '{"__proto__":{"key":"x"},'), '/__proto__'],
  ])('%s', (_name, body, pointer) => {
    expect(faultsOf(body).map((fault) => fault.pointer)).toContain(pointer);
  });

  test('several faults are named at once, ten at most', () => {
    expect(faultsOf({ ...stroke, key: '', direction: 1, ambientC: true })).toHaveLength(3);
    const misspelt = Object.fromEntries(Array.from({ length: 30 }, (_, i) => [`x${i}`, 1]));
    expect(faultsOf({ ...stroke, ...misspelt })).toHaveLength(10);
  });
});

test('a slow supply with missed readings is kept as it came, and the analysis is handed those there are', () => {
  const supply = { rateHz: 0.1, volts: [null, 12.5, null, 12.1] };
  const [{ stroke: read }] = decode({ ...stroke, supply });
  if (!read) throw new Error('It was not read.');
  expect(read.supply).toEqual({
    clock: { rateHz: 0.1 },
    volts: Float64Array.of(Number.NaN, 12.5, Number.NaN, 12.1),
  });
  expect(toStrokeTrace(read, 'extend').supply).toEqual({
    timesS: Float64Array.of(10, 30),
    volts: Float64Array.of(12.5, 12.1),
  });
  const [{ stroke: unread }] = decode({ ...stroke, supply: { t: [0, 5], volts: [null, null] } });
  expect(unread && toStrokeTrace(unread, 'extend').supply).toBeNull();
});

describe('a batch', () => {
  test('one bad stroke does not hold back the others', () => {
    const decoded = decode([stroke, { ...stroke, key: 'b', ambientC: 291 }, { ...stroke, key: 'c' }]);
    expect(decoded.map((one) => one.stroke?.key ?? null)).toEqual(['a', null, 'c']);
    expect(decoded[1]).toMatchObject({ key: 'b', error: { faults: [{ pointer: '/1/ambientC' }] } });
  });

  test('when not one can be read, the whole cannot', () => {
    expect(faultsOf([7, { ...stroke, key: '' }]).map((fault) => fault.pointer)).toEqual(['/0', '/1/key']);
  });

  test('an inherited field is not a field', () => {
    const decoded = decode(JSON.stringify([{ ...stroke, key: undefined, constructor: 1 }, stroke]));
    expect(decoded[0]).toMatchObject({ stroke: null, key: null });
    expect(({} as Record<string, unknown>).key).toBeUndefined();
  });

  test('anything that JSON can say is read or refused with a pointer', () => {
    const near = fc.record(
      {
        key: fc.oneof(fc.string(), fc.jsonValue()),
        roomId: fc.oneof(fc.uuid(), fc.jsonValue()),
        startedAt: fc.oneof(fc.constant(stroke.startedAt), fc.jsonValue()),
        sides: fc.oneof(
          fc.constant([side]),
          fc.array(fc.record({ side: fc.string(), amps: fc.jsonValue() })),
        ),
        supply: fc.jsonValue(),
        ambientC: fc.jsonValue(),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(fc.oneof(fc.jsonValue(), near, fc.array(near)), (value) => {
        try {
          decode(JSON.stringify(value));
        } catch (error) {
          if (!(error instanceof DecodeError)) throw error;
          expect(error.faults.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
