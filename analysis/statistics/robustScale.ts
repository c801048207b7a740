import { mean } from 'simple-statistics';
import { medianInPlace } from './median.ts';
import { present, select } from './select.ts';

/** Small-sample factors by the number of values, from two on (sources below). */
const SN_SMALL = [0.743, 1.851, 0.954, 1.351, 0.993, 1.198, 1.005, 1.131];
const QN_SMALL = [
  0.399356, 0.99365, 0.51321, 0.84401, 0.6122, 0.85877, 0.66993, 0.87344, 0.72014, 0.88906, 0.75743,
];

/**
 * Qn: a quarter's order statistic of the distances of all pairs, made to estimate the standard deviation of normal
 * values also in small samples (`corrected`). Stands half of the values being wild, and needs no centre.
 *
 * `values`: any order. NaN counts as missing; fewer than two answer NaN. Time and room n²: up to a few thousand.
 *
 * Source: P. J. Rousseeuw, C. Croux (1993), Alternatives to the median absolute deviation, section 3; factors for
 * small samples as in the R package robustbase 0.95.
 */
export function robustScale(values: ArrayLike<number>, corrected = true): number {
  const x = present(values);
  const n = x.length;
  if (n < 2) return Number.NaN;
  const distances = new Float64Array((n * (n - 1)) / 2);
  let count = 0;
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) distances[count++] = Math.abs(x[i] - x[j]);
  const half = Math.floor(n / 2) + 1;
  const raw = 2.219144465985076 * select(distances, (half * (half - 1)) / 2 - 1);
  return corrected ? raw * qnFactor(n) : raw;
}

function qnFactor(n: number): number {
  if (n <= 12) return QN_SMALL[n - 2];
  const odd = 1.60188 + (-2.1284 - 5.172 / n) / n;
  const even = 3.67561 + (1.9654 + (6.987 - 77 / n) / n) / n;
  return 1 / ((n % 2 === 1 ? odd : even) / n + 1);
}

/**
 * Sn: the low median over the values of the high median of their distances to all others. Otherwise as
 * `robustScale`, which it is a little less efficient than.
 *
 * Source: P. J. Rousseeuw, C. Croux (1993), section 2; factors of C. Croux, P. J. Rousseeuw (1992).
 */
export function scaleSn(values: ArrayLike<number>, corrected = true): number {
  const x = present(values);
  const n = x.length;
  if (n < 2) return Number.NaN;
  const distances = new Float64Array(n);
  const ofValues = x.map((value) => {
    for (let j = 0; j < n; j++) distances[j] = Math.abs(value - x[j]);
    return select(distances, Math.floor(n / 2));
  });
  const raw = 1.1926 * select(ofValues, Math.floor((n + 1) / 2) - 1);
  return corrected ? raw * snFactor(n) : raw;
}

function snFactor(n: number): number {
  if (n <= 9) return SN_SMALL[n - 2];
  return n % 2 === 1 ? n / (n - 0.9) : 1;
}

/** Mean of what is left when `share` of the values (0 to below one half) is cut from either end. */
export function trimmedMean(values: ArrayLike<number>, share: number): number {
  if (!(share >= 0 && share < 0.5)) throw new RangeError(`a share from 0 to below 0.5, not ${share}`);
  const sorted = present(values).sort();
  const cut = Math.floor(sorted.length * share);
  const kept = sorted.subarray(cut, sorted.length - cut);
  return kept.length === 0 ? Number.NaN : mean(Array.from(kept));
}

/** Median and range of the middle: medians of the lower and the upper half are the hinges of a box plot. */
export function hinges(values: ArrayLike<number>): { lower: number; median: number; upper: number } {
  const sorted = present(values).sort();
  const half = Math.ceil(sorted.length / 2);
  return {
    lower: medianInPlace(sorted.slice(0, half)),
    median: medianInPlace(sorted.slice()),
    upper: medianInPlace(sorted.slice(sorted.length - half)),
  };
}
