/** Mean range of two normal values, in sigmas: 2 / sqrt(pi). Tables print 1.128. */
const D2_OF_TWO = 1.1283791670955126;
/** Standard deviation of the range of two normal values, in sigmas: sqrt(2 - 4/pi). */
const D3_OF_TWO = 0.8525024664107446;

/** A chart of individual values, in their unit; `lower` and `upper` are its limits. */
export interface Individuals {
  readonly mean: number;
  readonly sigma: number;
  readonly lower: number;
  readonly upper: number;
  /** Absolute differences of neighbours, one fewer than the values. */
  readonly movingRanges: Float64Array;
  readonly meanMovingRange: number;
  readonly movingRangeUpper: number;
}

/**
 * Limits for single values, their sigma taken from the ranges of neighbours, so that a slow drift does not widen
 * them.
 *
 * `values`: in order of time, no gaps. Fewer than two answer null. `d2` may be given as a table prints it.
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2; constants of W. A. Shewhart's charts, 6.3.2.1.
 */
export function individuals(values: ArrayLike<number>, widths = 3, d2 = D2_OF_TWO): Individuals | null {
  const n = values.length;
  if (n < 2) return null;
  const movingRanges = new Float64Array(n - 1);
  let sum = values[0];
  let rangeSum = 0;
  for (let i = 1; i < n; i++) {
    movingRanges[i - 1] = Math.abs(values[i] - values[i - 1]);
    rangeSum += movingRanges[i - 1];
    sum += values[i];
  }
  const mean = sum / n;
  const meanMovingRange = rangeSum / (n - 1);
  const sigma = meanMovingRange / d2;
  const movingRangeUpper = meanMovingRange * (1 + (widths * D3_OF_TWO) / D2_OF_TWO);
  const lower = mean - widths * sigma;
  const upper = mean + widths * sigma;
  return { mean, sigma, lower, upper, movingRanges, meanMovingRange, movingRangeUpper };
}
