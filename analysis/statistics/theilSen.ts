import { tieSizes } from './inversions.ts';
import { kendallVariance } from './kendallVariance.ts';
import { median } from './median.ts';
import { normalUpperQuantile } from './normalQuantile.ts';
import { pairwiseSlopes } from './pairwiseSlopes.ts';

/** A robust line; `lower` and `upper` bound the slope. */
export interface TheilSen {
  readonly slope: number;
  /** Median of y less slope times x. */
  readonly intercept: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Median of the slopes of all pairs of points, with Sen's interval for it at `confidence`.
 *
 * `x`, `y`: as many of each, any order, no gaps (RangeError where lengths differ). Pairs of equal x say nothing;
 * null where no pair is left. Time n log n beyond a few hundred points.
 *
 * Source: P. K. Sen (1968), Estimates of the regression coefficient based on Kendall's tau, section 4.
 */
export function theilSen(x: ArrayLike<number>, y: ArrayLike<number>, confidence = 0.95): TheilSen | null {
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`confidence lies between 0 and 1, not ${confidence}`);
  const slopes = pairwiseSlopes(x, y);
  const { count } = slopes;
  if (count === 0) return null;
  const upper = slopes.atRank(count >> 1);
  const slope = count % 2 === 1 ? upper : (slopes.atRank((count >> 1) - 1) + upper) / 2;
  const spread =
    normalUpperQuantile((1 - confidence) / 2) *
    Math.sqrt(kendallVariance(x.length, tieSizes(x), tieSizes(y)));
  const lowest = Math.max(Math.round((count - spread) / 2) - 1, 0);
  const highest = Math.min(Math.round((count + spread) / 2), count - 1);
  const intercept = median(Float64Array.from(y, (value, i) => value - slope * x[i]));
  return { slope, intercept, lower: slopes.atRank(lowest), upper: slopes.atRank(highest) };
}

/**
 * Repeated medians: for each point the median slope to all others, then the median of those. Resists up to half of
 * the points; time n². Shapes and answers as for `theilSen`.
 *
 * Source: A. F. Siegel (1982), Robust regression using repeated medians.
 */
export function siegel(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
): { slope: number; intercept: number } | null {
  if (x.length !== y.length) throw new RangeError(`${x.length} x but ${y.length} y`);
  const ofPoints = Float64Array.from(x, (_, i) => {
    const slopes = Float64Array.from(y, (value, j) =>
      x[j] === x[i] ? Number.NaN : (value - y[i]) / (x[j] - x[i]),
    );
    return median(slopes);
  });
  const slope = median(ofPoints);
  if (Number.isNaN(slope)) return null;
  return { slope, intercept: median(Float64Array.from(y, (value, i) => value - slope * x[i])) };
}
