import { findPositiveRoot } from './findRoot.ts';
import { invertSymmetric } from './solveSymmetric.ts';

/**
 * What one group says: its mean response at its mean regressors, and what its own observations say of the slopes.
 * `slopeInformation`: X'X of the regressors about their means, row after row, and `slopeScores` X'y, both divided by
 * the variance of one observation; empty where there are no regressors.
 */
export interface InterceptGroup {
  readonly response: number;
  readonly regressors: readonly number[];
  /** Of the mean response, the spread between groups not counted. */
  readonly variance: number;
  readonly slopeInformation: readonly number[];
  readonly slopeScores: readonly number[];
}

/** Gaussian priors of the slopes, each by itself; the mean intercept has none. */
export interface SlopePrior {
  readonly means: readonly number[];
  readonly standardDeviations: readonly number[];
}

/** Mean intercept and slopes of all groups, with their covariance, row after row. */
export interface PooledGroups {
  readonly coefficients: number[];
  readonly covariance: number[];
}

/**
 * Generalised least squares of groups that share their slopes and differ by a random intercept of the given variance.
 * Null without groups, or where prior and groups leave a slope open. Without regressors it is the mean weighted by
 * 1 / (between + variance).
 *
 * Source: N. M. Laird, J. H. Ware (1982), Random-effects models for longitudinal data, equation 3.1.
 */
export function poolGroups(
  groups: readonly InterceptGroup[],
  slopes: SlopePrior,
  between: number,
): PooledGroups | null {
  if (groups.length === 0) return null;
  const size = 1 + slopes.means.length;
  const information = new Float64Array(size * size);
  const scores = new Float64Array(size);
  for (let a = 1; a < size; a++) {
    const precision = 1 / slopes.standardDeviations[a - 1] ** 2;
    information[a * size + a] = precision;
    scores[a] = precision * slopes.means[a - 1];
  }
  for (const group of groups) {
    const row = [1, ...group.regressors];
    const weight = 1 / (between + group.variance);
    for (let a = 0; a < size; a++) {
      scores[a] += weight * row[a] * group.response + (a > 0 ? group.slopeScores[a - 1] : 0);
      for (let b = 0; b < size; b++) {
        const within = a > 0 && b > 0 ? group.slopeInformation[(a - 1) * (size - 1) + b - 1] : 0;
        information[a * size + b] += weight * row[a] * row[b] + within;
      }
    }
  }
  const covariance = invertSymmetric(information, size);
  if (covariance === null) return null;
  const coefficients = Array.from({ length: size }, (_, a) => {
    let sum = 0;
    for (let b = 0; b < size; b++) sum += covariance[a * size + b] * scores[b];
    return sum;
  });
  return { coefficients, covariance: Array.from(covariance) };
}

/**
 * The variance between the groups' intercepts that makes the weighted squares of their distances from the pool as large as
 * is to be expected, their number less one; 0 where they are closer together than that, or fewer than two.
 *
 * Source: R. C. Paule, J. Mandel (1982), Consensus values and weighting factors.
 */
export function betweenVariance(groups: readonly InterceptGroup[], slopes: SlopePrior): number {
  if (groups.length < 2) return 0;
  const excess = (between: number) => {
    const pooled = poolGroups(groups, slopes, between);
    if (pooled === null) return 0;
    let squares = 0;
    for (const { response, regressors, variance } of groups) {
      const expected = [1, ...regressors].reduce((sum, x, a) => sum + x * pooled.coefficients[a], 0);
      squares += (response - expected) ** 2 / (between + variance);
    }
    return squares - (groups.length - 1);
  };
  if (excess(0) <= 0) return 0;
  const start = Math.max(...groups.map(({ variance }) => variance));
  return findPositiveRoot(excess, start, 1e-12);
}
