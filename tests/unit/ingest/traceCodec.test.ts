import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Clock, RecordedTrace } from '../../../ingest/stroke.ts';
import { decodeTrace, encodeTrace } from '../../../ingest/traceCodec.ts';

const traceOf = (amps: ArrayLike<number>, clock: Clock = { rateHz: 50 }): RecordedTrace => ({
  sides: [{ side: 'main', clock, amps: Float64Array.from(amps) }],
  supply: null,
  ambientC: null,
});

/** Bit for bit: -0 is not 0, NaN is NaN. */
function expectSame(actual: ArrayLike<number>, expected: ArrayLike<number>): void {
  expect(actual.length).toBe(expected.length);
  for (let i = 0; i < expected.length; i++) {
    if (!Object.is(actual[i], expected[i])) expect([i, actual[i]]).toEqual([i, expected[i]]);
  }
}

const roundTrip = (amps: ArrayLike<number>) => decodeTrace(encodeTrace(traceOf(amps))).sides[0].amps;

const gap = fc.constant(Number.NaN);
const milliamps = fc.integer({ min: -40_000, max: 400_000 }).map((n) => n / 1000);
const anyNumber = fc.double({ noNaN: true, noDefaultInfinity: true, min: -10_000, max: 10_000 });

describe('a trace comes back to the last bit', () => {
  test.each([
    ['milliamperes with gaps and -0', fc.oneof(milliamps, gap, fc.constant(-0))],
    ['any numbers', fc.oneof(anyNumber, gap)],
    ['a mixture of both', fc.oneof(milliamps, anyNumber)],
    ['single precision', fc.oneof(fc.float({ noNaN: true, noDefaultInfinity: true }), gap)],
    ['counts times a step', fc.integer({ min: -4096, max: 4095 }).map((n) => n * 0.01221)],
    ['single precision of decimals', milliamps.map(Math.fround)],
  ])('%s', (_name, sample) => {
    fc.assert(
      fc.property(fc.array(sample, { maxLength: 400, size: 'max' }), (amps) =>
        expectSame(roundTrip(amps), amps),
      ),
      { numRuns: 150 },
    );
  });

  test('200,000 samples', () => {
    const amps = Float64Array.from(
      { length: 200_000 },
      (_, i) => Math.round(8000 + 900 * Math.sin(i / 7)) / 1000,
    );
    expectSame(roundTrip(amps), amps);
  });

  test.each([
    ['largest and smallest', [10_000, -10_000, 5e-324, 1.7976931348623157e308, -0, 0]],
    ['thirteen digits', [0.1234567890123, 0.1234567890124]],
    ['jumps across the whole range at a fine resolution', [-10_000, 10_000, 0.000_001, -9999.999_999]],
    ['nothing but gaps', [Number.NaN, Number.NaN]],
    ['one sample', [3.25]],
    ['none', []],
  ])('%s', (_name, amps) => {
    expectSame(roundTrip(amps), amps);
  });

  test('sample times, the supply, names and the temperature', () => {
    const time = fc.uniqueArray(fc.oneof(anyNumber, milliamps), { minLength: 2, maxLength: 200 });
    fc.assert(
      fc.property(time, fc.string({ unit: 'grapheme' }), anyNumber, (times, name, ambientC) => {
        const t = Float64Array.from(times).sort();
        const amps = t.map((second) => second * 3);
        const sent: RecordedTrace = {
          sides: [
            { side: name, clock: { t }, amps },
            { side: 'rear', clock: { t: t.slice() }, amps },
          ],
          supply: { clock: { rateHz: 12.5 }, volts: Float64Array.from([12.9, 12.1]) },
          ambientC,
        };
        expect(decodeTrace(encodeTrace(sent))).toEqual(sent);
      }),
      { numRuns: 100 },
    );
  });
});

describe('bytes', () => {
  test('a converter of coarse steps costs no more than its counts', () => {
    const counts = Array.from({ length: 1000 }, (_, i) => 300 + ((i * 7) % 5));
    const fine = encodeTrace(traceOf(counts)).length;
    expect(encodeTrace(traceOf(counts.map((n) => (n * 25) / 1000))).length).toBeLessThanOrEqual(fine + 4);
    expect(encodeTrace(traceOf(counts.map((n) => n * 0.0123))).length).toBeLessThanOrEqual(fine + 12);
  });

  test('steady sample times cost next to nothing', () => {
    const t = Float64Array.from({ length: 1000 }, (_, i) => (i * 20) / 1000);
    const amps = new Float64Array(1000);
    expect(encodeTrace(traceOf(amps, { t })).length).toBeLessThan(60);
  });
});

describe('damaged bytes are told from sound ones', () => {
  const sound = encodeTrace(traceOf([1.5, 2.25, Number.NaN, 3]));

  test('any one byte changed', () => {
    for (let i = 0; i < sound.length; i++) {
      const damaged = Buffer.from(sound);
      damaged[i] ^= 0x40;
      expect(() => decodeTrace(damaged)).toThrow(/cannot be read/);
    }
  });

  test('cut short at any place', () => {
    for (let i = 0; i < sound.length; i++) {
      expect(() => decodeTrace(sound.subarray(0, i))).toThrow(/cannot be read/);
    }
  });
});
