import { expect, test } from 'vitest';
import { eachRecord } from '../../ingest/csv/records.ts';
import { DecodeError } from '../../ingest/decodeError.ts';
import { published } from './values/read.ts';

const cases = published<{ text?: string }, { records?: string[][]; error?: boolean }>(
  'rfc4180-csv',
  (id) => id !== 'encode',
);

function recordsOf(text: string): string[][] {
  const records: string[][] = [];
  eachRecord(text, (cells) => records.push([...cells]));
  return records;
}

test.each(cases)('RFC 4180, section 2: $id', ({ inputs, expected }) => {
  const text = inputs.text ?? '';
  if (expected.error === true) expect(() => recordsOf(text)).toThrow(DecodeError);
  else expect(recordsOf(text)).toEqual(expected.records);
});

test('the fault names the line', () => {
  expect(() => recordsOf('a,b,c\r\n1,2\r\n')).toThrow('Line 2');
  expect(() => recordsOf('a,b\r\n1,2\r\n1,2"3\r\n')).toThrow('Line 3');
});
