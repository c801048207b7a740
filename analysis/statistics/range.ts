/** By how much values differ at most: the greatest less the least. Minus infinity where there are none; `values` hold no NaN. */
export function rangeOf(values: Float64Array): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < values.length; i++) {
    if (values[i] < least) least = values[i];
    if (values[i] > most) most = values[i];
  }
  return most - least;
}
