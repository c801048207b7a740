/** Halvings of the range: beyond these what is left is searched step by step, and that is a step or two. */
const HALVINGS = 60;

/**
 * The `rank`-th smallest (from 1) of all differences x - y, to the last digit, without making them: some sixty passes
 * over both samples.
 *
 * `x`, `y`: ascending, not empty, no gaps. RangeError where there is no such rank.
 *
 * Source: the counting step of D. B. Johnson, T. Mizoguchi (1978), Selecting the K-th element in X + Y and
 * X1 + X2 + … + Xm, SIAM Journal on Computing 7, under a plain bisection of the range.
 */
export function differenceOfRank(x: Float64Array, y: Float64Array, rank: number): number {
  if (!(rank >= 1 && rank <= x.length * y.length)) throw new RangeError(`there is no difference ${rank}`);
  const least = x[0] - y[y.length - 1];
  if (countUpTo(x, y, least) >= rank) return least;
  let below = least;
  let above = x[x.length - 1] - y[0];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) break;
    if (countUpTo(x, y, middle) >= rank) above = middle;
    else below = middle;
  }
  for (;;) {
    const next = smallestAbove(x, y, below);
    if (countUpTo(x, y, next) >= rank) return next;
    below = next;
  }
}

function countUpTo(x: Float64Array, y: Float64Array, limit: number): number {
  let count = 0;
  let first = 0;
  for (const value of x) {
    while (first < y.length && value - y[first] > limit) first++;
    count += y.length - first;
  }
  return count;
}

function smallestAbove(x: Float64Array, y: Float64Array, limit: number): number {
  let smallest = Number.POSITIVE_INFINITY;
  let first = 0;
  for (const value of x) {
    while (first < y.length && value - y[first] > limit) first++;
    if (first > 0) smallest = Math.min(smallest, value - y[first - 1]);
  }
  return smallest;
}
