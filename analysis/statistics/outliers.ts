import { median } from './median.ts';
import { medianAbsoluteDeviation } from './medianAbsoluteDeviation.ts';
import { studentTUpperQuantile } from './studentT.ts';
import { meanAndVariance } from './welch.ts';

/** One step of the test: the value that was looked at, and what it was held against. */
export interface OutlierStep {
  /** Index (from 0) of the value furthest from the mean of those left. */
  readonly index: number;
  readonly statistic: number;
  readonly criticalValue: number;
}

/**
 * Indices (from 0) of up to `most` outliers among values that are normal otherwise, furthest first: the generalised
 * extreme studentised deviate test, which is not blinded by several outliers together.
 *
 * `values`: any order, no gaps. Fewer than `most` + 3 answer none.
 *
 * Source: B. Rosner (1983), Percentage points for a generalized ESD many-outlier procedure.
 */
export function outliers(values: ArrayLike<number>, most: number, alpha = 0.05): number[] {
  const steps = extremeDeviates(values, most, alpha);
  // The largest step that exceeds its limit counts, not the first that fails.
  const last = steps.findLastIndex(({ statistic, criticalValue }) => statistic > criticalValue);
  return steps.slice(0, last + 1).map(({ index }) => index);
}

/** The steps of `outliers`, each with the value taken away before the next. */
export function extremeDeviates(values: ArrayLike<number>, most: number, alpha = 0.05): OutlierStep[] {
  const left = Array.from(values, (value, index) => ({ value, index }));
  const steps: OutlierStep[] = [];
  if (left.length < most + 3) return steps;
  while (steps.length < most) {
    const n = left.length;
    const { mean, variance } = meanAndVariance(left.map(({ value }) => value));
    const furthest = left.reduce((a, b) => (Math.abs(b.value - mean) > Math.abs(a.value - mean) ? b : a));
    const statistic = variance > 0 ? Math.abs(furthest.value - mean) / Math.sqrt(variance) : 0;
    steps.push({ index: furthest.index, statistic, criticalValue: grubbsLimit(n, alpha / 2) });
    left.splice(left.indexOf(furthest), 1);
  }
  return steps;
}

/**
 * Grubbs's test of the one value furthest from the mean, either way or only `above`. Null for fewer than three
 * values or where all are equal.
 *
 * Source: F. E. Grubbs (1969), Procedures for detecting outlying observations in samples.
 */
export function grubbs(
  values: ArrayLike<number>,
  { alpha = 0.05, side = 'either' }: { alpha?: number; side?: 'either' | 'above' } = {},
): OutlierStep | null {
  const n = values.length;
  const { mean, variance } = meanAndVariance(values);
  if (n < 3 || !(variance > 0)) return null;
  const distance = (i: number) => (side === 'above' ? values[i] - mean : Math.abs(values[i] - mean));
  let index = 0;
  for (let i = 1; i < n; i++) if (distance(i) > distance(index)) index = i;
  const criticalValue = grubbsLimit(n, side === 'above' ? alpha : alpha / 2);
  return { index, statistic: distance(index) / Math.sqrt(variance), criticalValue };
}

function grubbsLimit(n: number, tail: number): number {
  const t = studentTUpperQuantile(tail / n, n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

/**
 * Distance of each value from the median in standard deviations as the median absolute deviation estimates them; beyond 3.5
 * it is called an outlier. Infinite or NaN where more than half of the values are equal.
 *
 * Source: B. Iglewicz, D. C. Hoaglin (1993), How to Detect and Handle Outliers, chapter 3.
 */
export function modifiedScores(values: ArrayLike<number>): Float64Array {
  const centre = median(values);
  const scale = medianAbsoluteDeviation(values, 1) / 0.6745;
  return Float64Array.from(values, (value) => (value - centre) / scale);
}
