import { describe, expect, test } from 'vitest';
import { autocorrelation } from '../../analysis/statistics/autocorrelation.ts';
import { inversions } from '../../analysis/statistics/inversions.ts';
import { hamedRao, mannKendall } from '../../analysis/statistics/mannKendall.ts';
import { median } from '../../analysis/statistics/median.ts';
import { siegel, theilSen } from '../../analysis/statistics/theilSen.ts';
import { near } from './values/near.ts';
import { published, publishedCase } from './values/read.ts';

const years = (y: number[], start = 0) => y.map((_, i) => start + i);

describe('Mann-Kendall (R cor.test, modifiedmk 1.6 and pyMannKendall agree)', () => {
  interface Variant {
    z: number;
    p: number;
    varS: number;
  }
  interface Expected {
    S: number;
    varS: number;
    z: number;
    p: number;
    tauB: number;
    senSlopePerStep: number;
    autocorrelation0to5: number[];
    hamedRao: { modifiedmk_mmkh: Variant; modifiedmk_mmkh3lag: Variant; pymannkendall: Variant };
  }
  const cases = published<{ y: number[] }, Expected>('trend-mann-kendall', (id) =>
    /^(Nile|nhtemp|Lake)/.test(id),
  );

  test.each(cases)('$id', ({ inputs: { y }, expected }) => {
    const plain = mannKendall(y)!;
    expect(plain.s).toBe(expected.S);
    near(plain.variance, expected.varS, 1e-12);
    near(plain.z, expected.z, 1e-9);
    near(plain.p, expected.p, 1e-8);
    near(plain.tau, expected.tauB, 1e-9);
    near(theilSen(years(y), y)!.slope, expected.senSlopePerStep, 1e-9);
    expected.autocorrelation0to5.forEach((r, lag) => {
      near(autocorrelation(y, lag), r, 1e-9);
    });
  });

  test.each(cases)(
    '$id with the correction of K. H. Hamed, A. R. Rao (1998)',
    ({ inputs: { y }, expected }) => {
      for (const [lags, variant] of [
        [undefined, expected.hamedRao.modifiedmk_mmkh],
        [undefined, expected.hamedRao.pymannkendall],
        [3, expected.hamedRao.modifiedmk_mmkh3lag],
      ] as const) {
        const corrected = hamedRao(y, lags)!;
        near(corrected.variance, variant.varS, 1e-6);
        near(corrected.z, variant.z, 1e-6);
        near(corrected.p, variant.p, 1e-6);
      }
    },
  );

  test('test vector of pyMannKendall with gaps (checked by its authors against four R packages)', () => {
    interface Vector {
      S: number;
      varS: number;
      z: number;
      p: number;
      hamedRao: Variant;
      hamedRaoLag3: Variant;
    }
    const { inputs, expected } = publishedCase<{ y: (number | null)[] }, Vector>(
      'trend-mann-kendall',
      'pymannkendall-test-vector',
    );
    const y = inputs.y.map((value) => value ?? Number.NaN);
    const plain = mannKendall(y)!;
    expect(plain.s).toBe(expected.S);
    near(plain.variance, expected.varS, 1e-12);
    near(plain.z, expected.z, 1e-9);
    near(plain.p, expected.p, 1e-9);
    near(hamedRao(y)!.z, expected.hamedRao.z, 1e-6);
    near(hamedRao(y)!.variance, expected.hamedRao.varS, 1e-6);
    near(hamedRao(y, 3)!.variance, expected.hamedRaoLag3.varS, 1e-6);
  });

  test('M. Hollander, D. A. Wolfe (1973), p. 187: S of nine pairs', () => {
    const { inputs, expected } = publishedCase<{ x: number[]; y: number[] }, { S: number; tau: number }>(
      'trend-mann-kendall',
      'exact-small-sample',
    );
    const order = years(inputs.x).sort((a, b) => inputs.x[a] - inputs.x[b]);
    const { s, tau } = mannKendall(order.map((i) => inputs.y[i]))!;
    expect(s).toBe(expected.S);
    near(tau, expected.tau, 1e-12);
    expect(inversions(order.map((i) => inputs.y[i]))).toBe((36 - expected.S) / 2);
  });
});

describe('Theil-Sen and Siegel (scipy 1.10.1, R mblm 0.12.1, direct loops)', () => {
  interface Expected {
    theilSenSlope: number;
    interceptMedianYMinusSlopeMedianX: number;
    interceptMedianOfResiduals: number;
    ci95: [number, number];
    ci90: [number, number];
    siegelSlope: number;
    siegelInterceptHierarchical: number;
  }
  const cases = published<{ x: number[] | { start: number }; y: number[] }, Expected>(
    'trend-theil-sen-siegel',
  );
  test.each(cases)('$id', ({ inputs, expected }) => {
    const x = Array.isArray(inputs.x) ? inputs.x : years(inputs.y, inputs.x.start);
    const fit = theilSen(x, inputs.y)!;
    near(fit.slope, expected.theilSenSlope, 1e-10);
    near(fit.intercept, expected.interceptMedianOfResiduals, 1e-10);
    near(median(inputs.y) - fit.slope * median(x), expected.interceptMedianYMinusSlopeMedianX, 1e-10);
    near(fit.lower, expected.ci95[0], 1e-10);
    near(fit.upper, expected.ci95[1], 1e-10);
    const narrower = theilSen(x, inputs.y, 0.9)!;
    near(narrower.lower, expected.ci90[0], 1e-10);
    near(narrower.upper, expected.ci90[1], 1e-10);
    const repeated = siegel(x, inputs.y)!;
    near(repeated.slope, expected.siegelSlope, 1e-10);
    near(repeated.intercept, expected.siegelInterceptHierarchical, 1e-10);
  });
});
