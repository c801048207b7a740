import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cusum, cusumChange } from '../../../analysis/statistics/cusum.ts';
import { ewma, ewmaHalfWidth } from '../../../analysis/statistics/ewma.ts';
import { individuals } from '../../../analysis/statistics/individuals.ts';
import {
  cusumRunLength,
  designCusum,
  designEwma,
  designShewhart,
  ewmaRunLength,
  shewhartRunLength,
  studentObservations,
} from '../../../analysis/statistics/runLength.ts';

/** Readings have a last digit: no sensor tells 7e-323 or -0 from nothing. */
const readable = (value: number) => Math.round(value * 1e6) / 1e6 + 0;

const series = fc.array(fc.double({ min: -50, max: 50, noNaN: true }).map(readable), { maxLength: 60 });

describe('charts', () => {
  test('mirrored values swap the sums', () => {
    fc.assert(
      fc.property(series, (values) => {
        const options = { target: 0, k: 0.5, h: 5 };
        const plain = cusum(values, options);
        const mirrored = cusum(
          values.map((value) => -value),
          options,
        );
        expect(mirrored.high).toEqual(plain.low);
        expect(mirrored.lowSignals).toEqual(plain.highSignals);
      }),
    );
  });

  test('a missing value leaves sums and average as they are', () => {
    const options = { target: 0, k: 0.5, h: 5 };
    expect([...cusum([3, Number.NaN, 3], options).high]).toEqual([2.5, 2.5, 5]);
    expect([...ewma([3, Number.NaN], 0.5, 1)]).toEqual([2, 2]);
  });

  test('with lambda 1 the average is the value and the limits are Shewhart’s', () => {
    expect([...ewma([4, 7, 2], 1, 0)]).toEqual([4, 7, 2]);
    expect(ewmaHalfWidth(2, 1, 3)).toBe(6);
    expect(ewmaHalfWidth(2, 1, 3, 1)).toBe(6);
  });

  test('too little and too strange', () => {
    expect(cusum([], { target: 0, k: 1, h: 1 }).high).toHaveLength(0);
    expect(individuals([1])).toBeNull();
    expect(() => cusum([1], { target: 0, k: -1, h: 1 })).toThrow(RangeError);
    expect(() => ewma([1], 0, 0)).toThrow(RangeError);
    expect(() => cusumChange(cusum([0], { target: 0, k: 1, h: 1 }), 0, { target: 0, k: 1 })).toThrow(
      RangeError,
    );
  });
});

describe('run lengths', () => {
  test.each([4, 10, 40])('Student observations with %d degrees: the design meets its aim', (degrees) => {
    const observations = studentObservations(degrees);
    const h = designCusum({ k: 0.5, observations }, 400);
    expect(cusumRunLength({ k: 0.5, h, observations })).toBeCloseTo(400, 5);
    expect(h).toBeGreaterThan(designCusum({ k: 0.5 }, 400));
    const widths = designEwma({ lambda: 0.2, observations }, 400);
    expect(ewmaRunLength({ lambda: 0.2, widths, observations })).toBeCloseTo(400, 5);
    const limit = designShewhart({ observations }, 400);
    expect(shewhartRunLength({ limit, observations })).toBeCloseTo(400, 6);
  });

  test('an EWMA of lambda 1 is a Shewhart chart', () => {
    for (const shift of [0, 1, 2.5]) {
      expect(ewmaRunLength({ lambda: 1, widths: 2.5 }, shift)).toBeCloseTo(
        shewhartRunLength({ limit: 2.5 }, shift),
        8,
      );
    }
  });

  test('a shift and its mirror are found equally fast; a larger one faster', () => {
    const chart = { k: 0.5, h: 4, sides: 'two' as const };
    expect(cusumRunLength(chart, 0.7)).toBeCloseTo(cusumRunLength(chart, -0.7), 9);
    expect(cusumRunLength(chart, 1.2)).toBeLessThan(cusumRunLength(chart, 0.7));
  });

  test('misuse throws', () => {
    expect(() => cusumRunLength({ k: 0.5, h: 0 })).toThrow(RangeError);
    expect(() => cusumRunLength({ k: 0.5, h: 4, headstart: 5 })).toThrow(RangeError);
    expect(() => ewmaRunLength({ lambda: 2, widths: 3 })).toThrow(RangeError);
    expect(() => designShewhart({}, 1)).toThrow(RangeError);
    expect(() => studentObservations(0).above(1)).toThrow(RangeError);
  });
});
