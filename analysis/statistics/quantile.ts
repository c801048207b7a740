import { neighboursOfRank } from './nearRank.ts';
import { presentForNow } from './select.ts';

/** Which of Hyndman and Fan's definitions; 7 is the usual default, 8 the median-unbiased one. */
export type QuantileType = 6 | 7 | 8;

/**
 * Sample quantile at `probability` (0 to 1), interpolated between order statistics; type 7 unless told.
 *
 * `values`: any order, Float64Array or plain numbers, left untouched. NaN counts as missing and is left out;
 * NaN is the answer where nothing is left. Linear time. RangeError for a probability outside 0 to 1.
 *
 * Source: R. J. Hyndman, Y. Fan (1996), Sample quantiles in statistical packages, definitions 6, 7 and 8.
 */
export function quantile(values: ArrayLike<number>, probability: number, type: QuantileType = 7): number {
  return quantileInPlace(presentForNow(values), probability, type);
}

/** As `quantile`, but reorders `values`, which must hold no NaN, instead of copying them. */
export function quantileInPlace(values: Float64Array, probability: number, type: QuantileType = 7): number {
  if (!(probability >= 0 && probability <= 1)) {
    throw new RangeError(`a probability lies between 0 and 1, not ${probability}`);
  }
  const n = values.length;
  if (n === 0) return Number.NaN;
  const rank = Math.min(Math.max(rankOf(probability, n, type), 0), n - 1);
  const below = Math.floor(rank + 4 * Number.EPSILON * n);
  const { at, after } = neighboursOfRank(values, below, 0, n - 1);
  const fraction = rank - below;
  return fraction <= 4 * Number.EPSILON * n ? at : at + fraction * (after - at);
}

/** Zero-based rank, fraction included; the caller keeps it within the sample. */
function rankOf(probability: number, n: number, type: QuantileType): number {
  if (type === 6) return (n + 1) * probability - 1;
  if (type === 8) return (n + 1 / 3) * probability - 2 / 3;
  return (n - 1) * probability;
}
