import { narrowRollingMedian } from './narrowRollingMedian.ts';
import { SortedWindow } from './sortedWindow.ts';

/** Windows of up to so many values are not kept in order: looking through one now and then costs less. */
const NARROW = 64;

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
  if (halfWindow === 1) return medianOfThrees(values);
  const width = 2 * halfWindow + 1;
  if (values instanceof Float64Array && width <= Math.min(n, NARROW) && isWhole(values)) {
    return narrowRollingMedian(values, halfWindow);
  }
  const sorted = new SortedWindow(Math.min(n, width));
  const medians = new Float64Array(n);
  for (let i = 0; i < Math.min(halfWindow, n); i++) sorted.insert(values[i]);
  for (let i = 0; i < n; i++) {
    const comes = i + halfWindow < n;
    const goes = i - halfWindow > 0;
    if (comes && goes) sorted.replace(values[i - halfWindow - 1], values[i + halfWindow]);
    else if (comes) sorted.insert(values[i + halfWindow]);
    else if (goes) sorted.remove(values[i - halfWindow - 1]);
    medians[i] = sorted.median();
  }
  return medians;
}

function isWhole(values: Float64Array): boolean {
  for (let i = 0; i < values.length; i++) if (Number.isNaN(values[i])) return false;
  return true;
}

/** The shortest window, without a window: the middle of three is told by two comparisons. */
function medianOfThrees(values: ArrayLike<number>): Float64Array {
  const medians = new Float64Array(values.length);
  for (let i = 0; i < medians.length; i++) medians[i] = medianOfThree(values, i);
  return medians;
}

/** What `rollingMedian` with half a window of one value answers at one place: for whoever looks at the first few alone. */
export function medianOfThree(values: ArrayLike<number>, i: number): number {
  const a = i > 0 ? values[i - 1] : Number.NaN;
  const b = values[i];
  const c = i + 1 < values.length ? values[i + 1] : Number.NaN;
  const middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  // Of which one that is missing makes it missing too.
  return Number.isNaN(middle) ? medianOfPresent(a, b, c) : middle;
}

function medianOfPresent(a: number, b: number, c: number): number {
  if (Number.isNaN(a)) return medianOfTwo(b, c);
  return Number.isNaN(b) ? medianOfTwo(a, c) : medianOfTwo(a, b);
}

function medianOfTwo(a: number, b: number): number {
  if (Number.isNaN(a)) return b;
  if (Number.isNaN(b)) return a;
  return a < b ? a + (b - a) / 2 : b + (a - b) / 2;
}
