import { studentTUpperQuantile, studentTUpperTail } from './studentT.ts';

/** The difference of two means with its interval, in the unit of the values. */
export interface MeanDifference {
  /** Mean of the first sample less that of the second. */
  readonly difference: number;
  readonly standardError: number;
  readonly t: number;
  readonly degreesOfFreedom: number;
  readonly pTwoSided: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Difference of two means with its interval, the variances free to differ (or `pooled` where they are one).
 *
 * `x`, `y`: any order, no gaps. Null where a sample holds fewer than two or neither varies.
 *
 * Source: B. L. Welch (1947), The generalization of Student's problem; NIST/SEMATECH e-Handbook 1.3.5.3 and 7.3.1.
 */
export function welch(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  { confidence = 0.95, pooled = false }: { confidence?: number; pooled?: boolean } = {},
): MeanDifference | null {
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`confidence lies between 0 and 1, not ${confidence}`);
  const [m, n] = [x.length, y.length];
  if (m < 2 || n < 2) return null;
  const first = meanAndVariance(x);
  const second = meanAndVariance(y);
  const pool = ((m - 1) * first.variance + (n - 1) * second.variance) / (m + n - 2);
  const a = (pooled ? pool : first.variance) / m;
  const b = (pooled ? pool : second.variance) / n;
  const standardError = Math.sqrt(a + b);
  if (!(standardError > 0)) return null;
  const degreesOfFreedom = pooled ? m + n - 2 : (a + b) ** 2 / ((a * a) / (m - 1) + (b * b) / (n - 1));
  const difference = first.mean - second.mean;
  const t = difference / standardError;
  const reach = standardError * studentTUpperQuantile((1 - confidence) / 2, degreesOfFreedom);
  return {
    difference,
    standardError,
    t,
    degreesOfFreedom,
    pTwoSided: 2 * studentTUpperTail(Math.abs(t), degreesOfFreedom),
    lower: difference - reach,
    upper: difference + reach,
  };
}

/**
 * Mean and variance (n - 1), in two passes that keep the digits; NaN for too few values.
 *
 * Source: T. F. Chan, G. H. Golub, R. J. LeVeque (1983), Algorithms for computing the sample variance, equation 1.7.
 */
export function meanAndVariance(values: ArrayLike<number>): { mean: number; variance: number } {
  const n = values.length;
  if (n === 0) return { mean: Number.NaN, variance: Number.NaN };
  let sum = 0;
  for (let i = 0; i < n; i++) sum += values[i];
  const rough = sum / n;
  let squares = 0;
  let rest = 0;
  for (let i = 0; i < n; i++) {
    const deviation = values[i] - rough;
    squares += deviation * deviation;
    rest += deviation;
  }
  return { mean: rough + rest / n, variance: n < 2 ? Number.NaN : (squares - (rest * rest) / n) / (n - 1) };
}
