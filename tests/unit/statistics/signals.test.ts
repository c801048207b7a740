import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestCuts, changePoints } from '../../../analysis/statistics/changePoints.ts';
import { downsample, largestTriangles } from '../../../analysis/statistics/downsample.ts';
import { goertzel } from '../../../analysis/statistics/goertzel.ts';
import { hampelFilter } from '../../../analysis/statistics/hampelFilter.ts';
import { median } from '../../../analysis/statistics/median.ts';
import { medianAbsoluteDeviation } from '../../../analysis/statistics/medianAbsoluteDeviation.ts';
import { grubbs, outliers } from '../../../analysis/statistics/outliers.ts';
import { peaks } from '../../../analysis/statistics/peaks.ts';
import { pettitt } from '../../../analysis/statistics/pettitt.ts';
import { robustScale, scaleSn, trimmedMean } from '../../../analysis/statistics/robustScale.ts';
import { rollingMedian } from '../../../analysis/statistics/rollingMedian.ts';
import { savitzkyGolay } from '../../../analysis/statistics/savitzkyGolay.ts';

/** Readings have a last digit: no sensor tells 7e-323 or -0 from nothing. */
const readable = (value: number) => Math.round(value * 1e6) / 1e6 + 0;

const series = fc.array(fc.double({ min: -100, max: 100, noNaN: true }).map(readable), {
  minLength: 1,
  maxLength: 80,
});

describe('filters', () => {
  test('the rolling median is the median of every window, gaps left out', () => {
    const gappy = fc.array(
      fc.oneof({ weight: 9, arbitrary: fc.integer({ min: -9, max: 9 }) }, fc.constant(Number.NaN)),
      { maxLength: 50 },
    );
    fc.assert(
      fc.property(gappy, fc.integer({ min: 0, max: 6 }), (values, half) => {
        const byHand = values.map((_, i) => median(values.slice(Math.max(0, i - half), i + half + 1)));
        expect([...rollingMedian(values, half)]).toEqual(byHand);
        expect([...rollingMedian(Float64Array.from(values), half)]).toEqual(byHand);
      }),
    );
  });

  test('so it is without gaps, in windows narrow and wide, of few levels and of many', () => {
    const levels = fc.oneof(
      fc.integer({ min: -2, max: 2 }),
      fc.double({ min: -9, max: 9, noNaN: true }).map(readable),
    );
    const whole = fc.array(levels, { minLength: 1, maxLength: 200 });
    fc.assert(
      fc.property(whole, fc.integer({ min: 0, max: 40 }), (values, half) => {
        const byHand = values.map((_, i) => median(values.slice(Math.max(0, i - half), i + half + 1)));
        expect([...rollingMedian(Float64Array.from(values), half)]).toEqual(byHand);
      }),
    );
  });

  test('a polynomial of the order passes through unchanged, its slope comes out', () => {
    const values = Array.from({ length: 20 }, (_, i) => 3 + 2 * i - 0.5 * i * i);
    savitzkyGolay(values, { window: 7, order: 2 }).forEach((value, i) => {
      expect(value).toBeCloseTo(values[i], 9);
    });
    savitzkyGolay(values, { window: 7, order: 2, derivative: 1, spacing: 0.5 }).forEach((slope, i) => {
      expect(slope).toBeCloseTo((2 - i) / 0.5, 9);
    });
  });

  test('a flat trace with one spike loses it, and a floor keeps small steps', () => {
    const values = [5, 5, 5, 5, 9, 5, 5, 5.01, 5, 5, 5];
    const { values: filtered, replaced } = hampelFilter(values, { halfWindow: 3, floor: 0.05 });
    expect(replaced).toEqual([4]);
    expect(filtered[4]).toBe(5);
    expect(filtered[7]).toBe(5.01);
  });

  test('misuse throws, too little answers NaN', () => {
    expect(() => rollingMedian([1], -1)).toThrow(RangeError);
    expect(() => savitzkyGolay([1, 2], { window: 4, order: 2 })).toThrow(RangeError);
    expect([...savitzkyGolay([1, 2], { window: 5, order: 2 })]).toEqual([Number.NaN, Number.NaN]);
  });
});

