import { midranks, tieSizes } from './inversions.ts';
import { normalUpperTail } from './normalDistribution.ts';
import { rankSumDistribution, tails } from './rankSumDistribution.ts';

/** Up to this many pairs the exact distribution is worked out: well under a millisecond to some ten. */
const EXACT_UP_TO = 700;

/** Whether one of two samples lies higher; probabilities from 0 to 1. */
export interface MannWhitney {
  /** Pairs in which the first sample's value is the greater, ties counting one half. */
  readonly u: number;
  readonly pTwoSided: number;
  /** One-sided: that the first sample lies higher. */
  readonly pGreater: number;
  /** `u` over the number of pairs: chance that a value of the first sample beats one of the second. */
  readonly superiority: number;
  readonly method: 'exact' | 'normal';
}

/** How the probability is found. */
export interface MannWhitneyOptions {
  /** Exact, conditional on the ties, for small samples unless told. */
  readonly method?: 'exact' | 'normal';
  /** Continuity correction of the normal approximation, on unless told. */
  readonly continuity?: boolean;
}

/**
 * Mann and Whitney's test of whether one of two samples lies higher.
 *
 * `x`, `y`: any order, no gaps. Null where one is empty.
 *
 * Source: H. B. Mann, D. R. Whitney (1947), On a test of whether one of two random variables is stochastically
 * larger than the other; tie correction of M. Hollander, D. A. Wolfe (1973), equation 4.13.
 */
export function mannWhitney(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  {
    method = x.length * y.length <= EXACT_UP_TO ? 'exact' : 'normal',
    continuity = true,
  }: MannWhitneyOptions = {},
): MannWhitney | null {
  const [m, n] = [x.length, y.length];
  if (m === 0 || n === 0) return null;
  const both = Float64Array.from([...Array.from(x), ...Array.from(y)]);
  const ranks = midranks(both);
  const rankSum = ranks.subarray(0, m).reduce((sum, rank) => sum + rank, 0);
  const u = rankSum - (m * (m + 1)) / 2;
  const superiority = u / (m * n);
  if (method === 'exact') {
    const { lower, upper } = tails(rankSumDistribution(ranks, m), Math.round(2 * rankSum));
    return { u, superiority, method, pGreater: upper, pTwoSided: Math.min(1, 2 * Math.min(lower, upper)) };
  }
  const total = m + n;
  const tied = tieSizes(both).reduce((sum, t) => sum + t ** 3 - t, 0);
  const sigma = Math.sqrt(((m * n) / 12) * (total + 1 - tied / (total * (total - 1))));
  const excess = u - (m * n) / 2;
  const half = continuity ? 0.5 : 0;
  // Where all values are equal nothing speaks against their being alike.
  if (!(sigma > 0)) return { u, superiority, method, pGreater: 1, pTwoSided: 1 };
  const pTwoSided = Math.min(1, 2 * normalUpperTail(Math.max(0, Math.abs(excess) - half) / sigma));
  return { u, superiority, method, pTwoSided, pGreater: normalUpperTail((excess - half) / sigma) };
}
