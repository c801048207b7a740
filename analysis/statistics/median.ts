import { neighboursOfRank } from './nearRank.ts';
import { presentForNow } from './select.ts';

/**
 * Median: the middle value, or the mean of the two middle ones where their number is even.
 *
 * `values`: any order, Float64Array or plain numbers, left untouched. NaN counts as missing and is left out;
 * NaN is the answer where nothing is left. Linear time (quickselect on a copy).
 */
export function median(values: ArrayLike<number>): number {
  return medianInPlace(presentForNow(values));
}

/** As `median`, but reorders `values`, which must hold no NaN, instead of copying them. */
export function medianInPlace(values: Float64Array): number {
  return medianOfStretch(values, 0, values.length);
}

/** As `medianInPlace`, of `values[from]` up to but without `values[end]` alone. */
export function medianOfStretch(values: Float64Array, from: number, end: number): number {
  if (end <= from) return Number.NaN;
  const middle = from + ((end - from - 1) >> 1);
  const isOdd = (end - from) % 2 === 1;
  const { at, after } = neighboursOfRank(values, middle, from, end - 1);
  return isOdd ? at : at + (after - at) / 2;
}