describe('tones and peaks', () => {
  test('the amplitude of a sine of whole periods comes back at any frequency', () => {
    for (const periods of [1, 3, 40, 60, 99]) {
      const x = Float64Array.from(
        { length: 200 },
        (_, i) => 1.7 * Math.sin((2 * Math.PI * periods * i) / 200 + 0.4),
      );
      expect(goertzel(x, periods / 200).amplitude).toBeCloseTo(1.7, 9);
    }
    expect(goertzel([], 0.1).power).toBe(0);
    expect(goertzel([3], 0.1).power).toBeCloseTo(9, 12);
  });

  test('no peak is higher than the largest value nor more prominent than the range', () => {
    fc.assert(
      fc.property(series, (values) => {
        const range = Math.max(...values) - Math.min(...values);
        for (const peak of peaks(values)) {
          expect(peak.height).toBe(values[peak.index]);
          expect(peak.prominence).toBeGreaterThan(0);
          expect(peak.prominence).toBeLessThanOrEqual(range);
          expect(peak.width).toBeGreaterThan(0);
        }
      }),
    );
  });
});

describe('thinning', () => {
  test('never hides the smallest or the largest value', () => {
    fc.assert(
      fc.property(series, fc.integer({ min: 1, max: 20 }), (values, buckets) => {
        const kept = downsample(values, buckets).map((index) => values[index]);
        expect(Math.max(...kept)).toBe(Math.max(...values));
        expect(Math.min(...kept)).toBe(Math.min(...values));
      }),
    );
  });

  test('keeps the ends and the count', () => {
    const y = Array.from({ length: 100 }, (_, i) => Math.sin(i));
    const kept = largestTriangles(
      y.map((_, i) => i),
      y,
      12,
    );
    expect(kept).toHaveLength(12);
    expect([kept[0], kept[11]]).toEqual([0, 99]);
    expect(largestTriangles([0, 1], [5, 6], 3)).toEqual([0, 1]);
    expect(() => downsample(y, 0)).toThrow(RangeError);
  });
});

describe('changes and outliers', () => {
  test('the penalised cutting is the cheapest among all numbers of cuts', () => {
    fc.assert(
      fc.property(series, fc.double({ min: 1, max: 5000, noNaN: true }), (values, penalty) => {
        const cuts = changePoints(values, penalty);
        const cost = (count: number) => (bestCuts(values, count)?.sumOfSquares ?? Infinity) + penalty * count;
        const cheapest = Math.min(...[0, 1, 2, 3, 4, cuts.length].map(cost));
        expect(cost(cuts.length)).toBeLessThanOrEqual(cheapest + 1e-6 * Math.abs(cheapest));
        expect(bestCuts(values, cuts.length)!.sumOfSquares + 0).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 40 },
    );
  });

  test('one clear step is found by both, at the same place', () => {
    const values = Array.from({ length: 40 }, (_, i) => (i < 20 ? 9 : 11) + 0.3 * Math.sin(5 * i));
    expect(changePoints(values, 2)).toEqual([20]);
    expect(pettitt(values)!.firstIndex).toBe(20);
  });

  test('too little', () => {
    expect(changePoints([1], 1)).toEqual([]);
    expect(bestCuts([1, 2, 3], 1, 2)).toBeNull();
    expect(pettitt([1])).toBeNull();
    expect(outliers([1, 2, 90], 2)).toEqual([]);
    expect(grubbs([1, 1, 1])).toBeNull();
    expect(robustScale([1])).toBeNaN();
    expect(scaleSn([])).toBeNaN();
    expect(() => changePoints([1, 2], -1)).toThrow(RangeError);
    expect(() => trimmedMean([1], 0.5)).toThrow(RangeError);
  });

  test('half of the values being wild, the spread still is that of the rest', () => {
    const values = Array.from({ length: 41 }, (_, i) => (i < 19 ? 1e6 * (i + 1) : Math.sin(i)));
    expect(robustScale(values)).toBeLessThan(20);
    expect(scaleSn(values)).toBeLessThan(20);
  });
});

test('the Hampel filter’s shortcut says what the median absolute deviation says, gaps included', () => {
  const gappy = fc.array(
    fc.oneof({ weight: 9, arbitrary: fc.integer({ min: -30, max: 30 }) }, fc.constant(Number.NaN)),
    {
      minLength: 7,
      maxLength: 40,
    },
  );
  fc.assert(
    fc.property(gappy, (values) => {
      const byHand: number[] = [];
      for (let i = 3; i < values.length - 3; i++) {
        const window = values.slice(i - 3, i + 4);
        const deviation = Math.abs(values[i] - median(window));
        if (deviation > 0 && deviation > 2.5 * medianAbsoluteDeviation(window, 1)) byHand.push(i);
      }
      expect(hampelFilter(values, { halfWindow: 3, threshold: 2.5, constant: 1 }).replaced).toEqual(byHand);
    }),
  );
});
