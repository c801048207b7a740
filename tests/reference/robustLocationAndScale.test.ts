import { describe, expect, test } from 'vitest';
import { huberLocation, huberProposal2 } from '../../analysis/statistics/huberLocation.ts';
import { median } from '../../analysis/statistics/median.ts';
import { medianAbsoluteDeviation } from '../../analysis/statistics/medianAbsoluteDeviation.ts';
import { quantile } from '../../analysis/statistics/quantile.ts';
import { hinges, robustScale, scaleSn, trimmedMean } from '../../analysis/statistics/robustScale.ts';
import { allNear, near } from './values/near.ts';
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
  Qn: number;
  QnNoCorr: number;
  Sn: number;
  SnNoCorr: number;
  fivenum: number[];
  trim10: number;
  trim20: number;
  'huberLocationK1.5'?: { mu: number; s: number };
  'huberProposal2K1.5'?: { mu: number; s: number };
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

  test('Qn and Sn (robustbase 0.95; P. J. Rousseeuw, C. Croux 1993)', () => {
    // The package rounds the constant to 2.21914; ours is 1 / (sqrt(2) x the normal quantile of 5/8).
    near(robustScale(x), expected.Qn, 3e-6);
    near(robustScale(x, false), expected.QnNoCorr, 3e-6);
    near(scaleSn(x), expected.Sn, 1e-8);
    near(scaleSn(x, false), expected.SnNoCorr, 1e-8);
  });

  test('hinges and trimmed means', () => {
    const { lower, median: middle, upper } = hinges(x);
    allNear([lower, middle, upper], expected.fivenum.slice(1, 4), 1e-12);
    near(trimmedMean(x, 0.1), expected.trim10, 1e-12);
    near(trimmedMean(x, 0.2), expected.trim20, 1e-12);
  });

  test('Huber’s location and proposal 2 (MASS 7.3-58.2, which stops at 1e-6)', () => {
    const location = expected['huberLocationK1.5'];
    const proposal = expected['huberProposal2K1.5'];
    if (location) {
      const found = huberLocation(x, 1.5, 1.4826);
      near(found.location, location.mu, 1e-6);
      near(found.scale, location.s, 1e-9);
    }
    if (proposal) {
      const found = huberProposal2(x, 1.5, 1.4826);
      near(found.location, proposal.mu, 1e-5);
      near(found.scale, proposal.s, 1e-5);
    }
  });
});
