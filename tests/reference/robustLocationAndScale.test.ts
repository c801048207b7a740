import { describe, expect, test } from 'vitest';
import { median } from '../../analysis/statistics/median.ts';
import { medianAbsoluteDeviation } from '../../analysis/statistics/medianAbsoluteDeviation.ts';
import { quantile } from '../../analysis/statistics/quantile.ts';
import { near } from './values/near.ts';
import { published } from './values/read.ts';

interface Sample {
  x: number[];
}

interface Statistics {
  median: number;
  madRaw: number;
  mad: number;
  iqr7: number;
  q7: number[];
  q6: number[];
  q8: number[];
}

/** R 4.2.2 `median`, `mad` and `quantile` on its own data sets; quantiles of R. J. Hyndman, Y. Fan (1996). */
const cases = published<Sample, Statistics>('robust-location-and-scale');
const TYPE_7 = [0, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 1];
const TYPES_6_AND_8 = [0.05, 0.25, 0.5, 0.75, 0.95];

describe.each(cases)('$id', ({ inputs: { x }, expected }) => {
  test('median', () => expect(median(x)).toBeCloseTo(expected.median, 10));

  test('median absolute deviation, raw and with R’s constant', () => {
    near(medianAbsoluteDeviation(x, 1), expected.madRaw, 1e-12);
    near(medianAbsoluteDeviation(x, 1.4826), expected.mad, 1e-12);
  });

  test('quantiles of types 7, 6 and 8', () => {
    TYPE_7.forEach((p, i) => {
      near(quantile(x, p), expected.q7[i], 1e-12);
    });
    TYPES_6_AND_8.forEach((p, i) => {
      near(quantile(x, p, 6), expected.q6[i], 1e-12);
      near(quantile(x, p, 8), expected.q8[i], 1e-12);
    });
    near(quantile(x, 0.75) - quantile(x, 0.25), expected.iqr7, 1e-12);
  });
});
