import { describe, expect, test } from 'vitest';
import { hodgesLehmann, mannWhitneyDistribution } from '../../analysis/statistics/hodgesLehmann.ts';
import { mannWhitney } from '../../analysis/statistics/mannWhitney.ts';
import { signedRankDistribution } from '../../analysis/statistics/rankSumDistribution.ts';
import { signedRank } from '../../analysis/statistics/signedRank.ts';
import { meanAndVariance, welch } from '../../analysis/statistics/welch.ts';
import { allNear, allWithin, near } from './values/near.ts';
import { publishedCase } from './values/read.ts';

interface Samples {
  x: number[];
  y: number[];
}

const shifts = <Expected>(id: string) => publishedCase<Samples, Expected>('location-shift-tests', id);
const paired = ({ x, y }: Samples) => x.map((value, i) => value - y[i]);

describe('Mann-Whitney and Hodges-Lehmann (R 4.2.2 and scipy 1.10.1 agree)', () => {
  test('M. Hollander, D. A. Wolfe (1973), p. 69, exact', () => {
    const { inputs, expected } = shifts<Record<string, number> & { ci95Exact: number[] }>(
      'mann-whitney-exact-hollander-wolfe-69',
    );
    const exact = mannWhitney(inputs.x, inputs.y)!;
    expect(exact.u).toBe(expected.U);
    near(exact.pTwoSided, expected.pTwoSidedExact, 1e-9);
    near(exact.pGreater, expected.pGreaterExact, 1e-9);
    expect(exact.pGreater).toBeCloseTo(expected.printedPGreater, 4);
    near(exact.superiority, expected.probabilityOfSuperiority, 1e-9);
    near(2 * exact.superiority - 1, expected.rankBiserial, 1e-9);
    near(mannWhitney(inputs.x, inputs.y, { method: 'normal' })!.pTwoSided, expected.pNormalContinuity, 1e-9);
    const shift = hodgesLehmann(inputs.x, inputs.y)!;
    near(shift.shift, expected.hodgesLehmannShift, 1e-9);
    allNear([shift.lower, shift.upper], expected.ci95Exact, 1e-9);
  });

  test('R data set airquality, with ties', () => {
    const { inputs, expected } = shifts<Record<string, number> & { ci95ExactRankTests: number[] }>(
      'mann-whitney-ties-airquality',
    );
    const withTies = mannWhitney(inputs.x, inputs.y, { method: 'normal' })!;
    expect(withTies.u).toBe(expected.U);
    near(withTies.pTwoSided, expected.pTieCorrectedContinuity, 1e-9);
    expect(withTies.pTwoSided).toBeCloseTo(expected.printedP, 7);
    const plain = mannWhitney(inputs.x, inputs.y, { method: 'normal', continuity: false })!;
    near(plain.pTwoSided, expected.pTieCorrectedNoContinuity, 1e-9);
    const exact = mannWhitney(inputs.x, inputs.y, { method: 'exact' })!;
    near(exact.pTwoSided, expected.pExactConditional, 1e-9);
    const shift = hodgesLehmann(inputs.x, inputs.y)!;
    expect(shift.shift).toBe(expected.hodgesLehmannShift);
    // The interval of untied samples: within one difference of the two programs, which part here.
    allWithin([shift.lower, shift.upper], expected.ci95ExactRankTests, 1);
  });

  test('W. J. Conover (1999), p. 276', () => {
    const { inputs, expected } = shifts<Record<string, number>>('rank-sum-dataplot');
    const result = mannWhitney(inputs.x, inputs.y, { method: 'normal' })!;
    expect(result.u).toBe(expected.U);
    expect(result.u + 78).toBe(expected.rankSumX);
    near(result.pTwoSided, expected.pTieCorrectedContinuity, 1e-9);
  });

  test('NIST e-Handbook 7.3.5', () => {
    const { inputs, expected } = publishedCase<
      { groupA: number[]; groupB: number[] },
      Record<string, number>
    >('nist-two-sample', '7.3.5-mann-whitney');
    const { groupA, groupB } = inputs;
    const result = mannWhitney(groupA, groupB, { method: 'normal' })!;
    expect(result.u).toBe(expected.softwareUForA);
    expect(result.u).toBe(expected.printedU);
    expect(mannWhitney(groupB, groupA)!.u).toBe(expected.pageUa);
    near(result.pTwoSided, expected.pTieCorrectedContinuity, 1e-9);
    const plain = mannWhitney(groupA, groupB, { method: 'normal', continuity: false })!;
    near(plain.pTwoSided, expected.pTieCorrectedNoContinuity, 1e-9);
  });

  test('null distribution of U for five and five', () => {
    const { expected } = shifts<{ cumulativeProbability: number[] }>('null-distribution-mann-whitney-5-5');
    let sum = 0;
    const cumulative = mannWhitneyDistribution(5, 5).map((chance) => {
      sum += chance;
      return sum;
    });
    allNear(cumulative, expected.cumulativeProbability, 1e-12);
  });

  test('lower quantiles of U (R qwilcox)', () => {
    const { inputs, expected } = publishedCase<{ sizes: [number, number][] }, { qwilcox: number[] }>(
      'location-shift-tests',
      'mann-whitney-lower-quantiles',
    );
    const quantiles = inputs.sizes.map(([m, n]) => {
      const chances = mannWhitneyDistribution(m, n);
      let u = 0;
      for (let below = chances[0]; below < 0.025; below += chances[u]) u++;
      return u;
    });
    expect(quantiles).toEqual(expected.qwilcox);
  });
});

