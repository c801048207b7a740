/**
 * Autocorrelation at `lag`: sum of products of deviations from the mean that far apart, over the sum of squares.
 *
 * `values`: evenly spaced in time, no gaps. NaN for fewer than two values or where all are equal.
 *
 * Source: G. E. P. Box, G. M. Jenkins (1976), Time Series Analysis, equation 2.1.11.
 */
export function autocorrelation(values: ArrayLike<number>, lag: number): number {
  if (!(Number.isInteger(lag) && lag >= 0)) throw new RangeError(`a lag is a whole number, not ${lag}`);
  const n = values.length;
  let mean = 0;
  for (let i = 0; i < n; i++) mean += values[i] / n;
  let products = 0;
  let squares = 0;
  for (let i = 0; i < n; i++) {
    const deviation = values[i] - mean;
    squares += deviation * deviation;
    if (i + lag < n) products += deviation * (values[i + lag] - mean);
  }
  return squares === 0 || n < 2 ? Number.NaN : products / squares;
}
