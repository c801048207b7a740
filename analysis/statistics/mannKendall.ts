import { autocorrelation } from './autocorrelation.ts';
import { inversions, midranks, tieSizes } from './inversions.ts';
import { kendallVariance } from './kendallVariance.ts';
import { normalUpperTail } from './normalDistribution.ts';
import { present } from './select.ts';
import { theilSen } from './theilSen.ts';

/** Whether a series has a trend. */
export interface MannKendall {
  /** Pairs that rise less pairs that fall. */
  readonly s: number;
  readonly variance: number;
  /** Standard score with continuity correction; 0 where `s` is. */
  readonly z: number;
  /** Two-sided chance of a score as far from 0 without a trend, by the normal approximation. */
  readonly p: number;
  /** Kendall's tau-b: 1 where every pair rises. */
  readonly tau: number;
}

/**
 * Mann and Kendall's test for a trend that only rises or only falls.
 *
 * `values`: in order of time, evenly or unevenly spaced; NaN counts as missing and is left out. Fewer than three
 * answer null. Time n log n. It takes the values to be independent: see `hamedRao` where they are not.
 *
 * Source: H. B. Mann (1945), Nonparametric tests against trend; variance with ties of M. G. Kendall (1975), Rank
 * Correlation Methods.
 */
export function mannKendall(values: ArrayLike<number>): MannKendall | null {
  const series = present(values);
  const n = series.length;
  if (n < 3) return null;
  const ties = tieSizes(series);
  const pairs = (n * (n - 1)) / 2;
  const untied = pairs - ties.reduce((sum, t) => sum + (t * (t - 1)) / 2, 0);
  const s = untied - 2 * inversions(series);
  return {
    s,
    ...scoreOf(s, kendallVariance(n, ties)),
    tau: untied === 0 ? 0 : s / Math.sqrt(untied * pairs),
  };
}

/**
 * The same test with the variance widened (or narrowed) for the autocorrelation of the ranks of the detrended
 * values, of which only those outside 1.96 / sqrt(n) count. `lags`: how many of them, all unless told. Gaps count
 * for the slope that is taken out and are then closed up, as the programs do whose figures this is checked by.
 *
 * Source: K. H. Hamed, A. R. Rao (1998), A modified Mann-Kendall trend test for autocorrelated data, equation 14.
 */
export function hamedRao(values: ArrayLike<number>, lags = Number.POSITIVE_INFINITY): MannKendall | null {
  const series = present(values);
  const plain = mannKendall(series);
  if (plain === null) return null;
  const n = series.length;
  const places = Array.from({ length: values.length }, (_, i) => i).filter((i) => !Number.isNaN(values[i]));
  const slope = theilSen(places, series)?.slope ?? 0;
  const ranks = midranks(series.map((value, i) => value - slope * i));
  const most = Math.min(lags, n - 1);
  let sum = 0;
  for (let lag = 1; lag <= most; lag++) {
    const r = autocorrelation(ranks, lag);
    if (Math.abs(r) > 1.959963984540054 / Math.sqrt(n)) sum += (n - lag) * (n - lag - 1) * (n - lag - 2) * r;
  }
  const variance = plain.variance * (1 + (2 * sum) / (n * (n - 1) * (n - 2)));
  return { ...plain, ...scoreOf(plain.s, variance) };
}

function scoreOf(s: number, variance: number) {
  const z = s === 0 || !(variance > 0) ? 0 : (s - Math.sign(s)) / Math.sqrt(variance);
  return { variance, z, p: Math.min(1, 2 * normalUpperTail(Math.abs(z))) };
}
