/**
 * Moves the `k`-th smallest of `values[from..to]` to index `k`, nothing greater before it and nothing smaller
 * after it, and returns it. Works in place; `values` must hold no NaN. Linear time on average.
 *
 * Source: C. A. R. Hoare (1961), Algorithm 65: Find, with the median of three as pivot.
 */
export function select(values: Float64Array, k: number, from = 0, to = values.length - 1): number {
  if (!(k >= from && k <= to)) throw new RangeError(`rank ${k} lies outside ${from} to ${to}`);
  let left = from;
  let right = to;
  while (left < right) {
    const pivot = medianOfThree(values[left], values[(left + right) >> 1], values[right]);
    let low = left;
    let high = right;
    while (low <= high) {
      while (values[low] < pivot) low++;
      while (values[high] > pivot) high--;
      if (low <= high) {
        const held = values[low];
        values[low++] = values[high];
        values[high--] = held;
      }
    }
    if (k <= high) right = high;
    else if (k >= low) left = low;
    else break;
  }
  return values[k];
}

function medianOfThree(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}

/** The values that are numbers, in their order, as a Float64Array of its own: NaN (a missed sample) is left out. */
export function present(values: ArrayLike<number>): Float64Array {
  const kept = new Float64Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    if (!Number.isNaN(value)) kept[count++] = value;
  }
  return kept.subarray(0, count);
}
