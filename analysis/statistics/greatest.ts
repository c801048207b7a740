/** The greatest of the values, in their unit; minus infinity where there are none. NaN is passed over. */
export function greatest(values: Float64Array): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) if (values[i] > most) most = values[i];
  return most;
}
