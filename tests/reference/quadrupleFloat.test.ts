import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quadrupleFloat } from '../../ingest/cbor/quadrupleFloat.ts';

const FRACTION_BITS = 112n;
const BIAS = 16_383;

interface Quadruple {
  readonly negative: boolean;
  readonly biased: number;
  readonly fraction: bigint;
}

/** The sixteen bytes of IEEE 754-2019, section 3.4, first byte first. */
function bytesOf({ negative, biased, fraction }: Quadruple): Uint8Array {
  const bits = ((negative ? 1n : 0n) << 127n) | (BigInt(biased) << FRACTION_BITS) | fraction;
  return Uint8Array.from({ length: 16 }, (_, i) => Number((bits >> BigInt(8 * (15 - i))) & 0xffn));
}

function read(quadruple: Quadruple): number {
  const bytes = bytesOf(quadruple);
  const either = [bytes, bytes.toReversed()].map((sent, i) =>
    quadrupleFloat(new DataView(sent.buffer), 0, i === 1),
  );
  expect(either[0]).toBe(either[1]);
  return either[0];
}

/** A double as DataView has its bits, written with the wider exponent and fraction; subnormal ones made normal. */
function widened(double: number): Quadruple {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, double);
  const bits = view.getBigUint64(0);
  const negative = bits >> 63n === 1n;
  const exponent = Number((bits >> 52n) & 0x7ffn);
  const fraction = bits & (2n ** 52n - 1n);
  if (exponent === 0x7ff) return { negative, biased: 0x7fff, fraction: fraction << 60n };
  if (exponent === 0 && fraction === 0n) return { negative, biased: 0, fraction: 0n };
  if (exponent > 0) return { negative, biased: exponent - 1023 + BIAS, fraction: fraction << 60n };
  const bitsOfFraction = fraction.toString(2).length;
  const leadless = fraction - 2n ** BigInt(bitsOfFraction - 1);
  return {
    negative,
    biased: bitsOfFraction - 1 - 1074 + BIAS,
    fraction: leadless << (FRACTION_BITS - BigInt(bitsOfFraction - 1)),
  };
}

test('every double comes back as itself', () => {
  fc.assert(
    fc.property(fc.double(), (double) => {
      expect(read(widened(double))).toBe(double);
    }),
    { numRuns: 5000 },
  );
  for (const double of [0, -0, 5e-324, -5e-324, 2 ** -1022, Number.MAX_VALUE]) {
    expect(read(widened(double))).toBe(double);
  }
});

/** The decimal digits of a quadruple float are finitely many: the engine's own reading of them is the reference. */
function decimalOf({ negative, biased, fraction }: Quadruple): string {
  const significand = 2n ** FRACTION_BITS + fraction;
  const exponent = biased - BIAS - Number(FRACTION_BITS);
  const sign = negative ? '-' : '';
  if (exponent >= 0) return `${sign}${significand * 2n ** BigInt(exponent)}`;
  return `${sign}${significand * 5n ** BigInt(-exponent)}e${exponent}`;
}

const BEHIND_A_DOUBLE = 2n ** 60n;
/** Halves between two doubles, and what lies just beside them, as well as any bits at all. */
const fraction = fc.oneof(
  fc.bigInt({ min: 0n, max: 2n ** FRACTION_BITS - 1n }),
  fc
    .tuple(fc.bigInt({ min: 0n, max: 2n ** 52n - 1n }), fc.constantFrom(-1n, 0n, 1n))
    .map(([whole, beside]) => whole * BEHIND_A_DOUBLE + BEHIND_A_DOUBLE / 2n + beside),
);
/** From what is too small for a double to what is too large. */
const biased = fc.oneof(
  fc.integer({ min: BIAS - 1100, max: BIAS + 1030 }),
  fc.integer({ min: BIAS - 1080, max: BIAS - 1020 }),
);

test('whatever lies between two doubles becomes the nearest, of two the even one', () => {
  fc.assert(
    fc.property(fc.record({ negative: fc.boolean(), biased, fraction }), (quadruple) => {
      expect(read(quadruple)).toBe(Number(decimalOf(quadruple)));
    }),
    { numRuns: 5000 },
  );
  for (const exponent of [-1074, -1050, -1023]) {
    // Exactly half of the smallest steps above it.
    const quadruple = { negative: false, biased: exponent - 1 + BIAS, fraction: 2n ** 111n };
    expect(read(quadruple)).toBe(Number(decimalOf(quadruple)));
    expect(read({ ...quadruple, fraction: 0n })).toBe(Number(decimalOf({ ...quadruple, fraction: 0n })));
  }
});

test('what is smaller than any double is nothing, what is larger is without end', () => {
  expect(read({ negative: true, biased: 0, fraction: 1n })).toBe(-0);
  expect(read({ negative: false, biased: 1, fraction: 0n })).toBe(0);
  expect(read({ negative: true, biased: 0x7ffe, fraction: 0n })).toBe(Number.NEGATIVE_INFINITY);
  expect(read({ negative: false, biased: 0x7fff, fraction: 1n })).toBeNaN();
});
