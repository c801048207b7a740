import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hodgesLehmann } from '../../../analysis/statistics/hodgesLehmann.ts';
import { inversions, midranks, tieSizes } from '../../../analysis/statistics/inversions.ts';
import { hamedRao, mannKendall } from '../../../analysis/statistics/mannKendall.ts';
import { mannWhitney } from '../../../analysis/statistics/mannWhitney.ts';
import { pairwiseSlopes } from '../../../analysis/statistics/pairwiseSlopes.ts';
import { signedRank } from '../../../analysis/statistics/signedRank.ts';
import { siegel, theilSen } from '../../../analysis/statistics/theilSen.ts';
import { welch } from '../../../analysis/statistics/welch.ts';

const whole = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 3, maxLength: 40 });

describe('trend', () => {
  test('inversions are what counting all pairs gives', () => {
    fc.assert(
      fc.property(whole, (values) => {
        let pairs = 0;
        for (let i = 0; i < values.length; i++) {
          for (let j = i + 1; j < values.length; j++) if (values[i] > values[j]) pairs++;
        }
        expect(inversions(values)).toBe(pairs);
      }),
    );
  });

  test('a series and its reverse have opposite trends', () => {
    fc.assert(
      fc.property(whole, (values) => {
        const forward = mannKendall(values)!;
        const backward = mannKendall([...values].reverse())!;
        expect(backward.s + forward.s).toBe(0);
        expect(backward.p).toBe(forward.p);
      }),
    );
  });

  test('counted slopes agree with listed ones, equal x included', () => {
    const n = 500;
    const x = Float64Array.from({ length: n }, (_, i) => Math.floor(i / 2));
    const y = x.map((value, i) => 0.01 * value + Math.sin(7 * i) + (i % 11 === 0 ? 5 : 0));
    const slopes = [];
    for (let i = 0; i < n; i++) {
      for (let j = i + 1; j < n; j++) if (x[j] !== x[i]) slopes.push((y[j] - y[i]) / (x[j] - x[i]));
    }
    slopes.sort((a, b) => a - b);
    const counted = pairwiseSlopes(x, y);
    expect(counted.count).toBe(slopes.length);
    for (const rank of [0, 1000, slopes.length >> 1, slopes.length - 1]) {
      expect(counted.atRank(rank)).toBeCloseTo(slopes[rank], 9);
    }
  });

  test('too little answers null, mismatch throws', () => {
    expect(mannKendall([1, 2])).toBeNull();
    expect(hamedRao([1, Number.NaN, 2])).toBeNull();
    expect(theilSen([1, 1], [2, 3])).toBeNull();
    expect(siegel([1, 1], [2, 3])).toBeNull();
    expect(() => theilSen([1], [1, 2])).toThrow(RangeError);
    expect(() => theilSen([1, 2], [1, 2], 1)).toThrow(RangeError);
  });

  test('a flat series has no trend at all', () => {
    expect(mannKendall([5, 5, 5, 5])).toEqual({ s: 0, variance: 0, z: 0, p: 1, tau: 0 });
    expect(theilSen([1, 2, 3, 4], [5, 5, 5, 5])!.slope).toBe(0);
  });
});

describe('ranks', () => {
  test('share the mean where values are equal', () => {
    expect([...midranks([7, 3, 7, 1])]).toEqual([3.5, 2, 3.5, 1]);
    expect(tieSizes([7, 3, 7, 1, 3, 7])).toEqual([2, 3]);
  });
});

describe('shift between two samples', () => {
  test('two against two: the range of the differences, and two thirds of confidence', () => {
    const shift = hodgesLehmann([10, 11], [7, 7.5])!;
    expect(shift.lower).toBe(2.5);
    expect(shift.upper).toBe(4);
    expect(shift.confidence).toBeCloseTo(2 / 3, 12);
  });

  test('what is added to one sample is added to the shift; exchanging the samples mirrors it', () => {
    fc.assert(
      fc.property(whole, whole, (x, y) => {
        const plain = hodgesLehmann(x, y)!;
        const moved = hodgesLehmann(
          x.map((value) => value + 3),
          y,
        )!;
        expect(moved.shift).toBe(plain.shift + 3);
        const exchanged = hodgesLehmann(y, x)!;
        expect(exchanged.shift + plain.shift).toBe(0);
        expect(exchanged.lower + plain.upper).toBe(0);
      }),
    );
  });

  test('many against many uses the normal rank and stays close to the mean’s interval', () => {
    const x = Float64Array.from({ length: 60 }, (_, i) => Math.sin(i * 2.1) + 1);
    const y = Float64Array.from({ length: 70 }, (_, i) => Math.sin(i * 1.3));
    const byRank = hodgesLehmann(x, y)!;
    const byMean = welch(x, y)!;
    expect(byRank.confidence).toBe(0.95);
    expect(Math.abs(byRank.lower - byMean.lower)).toBeLessThan(0.15);
    expect(Math.abs(byRank.upper - byMean.upper)).toBeLessThan(0.15);
  });

  test('too little answers null; equal values speak for nothing', () => {
    expect(hodgesLehmann([], [1])).toBeNull();
    expect(mannWhitney([], [1])).toBeNull();
    expect(welch([1], [1, 2])).toBeNull();
    expect(welch([1, 1], [1, 1])).toBeNull();
    expect(signedRank([0, 0])).toBeNull();
    expect(mannWhitney([2, 2], [2, 2], { method: 'normal' })!.pTwoSided).toBe(1);
    expect(mannWhitney([2, 2], [2, 2])!.pTwoSided).toBe(1);
    expect(() => hodgesLehmann([1], [1], 1)).toThrow(RangeError);
  });
});
