import { expect, test } from 'vitest';
import { extremeDeviates, grubbs, modifiedScores, outliers } from '../../analysis/statistics/outliers.ts';
import { allNear, allWithin, near } from './values/near.ts';
import { publishedCase } from './values/read.ts';

interface Sample {
  x: number[];
  maxOutliers: number;
}

interface Test {
  statistic: number;
  criticalValue: number;
  printedStatistic?: number;
  printedCritical?: number;
  reject: boolean;
}

test.each([
  ['grubbs-one-sided-upper', 'above'],
  ['grubbs-two-sided', 'either'],
] as const)('NIST e-Handbook 1.3.5.17.1, %s', (id, side) => {
  const { inputs, expected } = publishedCase<Sample, Test>('nist-outliers', id);
  const { index, statistic, criticalValue } = grubbs(inputs.x, { side })!;
  expect(index).toBe(7);
  near(statistic, expected.statistic, 1e-8);
  near(criticalValue, expected.criticalValue, 1e-8);
  expect(statistic > criticalValue).toBe(expected.reject);
  // The page cuts the statistic instead of rounding it and rounds the limit to four figures.
  if (expected.printedStatistic) allWithin([statistic], [expected.printedStatistic], 1e-4);
  if (expected.printedCritical) allWithin([criticalValue], [expected.printedCritical], 5e-4);
});

test('NIST e-Handbook 1.3.5.17.3, generalised extreme studentised deviates', () => {
  interface Expected {
    R: number[];
    lambda: number[];
    printedR: number[];
    printedLambda: number[];
    removedIndices0Based: number[];
    numberOfOutliers: number;
    outlierValues: number[];
  }
  const { inputs, expected } = publishedCase<Sample, Expected>('nist-outliers', 'generalized-esd');
  const steps = extremeDeviates(inputs.x, inputs.maxOutliers);
  allNear(
    steps.map(({ statistic }) => statistic),
    expected.R,
    1e-8,
  );
  allNear(
    steps.map(({ criticalValue }) => criticalValue),
    expected.lambda,
    1e-8,
  );
  allWithin(
    steps.map(({ statistic }) => statistic),
    expected.printedR,
    0.0011,
  );
  allWithin(
    steps.map(({ criticalValue }) => criticalValue),
    expected.printedLambda,
    0.0011,
  );
  expect(steps.map(({ index }) => index)).toEqual(expected.removedIndices0Based);
  const found = outliers(inputs.x, inputs.maxOutliers);
  expect(found).toHaveLength(expected.numberOfOutliers);
  expect(found.map((index) => inputs.x[index])).toEqual(expected.outlierValues);
});

test('B. Iglewicz, D. C. Hoaglin (1993), modified scores', () => {
  const { inputs, expected } = publishedCase<Sample, { modifiedZ: number[]; flagged0Based: number[] }>(
    'nist-outliers',
    'modified-z',
  );
  const scores = modifiedScores(inputs.x);
  allNear(scores, expected.modifiedZ, 1e-9);
  expect(inputs.x.flatMap((_, i) => (Math.abs(scores[i]) > 3.5 ? [i] : []))).toEqual(expected.flagged0Based);
});
