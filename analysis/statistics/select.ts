import { ReusedArray } from './reusedArray.ts';

/** Stretches as short as this are put in order by insertion, which then is quicker. */
const SHORT = 12;
/** Above this many values it pays to look at a sample of them first. */
const WORTH_SAMPLING = 600;

/**
 * Moves the `k`-th smallest of `values[from..to]` to index `k`, nothing greater before it and nothing smaller
 * after it, and returns it. Works in place; `values` must hold no NaN. Linear time on average, with about
 * 1.5 comparisons a value for a median.
 *
 * Source: R. W. Floyd, R. L. Rivest (1975), Algorithm 489: the algorithm SELECT for finding the i-th smallest of n
 * elements.
 */
export function select(values: Float64Array, k: number, from = 0, to = values.length - 1): number {
  if (!(k >= from && k <= to)) throw new RangeError(`rank ${k} lies outside ${from} to ${to}`);
  let left = from;
  let right = to;
  while (right - left > SHORT) {
    if (right - left > WORTH_SAMPLING) selectInSample(values, k, left, right);
    const pivot = values[k];
    let low = left;
    let high = right;
    swap(values, left, k);
    if (values[right] > pivot) swap(values, left, right);
    while (low < high) {
      swap(values, low++, high--);
      while (values[low] < pivot) low++;
      while (values[high] > pivot) high--;
    }
    if (values[left] === pivot) swap(values, left, high);
    else swap(values, ++high, right);
    if (high <= k) left = high + 1;
    if (k <= high) right = high - 1;
  }
  sortStretch(values, left, right);
  return values[k];
}

/** Brings to index `k` a value that will leave most of `values[left..right]` on the side that need not be searched. */
function selectInSample(values: Float64Array, k: number, left: number, right: number): void {
  const n = right - left + 1;
  const rank = k - left + 1;
  const logarithm = Math.log(n);
  const size = 0.5 * Math.exp((2 * logarithm) / 3);
  const margin = 0.5 * Math.sqrt((logarithm * size * (n - size)) / n) * (rank < n / 2 ? -1 : 1);
  const first = Math.max(left, Math.floor(k - (rank * size) / n + margin));
  const last = Math.min(right, Math.floor(k + ((n - rank) * size) / n + margin));
  select(values, k, Math.min(first, k), Math.max(last, k));
}

function swap(values: Float64Array, a: number, b: number): void {
  const held = values[a];
  values[a] = values[b];
  values[b] = held;
}

/** Insertion sort of `values[from..to]`. */
export function sortStretch(values: Float64Array, from: number, to: number): void {
  for (let i = from + 1; i <= to; i++) {
    const value = values[i];
    let place = i;
    for (; place > from && values[place - 1] > value; place--) values[place] = values[place - 1];
    values[place] = value;
  }
}

/** The values that are numbers, in their order, as a Float64Array of its own: NaN (a missed sample) is left out. */
export function present(values: ArrayLike<number>): Float64Array {
  const kept = new Float64Array(values.length);
  return kept.subarray(0, keep(values, kept));
}

const shared = new ReusedArray();

/** As `present`, in an array that the next call uses again: for work that is done with it at once. */
export function presentForNow(values: ArrayLike<number>): Float64Array {
  const kept = shared.atLeast(values.length);
  return kept.subarray(0, keep(values, kept));
}

/** As `present`, but the same array where nothing is missing: for those who only read it. */
export function presentAsTheyAre(values: Float64Array): Float64Array {
  for (let i = 0; i < values.length; i++) if (Number.isNaN(values[i])) return present(values);
  return values;
}

function keep(values: ArrayLike<number>, kept: Float64Array): number {
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    if (!Number.isNaN(value)) kept[count++] = value;
  }
  return count;
}
