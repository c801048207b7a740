import { expect, test } from 'vitest';
import { ByteReader } from '../../../ingest/trace/byteReader.ts';
import { CorruptTraceError } from '../../../ingest/trace/corruptTraceError.ts';

const readerOf = (...bytes: number[]) => new ByteReader(Uint8Array.from(bytes));

test('a number by groups of seven bits, the lowest first', () => {
  const reader = readerOf(0x00, 0x7f, 0x80, 0x01, 0xac, 0x02);
  expect([reader.varint(), reader.varint(), reader.varint(), reader.varint()]).toEqual([0, 127, 128, 300]);
  expect(reader.left).toBe(0);
});

test.each([
  { name: 'a byte', read: (reader: ByteReader) => reader.byte(), more: '1 more were' },
  { name: 'some bytes', read: (reader: ByteReader) => reader.raw(5), more: '5 more were' },
  { name: 'a float', read: (reader: ByteReader) => reader.float64(), more: '8 more were' },
  { name: 'some bits', read: (reader: ByteReader) => reader.bits(3), more: '1 more were' },
  { name: 'a run of ones', read: (reader: ByteReader) => reader.ones(4), more: '1 more were' },
])('$name behind the end says where it ended', ({ read, more }) => {
  const reader = readerOf(0xff, 0xff);
  reader.raw(2);
  expect(() => read(reader)).toThrow(CorruptTraceError);
  expect(() => read(reader)).toThrow(`it ends after 2 bytes, ${more} to come at byte 2.`);
});

test('a number that no double holds is refused, and where', () => {
  expect(() => readerOf(...new Array(12).fill(0xff)).varint()).toThrow('goes on at byte 8 is too long');
});
