import { present, select } from './select.ts';

/**
 * Median: the middle value, or the mean of the two middle ones where their number is even.
 *
 * `values`: any order, Float64Array or plain numbers, left untouched. NaN counts as missing and is left out;
 * NaN is the answer where nothing is left. Linear time (quickselect on a copy).
 */
export function median(values: ArrayLike<number>): number {
  return medianInPlace(present(values));
}

/** As `median`, but reorders `values`, which must hold no NaN, instead of copying them. */
export function medianInPlace(values: Float64Array): number {
  const n = values.length;
  if (n === 0) return Number.NaN;
  const half = n >> 1;
  const upper = select(values, half);
  if (n % 2 === 1) return upper;
  let lower = values[0];
  for (let i = 1; i < half; i++) if (values[i] > lower) lower = values[i];
  return lower + (upper - lower) / 2;
}
