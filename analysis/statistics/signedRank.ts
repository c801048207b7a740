import { midranks } from './inversions.ts';
import { median } from './median.ts';
import { signedRankDistribution, tails } from './rankSumDistribution.ts';
import { select } from './select.ts';

/** Whether differences lie about 0; the pseudo-median with its interval, in their unit. */
export interface SignedRank {
  /** Sum of the ranks of the differences above 0. */
  readonly v: number;
  readonly pTwoSided: number;
  readonly pGreater: number;
  /** Median of the means of all pairs of differences, each with itself too. */
  readonly pseudoMedian: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Wilcoxon's test of paired differences, exact and conditional on the ties, with the interval that goes with it.
 * Differences of 0 are left out of the test. Null where none is left; meant for up to a few hundred.
 *
 * Source: F. Wilcoxon (1945), Individual comparisons by ranking methods; interval of J. W. Tukey in M. Hollander,
 * D. A. Wolfe (1973), section 3.3.
 */
export function signedRank(differences: ArrayLike<number>, confidence = 0.95): SignedRank | null {
  const kept = Array.from(differences).filter((difference) => difference !== 0);
  const n = kept.length;
  if (n === 0) return null;
  const ranks = midranks(kept.map(Math.abs));
  const v = ranks.reduce((sum, rank, i) => sum + (kept[i] > 0 ? rank : 0), 0);
  const { lower, upper } = tails(signedRankDistribution(ranks), Math.round(2 * v));
  const means = new Float64Array((n * (n + 1)) / 2);
  let count = 0;
  for (let i = 0; i < n; i++) for (let j = i; j < n; j++) means[count++] = (kept[i] + kept[j]) / 2;
  const rank = lowRank(n, (1 - confidence) / 2);
  return {
    v,
    pTwoSided: Math.min(1, 2 * Math.min(lower, upper)),
    pGreater: upper,
    pseudoMedian: median(means),
    lower: select(means, rank - 1),
    upper: select(means, means.length - rank),
  };
}

/** Smallest v (at least 1) with P(V <= v) >= `tail`, without ties. */
function lowRank(n: number, tail: number): number {
  const chances = signedRankDistribution(Array.from({ length: n }, (_, i) => i + 1));
  let rank = 0;
  for (let below = chances[0]; below < tail; below += chances[2 * rank]) rank++;
  return Math.max(1, rank);
}
