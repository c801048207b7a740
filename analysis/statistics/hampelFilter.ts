import { MAD_TO_SIGMA, medianAbsoluteDeviation } from './medianAbsoluteDeviation.ts';
import { rollingMedian } from './rollingMedian.ts';

/** How outliers are told; `halfWindow`: values to either side. */
export interface HampelFilterOptions {
  readonly halfWindow: number;
  /** How many standard deviations from the window's median a value may lie; 3 unless told. */
  readonly threshold?: number;
  /** Turns the window's median absolute deviation into a standard deviation. */
  readonly constant?: number;
  /** Deviations up to this are never touched, in the unit of the values: quantised steps are no outliers. */
  readonly floor?: number;
}

/**
 * Replaces values that stand out from the `2 halfWindow + 1` around them by the median of those.
 *
 * `values`: evenly spaced; the first and last `halfWindow` are passed through. NaN counts as missing and stays.
 * Answers the filtered values and the indices (from 0) replaced. RangeError for a negative half window.
 *
 * Source: F. R. Hampel (1974), The influence curve and its role in robust estimation; as a filter R. K. Pearson
 * (2002), Outliers in process modeling and identification.
 */
export function hampelFilter(
  values: ArrayLike<number>,
  { halfWindow, threshold = 3, constant = MAD_TO_SIGMA, floor = 0 }: HampelFilterOptions,
): { values: Float64Array; replaced: number[] } {
  const filtered = Float64Array.from(values);
  const source = filtered.slice();
  const medians = rollingMedian(source, halfWindow);
  const replaced: number[] = [];
  for (let i = halfWindow; i < source.length - halfWindow; i++) {
    const deviation = Math.abs(source[i] - medians[i]);
    if (!(deviation > floor)) continue;
    const window = source.subarray(i - halfWindow, i + halfWindow + 1);
    if (!standsOut(window, medians[i], deviation / threshold / constant)) continue;
    filtered[i] = medians[i];
    replaced.push(i);
  }
  return { values: filtered, replaced };
}

/**
 * Whether the window's median absolute deviation lies below `limit`: where more than half of an odd number do, it
 * does, and counting them is many times cheaper than finding it.
 */
function standsOut(window: Float64Array, centre: number, limit: number): boolean {
  let below = 0;
  let missing = 0;
  for (let j = 0; j < window.length; j++) {
    const deviation = Math.abs(window[j] - centre);
    if (deviation < limit) below++;
    else if (Number.isNaN(deviation)) missing++;
  }
  const count = window.length - missing;
  return count % 2 === 1 ? 2 * below > count : limit > medianAbsoluteDeviation(window, 1);
}
