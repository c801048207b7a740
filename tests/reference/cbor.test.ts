import { encode } from 'cbor2';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeCbor } from '../../ingest/cbor/decodeCbor.ts';
import { halfFloat } from '../../ingest/cbor/typedArray.ts';
import { DecodeError } from '../../ingest/decodeError.ts';
import { senmlFieldOf } from '../../ingest/senml/labels.ts';
import { publishedCase } from './values/read.ts';

interface Vector {
  readonly hex: string;
  readonly decoded?: unknown;
  readonly decodedText?: string;
  readonly diagnostic?: string;
}

const { vectors } = publishedCase<object, { vectors: Vector[] }>('rfc8949-cbor', 'appendix-a').expected;
const bytes = (hex: string) => Buffer.from(hex, 'hex');

/** What RFC 8949 writes in diagnostic notation, and what a stroke makes of it: null where it has no use for it. */
const BY_DIAGNOSTIC: Readonly<Record<string, unknown>> = {
  Infinity: Number.POSITIVE_INFINITY,
  '-Infinity': Number.NEGATIVE_INFINITY,
  NaN: Number.NaN,
  undefined: undefined,
  '0("2013-03-21T20:04:00Z")': '2013-03-21T20:04:00Z',
  '1(1363896240)': '2013-03-21T20:04:00.000Z',
  '1(1363896240.5)': '2013-03-21T20:04:00.500Z',
};
/** Tags and keys for which a stroke has no use are refused by pointer, not guessed at. */
const REFUSED = /^(23|24|32)\(|^\{1: 2, 3: 4\}$/;

describe('RFC 8949, appendix A', () => {
  test.each(vectors.filter((one) => 'decoded' in one))('$hex is $decoded', ({ hex, decoded }) => {
    const value = decodeCbor(bytes(hex));
    expect(value).toEqual(decoded);
    if (hex === 'f98000') expect(Object.is(value, -0)).toBe(true);
  });

  test.each(vectors.filter(({ diagnostic = '' }) => diagnostic in BY_DIAGNOSTIC))(
    '$hex is $diagnostic',
    ({ hex, diagnostic }) => expect(decodeCbor(bytes(hex))).toEqual(BY_DIAGNOSTIC[diagnostic ?? '']),
  );

  test.each(vectors.filter(({ diagnostic = '' }) => REFUSED.test(diagnostic)))(
    '$hex, $diagnostic, is refused',
    ({ hex }) => expect(() => decodeCbor(bytes(hex))).toThrow(DecodeError),
  );

  test.each(vectors.filter(({ decodedText }) => decodedText !== undefined))(
    '$hex, $decodedText, is beyond 64 bits and refused, or the very number',
    ({ hex, decodedText }) => {
      if (/^c[23]/.test(hex)) expect(() => decodeCbor(bytes(hex))).toThrow(DecodeError);
      else expect(String(decodeCbor(bytes(hex)))).toBe(decodedText);
    },
  );

  test('the shortest floats that the board writes are read', () => {
    const { encodings } = publishedCase<
      object,
      { encodings: { value: number; shortestHex: string; doubleHex: string }[] }
    >('rfc8949-cbor', 'shortest-floats').expected;
    for (const { value, shortestHex, doubleHex } of encodings) {
      expect([decodeCbor(bytes(shortestHex)), decodeCbor(bytes(doubleHex))]).toEqual([value, value]);
    }
  });

  test('half-precision floats, of the library and of our typed arrays', () => {
    const { rows } = publishedCase<object, { rows: [string, number][] }>(
      'rfc8949-cbor',
      'half-floats',
    ).expected;
    for (const [hex, value] of rows) {
      expect(halfFloat(Number.parseInt(hex, 16))).toBe(value);
      expect(decodeCbor(bytes(`d85042${hex}`))).toEqual(Float64Array.of(value));
      expect(decodeCbor(bytes(`d85442${hex.slice(2)}${hex.slice(0, 2)}`))).toEqual(Float64Array.of(value));
    }
  });
});

test.each([
  new Uint16Array([0, 1, 65_535]),
  new Uint32Array([0, 1, 4_294_967_295]),
  new BigUint64Array([0n, 1n, 9_007_199_254_740_991n]),
  new Int8Array([-128, 0, 127]),
  new Int16Array([-32_768, 0, 32_767]),
  new Int32Array([-2_147_483_648, 0, 2_147_483_647]),
  new BigInt64Array([-9_007_199_254_740_991n, 0n, 9_007_199_254_740_991n]),
  new Float32Array([1.5, Number.NaN, -0]),
  new Float64Array([0.1, Number.NaN, -1e300]),
])('RFC 8746, section 2.1: %O as the library writes it', (array) => {
  expect(decodeCbor(encode(array))).toEqual(Float64Array.from(array as ArrayLike<number | bigint>, Number));
});

test('RFC 8746, section 2.1: bytes and clamped bytes, big-endian and little-endian', () => {
  expect(decodeCbor(bytes('d8404300ff01'))).toEqual(Float64Array.of(0, 255, 1));
  expect(decodeCbor(bytes('d8444300ff01'))).toEqual(Float64Array.of(0, 255, 1));
  expect(decodeCbor(bytes('d84942fffe'))).toEqual(Float64Array.of(-2));
  expect(decodeCbor(bytes('d84d42feff'))).toEqual(Float64Array.of(-2));
});

test('RFC 8949, section 3.4.4: 273.15 as a decimal fraction, and what a double makes of any other', () => {
  expect(decodeCbor(bytes('c48221196ab3'))).toBe(273.15);
  // As SenML may write its numbers (RFC 8428, section 6): {2: 273.15}.
  expect(decodeCbor(bytes('a102c48221196ab3'), 'text or label', senmlFieldOf)).toEqual({ v: 273.15 });
  expect(decodeCbor(bytes('c48239018f01'))).toBe(0);
  fc.assert(
    fc.property(
      fc.bigInt({ min: -(2n ** 64n), max: 2n ** 64n - 1n }),
      fc.integer({ min: -400, max: 400 }),
      (mantissa, exponent) => {
        const sent = Buffer.concat([Buffer.of(0xc4, 0x82), encode(exponent), whole(mantissa)]);
        expect(decodeCbor(sent)).toBe(Number(`${mantissa}e${exponent}`));
      },
    ),
  );
  for (const refused of ['c48239019001', 'c48220c24101', 'c482f93c0001', 'c48101', 'c483010101', 'c401']) {
    expect(() => decodeCbor(bytes(refused)), refused).toThrow('A decimal fraction must be');
  }
});

describe('RFC 8949, section 3.2.3: strings in pieces', () => {
  const inPieces = (initial: number, piece: readonly number[], count: number) =>
    Buffer.concat([
      Buffer.of(initial),
      Buffer.alloc(count * piece.length, Buffer.from(piece)),
      Buffer.of(0xff),
    ]);

  test.each([
    ['5fff', ''],
    ['5f40ff', ''],
    ['5f4041aa40ff', 'aa'],
    ['5f42aabb41cc43ddeeffff', 'aabbccddeeff'],
  ])('%s is the bytes "%s"', (hex, sent) => {
    // Bytes stay bytes.
    expect(Buffer.from(decodeCbor(bytes(hex)) as Uint8Array).toString('hex')).toBe(sent);
  });

  test.each([
    ['d8405f420102420304ff', Float64Array.of(1, 2, 3, 4)],
    ['d8455f42010241004100ff', Float64Array.of(513, 0)],
    ['7fff', ''],
    ['7f6161606162ff', 'ab'],
  ])('%s is %o', (hex, value) => expect(decodeCbor(bytes(hex))).toEqual(value));

  test.each([
    ['bytes', 0x5f, [0x40]],
    ['text', 0x7f, [0x61, 0x61]],
  ])('%s may have as many pieces as a body items, also where it is passed over', (_, initial, piece) => {
    const tooMany = inPieces(initial, piece, 2_000_000);
    expect(() => decodeCbor(tooMany)).toThrow('More than 2000000 items');
    expect(() => decodeCbor(Buffer.concat([Buffer.of(0xc1), tooMany]))).toThrow('More than 2000000 items');
    expect(decodeCbor(inPieces(initial, piece, 1_999_999))).toHaveLength(1_999_999 * (piece.length - 1));
  });
});

/** A whole number in eight bytes (RFC 8949, section 3.1). */
function whole(value: bigint): Buffer {
  const sent = Buffer.alloc(9, value < 0n ? 0x3b : 0x1b);
  sent.writeBigUInt64BE(value < 0n ? -1n - value : value, 1);
  return sent;
}
