import { describe, expect, test } from 'vitest';
import { chiSquareQuantile, chiSquareUpperTail } from '../../analysis/statistics/chiSquare.ts';
import { fQuantile, fUpperTail } from '../../analysis/statistics/fDistribution.ts';
import { incompleteBeta } from '../../analysis/statistics/incompleteBeta.ts';
import { incompleteGamma, incompleteGammaUpper } from '../../analysis/statistics/incompleteGamma.ts';
import { logGamma } from '../../analysis/statistics/logGamma.ts';
import { MAD_TO_SIGMA } from '../../analysis/statistics/medianAbsoluteDeviation.ts';
import { normalDistribution, normalUpperTail } from '../../analysis/statistics/normalDistribution.ts';
import { normalQuantile } from '../../analysis/statistics/normalQuantile.ts';
import { studentTQuantile, studentTUpperTail } from '../../analysis/statistics/studentT.ts';
import { allNear, near } from './values/near.ts';
import { publishedCase } from './values/read.ts';

interface Table {
  inputs: { columns: [string, ...number[]] };
  expected: { rows: number[][] };
}

/** mpmath at 40 digits, definitions of the NIST Digital Library of Mathematical Functions, chapters 5, 7 and 8. */
const table = (id: string) => {
  const { inputs, expected } = publishedCase<Table['inputs'], Table['expected']>('special-functions', id);
  return { columns: inputs.columns, rows: expected.rows };
};

describe('normal distribution (mpmath at 40 digits)', () => {
  test('both tails, relative', () => {
    const { inputs, expected } = publishedCase<{ x: number[] }, { lower: number[]; upper: number[] }>(
      'special-functions',
      'normal-cdf',
    );
    allNear(inputs.x.map(normalDistribution), expected.lower, 1e-12);
    allNear(inputs.x.map(normalUpperTail), expected.upper, 1e-12);
  });

  test('quantiles', () => {
    const { inputs, expected } = publishedCase<{ p: number[] }, { z: number[] }>(
      'special-functions',
      'normal-quantile',
    );
    allNear(inputs.p.map(normalQuantile), expected.z, 1e-13);
  });
});

describe('quantiles by degrees of freedom (mpmath at 40 digits)', () => {
  test.each(table('student-t-quantile').rows)('Student t, %d degrees', (degrees, ...expected) => {
    const [, ...probabilities] = table('student-t-quantile').columns;
    allNear(
      probabilities.map((p) => studentTQuantile(p, degrees)),
      expected,
      1e-11,
    );
  });

  test.each(table('chi-square-quantile').rows)('chi-square, %d degrees', (degrees, ...expected) => {
    const [, ...probabilities] = table('chi-square-quantile').columns;
    allNear(
      probabilities.map((p) => chiSquareQuantile(p, degrees)),
      expected,
      1e-11,
    );
  });

  test.each(table('f-quantile').rows)('F, %d and %d degrees', (numerator, denominator, ...expected) => {
    const probabilities = [0.9, 0.95, 0.975, 0.99];
    allNear(
      probabilities.map((p) => fQuantile(p, numerator, denominator)),
      expected,
      1e-11,
    );
  });

  test.each(table('student-t-two-sided-p').rows)('two-sided p of t = %d, %d degrees', (t, degrees, p) =>
    near(2 * studentTUpperTail(t, degrees), p, 1e-11),
  );
});

describe('printed tables', () => {
  test.each([
    [0.95, 10, 1.812],
    [0.975, 10, 2.228],
    [0.975, 20, 2.086],
    [0.995, 5, 4.032],
  ])('NIST e-Handbook 1.3.6.7.2, t at %d with %d degrees', (p, degrees, printed) =>
    expect(studentTQuantile(p, degrees)).toBeCloseTo(printed, 3),
  );

  test.each([
    [2, 20, 3.493],
    [3, 30, 2.922],
    [10, 10, 2.978],
  ])('NIST e-Handbook 1.3.6.7.3, F at 0.95 with %d and %d degrees', (numerator, denominator, printed) => {
    expect(fQuantile(0.95, numerator, denominator)).toBeCloseTo(printed, 3);
    expect(fUpperTail(printed, numerator, denominator)).toBeCloseTo(0.05, 3);
  });

  test.each([
    [10, 18.307],
    [1, 3.841],
    [30, 43.773],
  ])('NIST e-Handbook 1.3.6.7.4, chi-square at 0.95 with %d degrees', (degrees, printed) => {
    expect(chiSquareQuantile(0.95, degrees)).toBeCloseTo(printed, 3);
    expect(chiSquareUpperTail(printed, degrees)).toBeCloseTo(0.05, 4);
  });
});

describe('gamma and beta functions (mpmath at 40 digits)', () => {
  test.each(table('log-gamma').rows)('ln gamma(%d)', (x, expected) => near(logGamma(x), expected, 1e-13));

  test.each(table('regularised-lower-incomplete-gamma').rows)('P(%d, %d)', (a, x, expected) => {
    near(incompleteGamma(a, x), expected, 1e-12);
    near(incompleteGammaUpper(a, x), 1 - expected, 1e-12);
  });

  test.each(table('regularised-incomplete-beta').rows)('I(%d, %d; %d)', (a, b, x, expected) => {
    near(incompleteBeta(a, b, x), expected, 1e-12);
    near(1 - incompleteBeta(b, a, 1 - x, x), expected, 1e-12);
  });
});

test('the constant that turns a median absolute deviation into sigma', () => {
  const { expected } = publishedCase<object, { madToSigma: number; normalQuartile: number }>(
    'special-functions',
    'consistency-constants',
  );
  near(MAD_TO_SIGMA, expected.madToSigma, 1e-15);
  near(normalQuantile(0.75), expected.normalQuartile, 1e-15);
});
