import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { huberRegression } from '../../../analysis/statistics/huberRegression.ts';
import { median } from '../../../analysis/statistics/median.ts';
import { medianAbsoluteDeviation } from '../../../analysis/statistics/medianAbsoluteDeviation.ts';
import { quantile } from '../../../analysis/statistics/quantile.ts';
import { predict, shrunkRegression } from '../../../analysis/statistics/shrunkRegression.ts';

/** Readings have a last digit: no sensor tells 7e-323 or -0 from nothing. */
const readable = (value: number) => Math.round(value * 1e6) / 1e6 + 0;

const numbers = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }).map(readable), {
  minLength: 1,
  maxLength: 60,
});

describe('order statistics', () => {
  test('quantile is what sorting gives, and the median is its middle', () => {
    fc.assert(
      fc.property(numbers, fc.double({ min: 0, max: 1, noNaN: true }), (values, p) => {
        const sorted = [...values].sort((a, b) => a - b);
        const rank = (sorted.length - 1) * p;
        const below = Math.floor(rank);
        const above = Math.min(below + 1, sorted.length - 1);
        const byHand = sorted[below] + (rank - below) * (sorted[above] - sorted[below]);
        expect(Math.abs(quantile(values, p) - byHand)).toBeLessThanOrEqual(1e-7);
        expect(Math.abs(median(values) - quantile(values, 0.5))).toBeLessThanOrEqual(1e-9);
      }),
    );
  });

  test('so it is of many values too: all alike, of few levels, in order, at either end and with one far away', () => {
    const shapes: Record<string, (i: number, n: number) => number> = {
      alike: () => 3,
      levels: (i) => (i * 7919) % 5,
      rising: (i) => i,
      falling: (i, n) => n - i,
      steps: (i, n) => (i < n / 2 ? 0 : 9) + ((i * 31) % 17) / 100,
      periodic: (i, n) => Math.floor((32 * i) / n) % 2,
      far: (i, n) => (i === n - 1 ? 1e9 : Math.sin(i)),
      random: (i) => ((i * 2654435761) % 4294967296) / 4294967296,
    };
    for (const [shape, valueAt] of Object.entries(shapes)) {
      for (const n of [250, 251, 252, 1001, 5000]) {
        const values = Array.from({ length: n }, (_, i) => valueAt(i, n));
        const sorted = values.toSorted((a, b) => a - b);
        for (let rank = 0; rank < n; rank += rank < 3 || rank > n - 4 ? 1 : Math.floor(n / 9)) {
          const at = quantile(values, rank / (n - 1));
          expect([shape, n, rank, at]).toEqual([shape, n, rank, sorted[rank]]);
        }
        const middle = (sorted[(n - 1) >> 1] + sorted[n >> 1]) / 2;
        expect(Math.abs(median(values) - middle)).toBeLessThanOrEqual(1e-12 * Math.abs(middle));
      }
    }
  });

  test('inputs are left as they were and NaN counts as missing', () => {
    const values = Object.freeze([3, Number.NaN, 1, 2]);
    expect(median(values)).toBe(2);
    expect(quantile(values, 1)).toBe(3);
    expect(medianAbsoluteDeviation(values, 1)).toBe(1);
  });

  test('nothing to go by answers NaN; an impossible probability throws', () => {
    expect(median([])).toBeNaN();
    expect(quantile([Number.NaN], 0.5)).toBeNaN();
    expect(medianAbsoluteDeviation([])).toBeNaN();
    expect(() => quantile([1], 1.1)).toThrow(RangeError);
    expect(() => quantile([1], Number.NaN)).toThrow(RangeError);
  });

  test('the deviation scales with the values and ignores their level', () => {
    fc.assert(
      fc.property(numbers, (values) => {
        const changed = values.map((value) => 4 * value + 8);
        const difference = medianAbsoluteDeviation(changed) - 4 * medianAbsoluteDeviation(values);
        expect(Math.abs(difference)).toBeLessThanOrEqual(1e-7);
      }),
    );
  });
});

describe('regression', () => {
  const rows = Array.from({ length: 12 }, (_, i) => [1, i - 5.5]);
  const responses = rows.map(([, x], i) => 9 + 0.2 * x + (i % 3) * 0.1 - 0.1);

  test('one wild response hardly moves the fit', () => {
    const wild = responses.map((y, i) => (i === 4 ? 60 : y));
    const fit = huberRegression(rows, wild)!;
    expect(fit.coefficients[0]).toBeCloseTo(9, 0);
    expect(fit.weights[4]).toBeLessThan(0.02);
  });

  test('a sharp prior holds a coefficient, a vague one lets it go', () => {
    const held = shrunkRegression(rows, responses, {
      prior: { means: [9, 0.5], standardDeviations: [10, 1e-6] },
      scaleFloor: 0.05,
    })!;
    expect(held.coefficients[1]).toBeCloseTo(0.5, 4);
    const free = shrunkRegression(rows, responses, {
      prior: { means: [9, 0.5], standardDeviations: [10, 10] },
      scaleFloor: 0.05,
    })!;
    expect(free.coefficients[1]).toBeCloseTo(0.2, 1);
    expect(free.effectiveParameters).toBeCloseTo(2, 2);
  });

  test('without observations the prior is the answer, and its spread the prediction’s', () => {
    const prior = { means: [9, 0.5], standardDeviations: [3, 1] };
    const fit = shrunkRegression([], [], { prior, scaleFloor: 4 })!;
    expect(predict(fit, [1, 0])).toEqual({ value: 9, standardDeviation: 5 });
    expect(shrunkRegression([], [], { prior: { means: [0], standardDeviations: [Infinity] } })).toBeNull();
  });

  test('one observation, all responses alike, still gives an answer within the prior', () => {
    const prior = { means: [8, 0], standardDeviations: [1, 1] };
    const one = shrunkRegression([[1, 0.5]], [9], { prior, scaleFloor: 0.1 })!;
    expect(predict(one, [1, 0.5]).value).toBeCloseTo(9, 1);
    const alike = shrunkRegression(
      [
        [1, 0.5],
        [1, 0.5],
      ],
      [9, 9],
      { prior },
    )!;
    expect(predict(alike, [1, 0.5]).value).toBeCloseTo(9, 3);
  });

  test('too few, collinear or mismatched observations', () => {
    expect(huberRegression([[1, 2]], [3])).toBeNull();
    expect(
      huberRegression(
        [
          [1, 2],
          [1, 2],
          [1, 2],
        ],
        [3, 4, 5],
      ),
    ).toBeNull();
    expect(huberRegression([], [])).toBeNull();
    expect(() => huberRegression([[1], [1]], [3])).toThrow(RangeError);
    expect(() => huberRegression([[1], [1, 2]], [3, 4])).toThrow(RangeError);
  });
});
