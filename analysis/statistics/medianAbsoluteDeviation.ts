import { medianInPlace } from './median.ts';
import { presentForNow } from './select.ts';

/** 1 / the normal distribution's upper quartile: makes the median absolute deviation estimate a normal sigma. */
export const MAD_TO_SIGMA = 1.4826022185056018;

/**
 * Median absolute deviation from the median, times `constant` (1.4826 unless told, so that it estimates the
 * standard deviation of normal values; 1 gives the plain deviation), in the unit of `values`.
 *
 * `values`: any order, Float64Array or plain numbers, left untouched. NaN counts as missing; NaN is the answer
 * where nothing is left, 0 where more than half are equal.
 *
 * Source: F. R. Hampel (1974), The influence curve and its role in robust estimation.
 */
export function medianAbsoluteDeviation(values: ArrayLike<number>, constant = MAD_TO_SIGMA): number {
  const deviations = presentForNow(values);
  const centre = medianInPlace(deviations);
  for (let i = 0; i < deviations.length; i++) deviations[i] = Math.abs(deviations[i] - centre);
  return constant * medianInPlace(deviations);
}