describe('signed rank test', () => {
  test('M. Hollander, D. A. Wolfe (1973), p. 29 (R help page of wilcox.test)', () => {
    const { inputs, expected } = shifts<Record<string, number> & { ci95Exact: number[] }>(
      'wilcoxon-signed-rank-exact-depression',
    );
    const result = signedRank(paired(inputs))!;
    expect(result.v).toBe(expected.V);
    near(result.pTwoSided, expected.pTwoSidedExact, 1e-9);
    near(result.pGreater, expected.pGreaterExact, 1e-9);
    expect(result.pGreater).toBeCloseTo(expected.printedPGreater, 5);
    near(result.pseudoMedian, expected.pseudoMedian, 1e-9);
    allNear([result.lower, result.upper], expected.ci95Exact, 1e-9);
  });

  test('W. J. Conover (1999), p. 355: one zero difference and ties', () => {
    const { inputs, expected } = shifts<Record<string, number>>('signed-rank-ties-and-zero-dataplot');
    const result = signedRank(paired(inputs))!;
    expect([expected.Wplus, expected.Wminus]).toContain(result.v);
    near(result.pTwoSided, expected.pExactConditional, 1e-9);
  });

  test('null distribution for ten', () => {
    const { expected } = shifts<{ cumulativeProbability: number[] }>('null-distribution-signed-rank-10');
    const chances = signedRankDistribution([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    let sum = 0;
    const cumulative = expected.cumulativeProbability.map((_, v) => {
      sum += chances[2 * v];
      return sum;
    });
    allNear(cumulative, expected.cumulativeProbability, 1e-12);
  });
});

describe('means of two samples', () => {
  interface TTest {
    t: number;
    df: number;
    p: number;
    ci: number[];
  }
  test('Student (1908), sleep: Welch and pooled (R t.test)', () => {
    const { inputs, expected } = shifts<{ welch: TTest; pooled: TTest; printedWelch: TTest }>('welch-sleep');
    for (const [pooled, wanted] of [
      [false, expected.welch],
      [true, expected.pooled],
    ] as const) {
      const result = welch(inputs.x, inputs.y, { pooled })!;
      near(result.t, wanted.t, 1e-9);
      near(result.degreesOfFreedom, wanted.df, 1e-9);
      near(result.pTwoSided, wanted.p, 1e-9);
      allNear([result.lower, result.upper], wanted.ci, 1e-9);
    }
    const result = welch(inputs.x, inputs.y)!;
    expect(result.pTwoSided).toBeCloseTo(expected.printedWelch.p, 5);
    expect(result.t).toBeCloseTo(expected.printedWelch.t, 4);
  });

  test('NIST e-Handbook 7.3.1, Welch', () => {
    interface Inputs {
      process1Old: number[];
      process2New: number[];
    }
    interface Expected {
      t: number;
      df: number;
      pTwoSided: number;
      difference: number;
      ci95: number[];
      sd1: number;
      printed: { t: number; df: number; sd1: number; mean1: number };
    }
    const { inputs, expected } = publishedCase<Inputs, Expected>('nist-two-sample', '7.3.1-welch');
    const result = welch(inputs.process1Old, inputs.process2New)!;
    near(result.t, expected.t, 1e-9);
    near(result.degreesOfFreedom, expected.df, 1e-9);
    near(result.pTwoSided, expected.pTwoSided, 1e-9);
    near(result.difference, expected.difference, 1e-9);
    allNear([result.lower, result.upper], expected.ci95, 1e-9);
    allWithin([result.t], [expected.printed.t], 5e-5);
    allWithin([result.degreesOfFreedom], [expected.printed.df], 0.05);
    const { mean, variance } = meanAndVariance(inputs.process1Old);
    allWithin([mean, Math.sqrt(variance)], [expected.printed.mean1, expected.printed.sd1], 6e-5);
  });

  test('NIST e-Handbook 1.3.5.3, pooled', () => {
    const { inputs, expected } = publishedCase<
      { usMpg: number[]; japanMpg: number[] },
      Record<string, number>
    >('nist-two-sample', '1.3.5.3-pooled');
    const result = welch(inputs.usMpg, inputs.japanMpg, { pooled: true })!;
    near(result.t, expected.t, 1e-9);
    expect(result.degreesOfFreedom).toBe(expected.df);
    expect(result.t).toBeCloseTo(-12.62059, 5);
    const unequal = welch(inputs.usMpg, inputs.japanMpg)!;
    near(unequal.t, expected.welchT, 1e-9);
    near(unequal.degreesOfFreedom, expected.welchDf, 1e-9);
  });
});
