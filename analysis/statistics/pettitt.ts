import { midranks } from './inversions.ts';

/** The likeliest change of level; `k` is the statistic. */
export interface Pettitt {
  /** Index (from 0) of the first value after the likeliest change. */
  readonly firstIndex: number;
  readonly k: number;
  /** Two-sided chance without a change, approximate (right to a few parts in a thousand below 0.5). */
  readonly p: number;
}

/**
 * Rank test for one change of level at an unknown time.
 *
 * `values`: in order of time, no gaps, ties allowed. Fewer than two answer null. Time n log n.
 *
 * Where the change lies far from the middle, its place is found a little nearer to it.
 *
 * Source: A. N. Pettitt (1979), A non-parametric approach to the change-point problem, Applied Statistics 28,
 * equations 2.1 and 3.3, the statistic from running rank sums.
 */
export function pettitt(values: ArrayLike<number>): Pettitt | null {
  const n = values.length;
  if (n < 2) return null;
  const ranks = midranks(values);
  let sum = 0;
  let k = 0;
  let firstIndex = 1;
  for (let count = 1; count < n; count++) {
    sum += ranks[count - 1];
    const u = Math.abs(2 * sum - count * (n + 1));
    if (u > k) {
      k = u;
      firstIndex = count;
    }
  }
  return { firstIndex, k, p: Math.min(1, 2 * Math.exp((-6 * k * k) / (n ** 3 + n ** 2))) };
}
