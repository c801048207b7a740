import { SortedWindow } from './sortedWindow.ts';

/**
 * Median of the `2 halfWindow + 1` values around each one; at the ends, of those that there are.
 *
 * `values`: evenly spaced, Float64Array or plain numbers. NaN counts as missing and is left out of its windows; NaN
 * is the answer where a window holds nothing. Nothing in, nothing out. RangeError for a negative half window.
 *
 * Source: J. W. Tukey (1977), Exploratory Data Analysis, chapter 7.
 */
export function rollingMedian(values: ArrayLike<number>, halfWindow: number): Float64Array {
  if (!(Number.isInteger(halfWindow) && halfWindow >= 0)) {
    throw new RangeError(`half a window is a whole number of values, not ${halfWindow}`);
  }
  const n = values.length;
  const sorted = new SortedWindow(Math.min(n, 2 * halfWindow + 1));
  const medians = new Float64Array(n);
  for (let i = 0; i < Math.min(halfWindow, n); i++) sorted.insert(values[i]);
  for (let i = 0; i < n; i++) {
    if (i + halfWindow < n) sorted.insert(values[i + halfWindow]);
    medians[i] = sorted.median();
    if (i - halfWindow >= 0) sorted.remove(values[i - halfWindow]);
  }
  return medians;
}
