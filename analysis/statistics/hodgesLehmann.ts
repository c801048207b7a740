import { differenceOfRank } from './differenceOfRank.ts';
import { tieSizes } from './inversions.ts';
import { normalUpperQuantile } from './normalQuantile.ts';
import { rankSumDistribution } from './rankSumDistribution.ts';

/** A shift between two samples with its interval, in their unit. */
export interface HodgesLehmann {
  /** By how much the first sample lies above the second: median of all differences. */
  readonly shift: number;
  readonly lower: number;
  readonly upper: number;
  /** What the interval really covers: less than asked where the samples are too small for more. */
  readonly confidence: number;
}

/**
 * Shift between two samples with the interval that goes with Mann and Whitney's test, exact up to 50 values each.
 *
 * `x`, `y`: any order, no gaps. Null where one is empty. With two values each the interval is the range of the four
 * differences and covers two thirds: `confidence` says so.
 *
 * Source: J. L. Hodges, E. L. Lehmann (1963), Estimates of location based on rank tests; interval of D. F. Bauer
 * (1972), Constructing confidence sets using rank statistics.
 */
export function hodgesLehmann(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  confidence = 0.95,
): HodgesLehmann | null {
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`confidence lies between 0 and 1, not ${confidence}`);
  const [m, n] = [x.length, y.length];
  if (m === 0 || n === 0) return null;
  const [ascendingX, ascendingY] = [Float64Array.from(x).sort(), Float64Array.from(y).sort()];
  const difference = (rank: number) => differenceOfRank(ascendingX, ascendingY, rank);
  const tail = (1 - confidence) / 2;
  const { rank, covers } = m <= 50 && n <= 50 ? exactRank(m, n, tail) : normalRank(x, y, tail, confidence);
  return {
    shift: (difference(Math.ceil((m * n) / 2)) + difference(Math.floor((m * n) / 2) + 1)) / 2,
    lower: difference(rank),
    upper: difference(m * n + 1 - rank),
    confidence: covers,
  };
}

const ranksByTail = new Map<string, { rank: number; covers: number }>();

/** Smallest u (at least 1) with P(U <= u) >= `tail`; remembered, for the sizes recur. */
function exactRank(m: number, n: number, tail: number) {
  const key = `${Math.min(m, n)} ${Math.max(m, n)} ${tail}`;
  const known = ranksByTail.get(key);
  if (known) return known;
  const chances = mannWhitneyDistribution(m, n);
  let below = 0;
  let rank = 0;
  while (below + chances[rank] < tail) below += chances[rank++];
  if (rank === 0) {
    below = chances[0];
    rank = 1;
  }
  const found = { rank, covers: Math.max(0, 1 - 2 * below) };
  ranksByTail.set(key, found);
  return found;
}

/** Chance of each u from 0 to m n where both samples come from one distribution without ties. */
export function mannWhitneyDistribution(m: number, n: number): Float64Array {
  const small = Math.min(m, n);
  const ranks = Array.from({ length: m + n }, (_, i) => i + 1);
  const sums = rankSumDistribution(ranks, small);
  const least = (small * (small + 1)) / 2;
  return Float64Array.from({ length: m * n + 1 }, (_, u) => sums[2 * (u + least)]);
}

function normalRank(x: ArrayLike<number>, y: ArrayLike<number>, tail: number, covers: number) {
  const [m, n] = [x.length, y.length];
  const total = m + n;
  const tied = tieSizes([...Array.from(x), ...Array.from(y)]).reduce((sum, t) => sum + t ** 3 - t, 0);
  const sigma = Math.sqrt(((m * n) / 12) * (total + 1 - tied / (total * (total - 1))));
  return { rank: Math.max(1, Math.round((m * n) / 2 - normalUpperQuantile(tail) * sigma)), covers };
}
