/**
 * Starts (index from 0, rising) of the segments after the first in the cheapest cutting of a series into pieces of
 * constant mean: squared deviations from the means of the pieces, plus `penalty` for every cut.
 *
 * `values`: in order of time, no gaps; `penalty` in their unit squared (twice the logarithm of their number times
 * the noise variance is usual). Fewer than two values answer no cut. RangeError for a negative penalty.
 *
 * Source: R. Killick, P. Fearnhead, I. A. Eckley (2012), Optimal detection of changepoints with a linear
 * computational cost (PELT); exact.
 */
export function changePoints(values: ArrayLike<number>, penalty: number): number[] {
  if (!(penalty >= 0)) throw new RangeError(`a penalty is at least 0, not ${penalty}`);
  const n = values.length;
  const cost = segmentCost(values);
  const best = new Float64Array(n + 1);
  const cutBefore = new Int32Array(n + 1);
  best[0] = -penalty;
  let candidates = [0];
  for (let end = 1; end <= n; end++) {
    best[end] = Number.POSITIVE_INFINITY;
    for (const start of candidates) {
      const total = best[start] + cost(start, end) + penalty;
      if (total < best[end]) {
        best[end] = total;
        cutBefore[end] = start;
      }
    }
    // A start that cannot win now never will: the cost of what follows is the same for all.
    candidates = candidates.filter((start) => best[start] + cost(start, end) <= best[end]);
    candidates.push(end);
  }
  const cuts: number[] = [];
  for (let cut = cutBefore[n]; cut > 0; cut = cutBefore[cut]) cuts.unshift(cut);
  return cuts;
}

/**
 * As `changePoints`, but with a given number of cuts and no segment shorter than `shortest`. Answers the cuts and
 * the sum of squares that is left; null where so many segments do not fit.
 *
 * Source: J. Bai, P. Perron (2003), Computation and analysis of multiple structural change models, section 3.
 */
export function bestCuts(
  values: ArrayLike<number>,
  cuts: number,
  shortest = 1,
): { cuts: number[]; sumOfSquares: number } | null {
  const n = values.length;
  if (!(cuts >= 0 && shortest >= 1))
    throw new RangeError(`no ${cuts} cuts of segments of ${shortest} or more`);
  if ((cuts + 1) * shortest > n) return null;
  const cost = segmentCost(values);
  let best = Float64Array.from({ length: n + 1 }, (_, end) => (end < shortest ? Infinity : cost(0, end)));
  const starts: Int32Array[] = [];
  for (let cut = 1; cut <= cuts; cut++) {
    const next = new Float64Array(n + 1).fill(Infinity);
    const from = new Int32Array(n + 1);
    for (let end = (cut + 1) * shortest; end <= n; end++) {
      for (let start = cut * shortest; start <= end - shortest; start++) {
        const total = best[start] + cost(start, end);
        if (total < next[end]) {
          next[end] = total;
          from[end] = start;
        }
      }
    }
    starts.push(from);
    best = next;
  }
  const found: number[] = [];
  for (let cut = cuts, end = n; cut >= 1; cut--) {
    end = starts[cut - 1][end];
    found.unshift(end);
  }
  return { cuts: found, sumOfSquares: best[n] };
}

/** Sum of squared deviations from their mean of the values from `start` up to, not including, `end`. */
function segmentCost(values: ArrayLike<number>): (start: number, end: number) => number {
  const n = values.length;
  let level = 0;
  for (let i = 0; i < n; i++) level += values[i] / n;
  // Running sums about the overall mean: about 0 they would lose digits where the level is high.
  const sums = new Float64Array(n + 1);
  const squares = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    const deviation = values[i] - level;
    sums[i + 1] = sums[i] + deviation;
    squares[i + 1] = squares[i] + deviation * deviation;
  }
  return (start, end) => {
    const sum = sums[end] - sums[start];
    return Math.max(0, squares[end] - squares[start] - (sum * sum) / (end - start));
  };
}
