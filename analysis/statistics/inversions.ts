/**
 * Number of pairs i < j with `values[i]` > `values[j]`. `values` holds no NaN and is left untouched.
 *
 * Source: W. R. Knight (1966), A computer method for calculating Kendall's tau with ungrouped data: a merge sort
 * that counts, in time n log n.
 */
export function inversions(values: ArrayLike<number>): number {
  const n = values.length;
  let from = Float64Array.from(values);
  let to = new Float64Array(n);
  let count = 0;
  for (let width = 1; width < n; width *= 2) {
    for (let start = 0; start < n; start += 2 * width) {
      count += merge(from, to, start, Math.min(start + width, n), Math.min(start + 2 * width, n));
    }
    [from, to] = [to, from];
  }
  return count;
}

function merge(from: Float64Array, to: Float64Array, start: number, middle: number, end: number): number {
  let left = start;
  let right = middle;
  let count = 0;
  for (let out = start; out < end; out++) {
    if (left < middle && (right >= end || from[left] <= from[right])) to[out] = from[left++];
    else {
      count += middle - left;
      to[out] = from[right++];
    }
  }
  return count;
}

/** Sizes of the groups of equal values, those of one left out. Time n log n. */
export function tieSizes(values: ArrayLike<number>): number[] {
  const sorted = Float64Array.from(values).sort();
  const sizes: number[] = [];
  let start = 0;
  for (let i = 1; i <= sorted.length; i++) {
    if (i < sorted.length && sorted[i] === sorted[start]) continue;
    if (i - start > 1) sizes.push(i - start);
    start = i;
  }
  return sizes;
}

/** Ranks from 1, equal values sharing the mean of theirs. */
export function midranks(values: ArrayLike<number>): Float64Array {
  const order = Array.from({ length: values.length }, (_, i) => i).sort((a, b) => values[a] - values[b]);
  const ranks = new Float64Array(values.length);
  let start = 0;
  for (let i = 1; i <= order.length; i++) {
    if (i < order.length && values[order[i]] === values[order[start]]) continue;
    for (let j = start; j < i; j++) ranks[order[j]] = (start + 1 + i) / 2;
    start = i;
  }
  return ranks;
}
