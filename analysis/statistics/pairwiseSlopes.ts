import { inversions } from './inversions.ts';
import { select } from './select.ts';

/** Above so many points the slopes are counted instead of listed. */
const LISTED_UP_TO = 400;

/** The slopes of all pairs of points, in order. */
export interface PairwiseSlopes {
  /** Number of pairs whose x differ. */
  readonly count: number;
  /** The slope that so many others (from 0) lie below. */
  readonly atRank: (rank: number) => number;
}

/** Order statistics of the slopes of all pairs of points; RangeError where lengths differ. */
export function pairwiseSlopes(x: ArrayLike<number>, y: ArrayLike<number>): PairwiseSlopes {
  const n = x.length;
  if (y.length !== n) throw new RangeError(`${n} x but ${y.length} y`);
  return n <= LISTED_UP_TO ? listed(x, y) : counted(x, y);
}

function listed(x: ArrayLike<number>, y: ArrayLike<number>): PairwiseSlopes {
  const n = x.length;
  const all = new Float64Array((n * (n - 1)) / 2);
  let count = 0;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) if (x[j] !== x[i]) all[count++] = (y[j] - y[i]) / (x[j] - x[i]);
  }
  const slopes = all.subarray(0, count);
  return { count, atRank: (rank) => select(slopes, rank) };
}

/**
 * A pair's slope is below s where its order by y - s x is the reverse of that by x, so slopes below s are counted
 * as inversions and the rank is found by bisection on s.
 *
 * Source: R. Cole, J. S. Salowe, W. L. Steiger, E. Szemerédi (1989), An optimal-time algorithm for slope selection,
 * section 1; here the plain bisection.
 */
function counted(x: ArrayLike<number>, y: ArrayLike<number>): PairwiseSlopes {
  const n = x.length;
  const order = Array.from({ length: n }, (_, i) => i).sort((a, b) => x[a] - x[b]);
  const xs = Float64Array.from(order, (i) => x[i]);
  const ys = Float64Array.from(order, (i) => y[i]);
  const groups = groupEnds(xs);
  let count = 0;
  let steepest = 0;
  for (let g = 0, start = 0; g < groups.length; start = groups[g++])
    count += (groups[g] - start) * (n - groups[g]);
  for (let g = 0, start = 0; g + 1 < groups.length; start = groups[g++]) {
    steepest = Math.max(steepest, steepestBetween(xs, ys, start, groups[g], groups[g + 1]));
  }
  const below = (slope: number) => {
    const rest = ys.map((value, i) => value - slope * xs[i]);
    for (let g = 0, start = 0; g < groups.length; start = groups[g++]) {
      if (groups[g] - start > 1) rest.subarray(start, groups[g]).sort();
    }
    return inversions(rest);
  };
  return { count, atRank: (rank) => bisect(below, rank, steepest) };
}

/** Index after the last of each run of equal x. */
function groupEnds(xs: Float64Array): number[] {
  const ends: number[] = [];
  for (let i = 1; i <= xs.length; i++) if (i === xs.length || xs[i] !== xs[i - 1]) ends.push(i);
  return ends;
}

/** No slope is steeper than the steepest between neighbouring x. */
function steepestBetween(xs: Float64Array, ys: Float64Array, a: number, b: number, end: number): number {
  let steepest = 0;
  for (let i = a; i < b; i++) {
    for (let j = b; j < end; j++) steepest = Math.max(steepest, Math.abs((ys[j] - ys[i]) / (xs[j] - xs[i])));
  }
  return steepest;
}

function bisect(below: (slope: number) => number, rank: number, steepest: number): number {
  let low = -steepest;
  let high = steepest;
  while (high - low > 1e-13 * Math.max(Math.abs(low), Math.abs(high))) {
    const middle = low + (high - low) / 2;
    if (middle === low || middle === high) break;
    if (below(middle) <= rank) low = middle;
    else high = middle;
  }
  return low + (high - low) / 2;
}
