/**
 * Variance, where there is no trend, of the rising pairs less the falling ones among `n` values; `ties` are the
 * sizes of the groups of equal values, of times and of values.
 *
 * Source: M. G. Kendall (1975), Rank Correlation Methods, section 4.3; P. K. Sen (1968), equation 2.8.
 */
export function kendallVariance(n: number, ...ties: readonly (readonly number[])[]): number {
  const term = (t: number) => t * (t - 1) * (2 * t + 5);
  return ties.flat().reduce((sum, t) => sum - term(t), term(n)) / 18;
}
