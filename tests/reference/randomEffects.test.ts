import { describe, expect, test } from 'vitest';
import {
  betweenVariance,
  type InterceptGroup,
  poolGroups,
} from '../../analysis/statistics/randomIntercepts.ts';
import { publishedCase } from './values/read.ts';

type Pairs = readonly (readonly [number, number])[];
interface Pooled {
  readonly between: number;
  readonly mean: number;
  readonly standardError: number;
}

const NO_SLOPES = { means: [], standardDeviations: [] };
const group = (response: number, variance: number): InterceptGroup => ({
  response,
  variance,
  regressors: [],
  slopeInformation: [],
  slopeScores: [],
});
const pooledAt = (groups: readonly InterceptGroup[], between: number) => {
  const pooled = poolGroups(groups, NO_SLOPES, between);
  if (pooled === null) throw new Error('Nothing was pooled.');
  return { mean: pooled.coefficients[0], standardError: Math.sqrt(pooled.covariance[0]) };
};

describe('thirteen trials of one vaccine', () => {
  const { inputs, expected } = publishedCase<
    { vaccinatedIllAndWell: Pairs; othersIllAndWell: Pairs },
    Record<'equalEffects' | 'derSimonianLaird' | 'pauleMandel', Pooled>
  >('random-effects', 'bcg-vaccine-13-trials');
  const groups = inputs.vaccinatedIllAndWell.map(([ill, well], trial) => {
    const [otherIll, otherWell] = inputs.othersIllAndWell[trial];
    const risks = [ill / (ill + well), otherIll / (otherIll + otherWell)];
    const variance = 1 / ill - 1 / (ill + well) + 1 / otherIll - 1 / (otherIll + otherWell);
    return group(Math.log(risks[0] / risks[1]), variance);
  });

  test('the variance between them is that of Paule and Mandel', () => {
    expect(betweenVariance(groups, NO_SLOPES)).toBeCloseTo(expected.pauleMandel.between, 4);
  });

  test.each(Object.entries(expected))('at the variance of %s the mean is as printed', (_, published) => {
    const { mean, standardError } = pooledAt(groups, published.between);
    // Printed to four places, the variance that they hang on too.
    expect(Math.abs(mean - published.mean)).toBeLessThan(1e-4);
    expect(Math.abs(standardError - published.standardError)).toBeLessThan(1e-4);
  });

  test('a trial without weight changes nothing, and their order neither', () => {
    const between = betweenVariance(groups, NO_SLOPES);
    expect(betweenVariance(groups.toReversed(), NO_SLOPES)).toBeCloseTo(between, 10);
    const { mean } = pooledAt([...groups, group(5, 1e12)], between);
    expect(mean).toBeCloseTo(pooledAt(groups, between).mean, 9);
  });
});

test("eighteen batting averages shrink by Stein's factor, its k - 3 set against the k - 1 used here", () => {
  const { inputs, expected } = publishedCase<
    { averages: number[]; timesAtBat: number },
    { grandAverage: number; shrinkingFactor: number; first: number }
  >('random-effects', 'batting-averages-1970');
  const { averages } = inputs;
  const grand = averages.reduce((sum, one) => sum + one, 0) / averages.length;
  const variance = (grand * (1 - grand)) / inputs.timesAtBat;
  const groups = averages.map((average) => group(average, variance));
  const between = betweenVariance(groups, NO_SLOPES);
  expect(pooledAt(groups, between).mean).toBeCloseTo(expected.grandAverage, 3);
  const k = averages.length;
  // What each player borrows from the others.
  const borrowed = ((k - 3) / (k - 1)) * (variance / (variance + between));
  expect(1 - borrowed).toBeCloseTo(expected.shrinkingFactor, 3);
  expect(grand + (1 - borrowed) * (averages[0] - grand)).toBeCloseTo(expected.first, 3);
});

test('groups that agree better than their own variances allow differ by nothing', () => {
  const groups = [1, 1.01, 0.99, 1].map((response) => group(response, 0.01));
  expect(betweenVariance(groups, NO_SLOPES)).toBe(0);
  expect(betweenVariance(groups.slice(0, 1), NO_SLOPES)).toBe(0);
  expect(poolGroups([], NO_SLOPES, 1)).toBeNull();
});

test('a slope is found between groups and within them, and an intercept of each is no slope', () => {
  const slopes = { means: [0], standardDeviations: [1000] };
  const at = (x: number, intercept: number, within: number): InterceptGroup => ({
    response: intercept + 2 * x,
    regressors: [x],
    variance: 1e-6,
    slopeInformation: [within],
    slopeScores: [2 * within],
  });
  const between = poolGroups([at(-1, 3, 0), at(0, 3, 0), at(2, 3, 0)], slopes, 0.5);
  const within = poolGroups([at(0, 2, 50), at(0, 4, 50)], slopes, 0.5);
  for (const pooled of [between, within]) {
    expect(pooled?.coefficients[0]).toBeCloseTo(3, 4);
    expect(pooled?.coefficients[1]).toBeCloseTo(2, 4);
  }
  // One group's variance and the spread about it, over two groups (the textbook's variance of a mean).
  expect(within?.covariance[0]).toBeCloseTo(0.25, 5);
});
