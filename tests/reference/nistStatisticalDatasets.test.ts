import { describe, expect, test } from 'vitest';
import { autocorrelation } from '../../analysis/statistics/autocorrelation.ts';
import { leastSquares } from '../../analysis/statistics/leastSquares.ts';
import { meanAndVariance } from '../../analysis/statistics/welch.ts';
import { allNear, near } from './values/near.ts';
import { published } from './values/read.ts';

describe('NIST Statistical Reference Datasets, univariate: certified values', () => {
  interface Series {
    y?: number[];
    first: number;
    pair: [number, number];
    pairs: number;
  }
  interface Certified {
    mean: number;
    sampleStandardDeviation: number;
    lag1Autocorrelation: number;
  }
  /** Doubles cannot hold the values of the last two exactly, which limits what any method can reach. */
  const within: Record<string, number> = { Mavro: 1e-9, Michelso: 1e-10, NumAcc3: 1e-8, NumAcc4: 1e-7 };

  test.each(published<Series, Certified>('nist-strd-univariate'))('$id', ({ id, inputs, expected }) => {
    const { first, pair, pairs } = inputs;
    const y = inputs.y ?? [first, ...Array.from({ length: pairs }, () => pair).flat()];
    const tolerance = within[id] ?? 1e-12;
    const { mean, variance } = meanAndVariance(y);
    near(mean, expected.mean, 1e-13);
    near(Math.sqrt(variance), expected.sampleStandardDeviation, tolerance);
    near(autocorrelation(y, 1), expected.lag1Autocorrelation, tolerance);
  });
});

describe('NIST Statistical Reference Datasets, linear least squares: certified values', () => {
  interface Inputs {
    model: string;
    x: number[] | number[][];
    y: number[];
  }
  interface Certified {
    coefficients: number[];
    standardErrors: number[];
    residualStandardDeviation: number;
    residualSumOfSquares: number;
    residualDf: number;
  }
  const within: Record<string, number> = {
    Norris: 1e-10,
    Pontius: 1e-9,
    NoInt1: 1e-12,
    NoInt2: 1e-12,
    Longley: 1e-7,
  };

  test.each(published<Inputs, Certified>('nist-strd-linear-regression'))(
    '$id',
    ({ id, inputs, expected }) => {
      const rows = inputs.x.map((x) => {
        const row = [x].flat();
        if (inputs.model.includes('through the origin')) return row;
        return inputs.model.includes('x^2') ? [1, row[0], row[0] ** 2] : [1, ...row];
      });
      const fit = leastSquares(rows, inputs.y)!;
      allNear(fit.coefficients, expected.coefficients, within[id], 'coefficient');
      allNear(fit.standardErrors, expected.standardErrors, within[id], 'standard error');
      near(fit.residualStandardDeviation, expected.residualStandardDeviation, within[id]);
      near(fit.residualSumOfSquares, expected.residualSumOfSquares, within[id]);
      expect(fit.degreesOfFreedom).toBe(expected.residualDf);
    },
  );
});
