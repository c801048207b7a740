/** What is left of each value without the one at the same place, in a new array. `values` and `less`: as long as each other. */
export function differences(values: Float64Array, less: Float64Array): Float64Array {
  const left = new Float64Array(values.length);
  for (let i = 0; i < left.length; i++) left[i] = values[i] - less[i];
  return left;
}
