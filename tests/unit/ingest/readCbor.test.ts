import { expect, test } from 'vitest';
import { readCbor } from '../../../ingest/cbor/decodeCbor.ts';
import { DecodeError } from '../../../ingest/decodeError.ts';

const hex = (digits: string) => Buffer.from(digits.replaceAll(' ', ''), 'hex');
/** Of tag 1000 and the number 0. */
const UNKNOWN = 'd903e8 00';
const HEADER_OF_ARRAY = '9a';
const arrayOf = (length: number) => `${HEADER_OF_ARRAY}${length.toString(16).padStart(8, '0')}`;

test('a field that comes twice keeps the first, and is told as what it is', () => {
  expect(readCbor(hex('a2 616b 01 616b 02'))).toEqual({
    value: { k: 1 },
    faults: [{ pointer: '/k', detail: 'This field comes twice.' }],
  });
});

test('a field that comes by its label and by its name keeps the first, and is told as that', () => {
  const read = readCbor(hex('a2 02 01 6176 02'), 'text or label', (label) => (label === 2 ? 'v' : '?'));
  expect(read).toEqual({
    value: { v: 1 },
    faults: [{ pointer: '/v', detail: 'This field comes twice, by its label and by its name.' }],
  });
});

test('of one field of a stroke four faults are told, of the next field of the same stroke its own', () => {
  const { faults } = readCbor(hex(`81 a2 6161 86 ${UNKNOWN.repeat(6)} 6162 81 ${UNKNOWN}`));
  expect(faults.map(({ pointer }) => pointer)).toEqual(['/0/a/0', '/0/a/1', '/0/a/2', '/0/a/3', '/0/b/0']);
});

test('a body of which too much has no meaning is refused as a whole', () => {
  const stroke = `a1 6161 84 ${UNKNOWN.repeat(4)}`;
  const strokes = (count: number) => hex(arrayOf(count) + stroke.repeat(count));
  expect(readCbor(strokes(5000)).faults).toHaveLength(20_000);
  expect(() => readCbor(strokes(5001))).toThrow(DecodeError);
});
