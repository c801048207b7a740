import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseJson, parseStrokes } from '../../../ingest/forms/readForm.ts';
import { elementsOf } from '../../../ingest/json/elements.ts';
import { decodeEach } from '../../../ingest/json/strokes.ts';

const LARGE_BYTES = 5 * 1024 * 1024;
const stroke = (key: string, more: object = {}) => ({
  key,
  roomId: '018f4d5e-0000-7000-8000-000000000000',
  startedAt: '2026-05-02T16:20:11Z',
  sides: [{ side: 'front', rateHz: 50, amps: [0.02, 14.8, 9.1] }],
  ...more,
});
/** The same body, made large by the spaces that may stand before it. */
const large = (text: string) => Buffer.concat([Buffer.alloc(LARGE_BYTES, ' '), Buffer.from(text)]);
const texts = (bytes: readonly Uint8Array[] | null) =>
  bytes?.map((one) => Buffer.from(one).toString()) ?? null;

/** What becomes of a body, refused ones too. */
function outcome(read: () => unknown): unknown {
  try {
    return { decoded: decodeEach(read()) };
  } catch (error) {
    return { error };
  }
}

test('the objects of an array are found, whatever is in them and whatever spaces are between them', () => {
  const item = fc.dictionary(fc.string({ unit: 'grapheme' }), fc.jsonValue());
  fc.assert(
    fc.property(fc.array(item), fc.constantFrom(0, 1, '\r\n\t'), (items, space) => {
      const found = texts(elementsOf(Buffer.from(JSON.stringify(items, null, space))));
      expect(found?.map((text) => JSON.parse(text))).toEqual(JSON.parse(JSON.stringify(items)));
    }),
  );
});

test.each([
  ['an object', '{"a":[1]}'],
  ['numbers', '[1,2]'],
  ['an array in an array', '[[1]]'],
  ['text among the objects', '[{},"a"]'],
  ['two commas', '[{},,{}]'],
  ['a comma at the end', '[{},]'],
  ['a comma at the beginning', '[,{}]'],
  ['no comma', '[{}{}]'],
  ['no end', '[{}'],
  ['an end too many', '[{}]]'],
  ['another array behind it', '[{}][{}]'],
  ['a byte order mark', '\ufeff[{}]'],
  ['nothing', ''],
])('where there is %s, nothing is taken apart', (_, text) => {
  expect(elementsOf(Buffer.from(text))).toBeNull();
});

describe('a large body is read as it would be in one piece', () => {
  test.each([
    ['several strokes', JSON.stringify([stroke('one'), stroke('two', { ambientC: 4 })])],
    ['one stroke', JSON.stringify(stroke('one'))],
    ['a stroke at fault among others', JSON.stringify([stroke('one'), stroke('two', { sides: [] })])],
    ['a stroke that names a field twice', '[{"key":"one","key":"two"}]'],
    ['a field __proto__', JSON.stringify([stroke('one')]).replace('"key"', '"__proto__":{},"key"')],
    ['a stroke that is no JSON', `[${JSON.stringify(stroke('one'))},{"key":tru}]`],
    ['brackets that do not match', `[${JSON.stringify(stroke('one'))},{"key":[}]}]`],
    ['an end that is missing', `[${JSON.stringify(stroke('one'))}`],
    ['no stroke', '[]'],
    ['too many strokes', JSON.stringify(Array(501).fill({}))],
    ['strokes that are none', '[{},null]'],
  ])('%s', (_, text) => {
    const bytes = large(text);
    expect(outcome(() => parseStrokes(bytes))).toEqual(outcome(() => parseJson(bytes)));
  });

  test('bytes in one of its strokes that are not UTF-8', () => {
    const bytes = large(JSON.stringify([stroke('one'), stroke('two?')]));
    bytes[bytes.lastIndexOf('?')] = 0xff;
    expect(outcome(() => parseStrokes(bytes))).toEqual(outcome(() => parseJson(bytes)));
  });
});

test('of a large body each stroke is parsed when it is its turn', () => {
  const parsed = parseStrokes(large(JSON.stringify([stroke('one'), stroke('two')]))) as object[];
  expect(parsed.map((one) => Object.keys(one))).toEqual([[], []]);
});
