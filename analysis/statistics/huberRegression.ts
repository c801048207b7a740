import { medianInPlace } from './median.ts';
import { MAD_TO_SIGMA } from './medianAbsoluteDeviation.ts';
import { ReusedArray } from './reusedArray.ts';
import { reweightedFit } from './reweightedFit.ts';
import { invertSymmetric } from './solveSymmetric.ts';

/** 95 % efficiency for normal noise. */
export const HUBER_K = 1.345;

/** `k`: residuals beyond so many scales count less; when to stop: see `ReweightedFitOptions`. */
export interface HuberRegressionOptions {
  readonly k?: number;
  readonly tolerance?: number;
  readonly maximumSteps?: number;
}

/** A robust fit. */
export interface HuberRegression {
  readonly coefficients: Float64Array;
  readonly standardErrors: Float64Array;
  /** Covariance of the coefficients, row after row. */
  readonly covariance: Float64Array;
  /** Noise scale, in the unit of the responses: median of the absolute residuals times 1.4826. */
  readonly scale: number;
  /** 1 for an observation taken fully, less for one that lies beyond `k` scales. */
  readonly weights: Float64Array;
  readonly converged: boolean;
}

/**
 * Huber's M-estimate of a linear regression, the scale re-estimated in every step.
 *
 * `rows`: one array of regressors per observation; no intercept is added, so put a 1 where one is wanted.
 * `responses`: as many, no gaps. Null where there are fewer observations than coefficients or the regressors are
 * collinear. RangeError where lengths differ. Does not resist outliers in the regressors themselves.
 *
 * Source: P. J. Huber (1981), Robust Statistics, sections 7.6 to 7.8; scale and covariance as in W. N. Venables,
 * B. D. Ripley (2002), Modern Applied Statistics with S, section 6.5.
 */
export function huberRegression(
  rows: readonly ArrayLike<number>[],
  responses: ArrayLike<number>,
  { k = HUBER_K, tolerance = 1e-10, maximumSteps = 500 }: HuberRegressionOptions = {},
): HuberRegression | null {
  const size = rows.length === 0 ? 0 : rows[0].length;
  if (rows.length < size) return null;
  const prior = { means: new Float64Array(size), standardDeviations: new Float64Array(size).fill(Infinity) };
  const fit = reweightedFit(rows, responses, { k, prior, scaleOf: scaleAboutZero, tolerance, maximumSteps });
  if (fit === null) return null;
  const { coefficients, scale, weights, residuals, converged } = fit;
  const covariance = covarianceOf(rows, residuals, weights, scale, k);
  const standardErrors = coefficients.map((_, j) => Math.sqrt(covariance[j * size + j]));
  return { coefficients, standardErrors, covariance, scale, weights, converged };
}

const forSizes = new ReusedArray();

/** Median of the absolute residuals, made to estimate the sigma of normal noise. */
export function scaleAboutZero(residuals: Float64Array): number {
  const sizes = forSizes.ofLength(residuals.length);
  for (let i = 0; i < sizes.length; i++) sizes[i] = Math.abs(residuals[i]);
  return MAD_TO_SIGMA * medianInPlace(sizes);
}

/** Huber (1981), equation 7.6.5 with the small-sample factor of 7.6.10. */
function covarianceOf(
  rows: readonly ArrayLike<number>[],
  residuals: Float64Array,
  weights: Float64Array,
  scale: number,
  k: number,
): Float64Array {
  const n = rows.length;
  const size = rows[0].length;
  let squares = 0;
  let inside = 0;
  for (let i = 0; i < n; i++) {
    squares += (weights[i] * residuals[i]) ** 2;
    if (Math.abs(residuals[i]) <= k * scale) inside++;
  }
  const slope = inside / n;
  const slopeVariance = (n * slope * (1 - slope)) / (n - 1);
  const correction = 1 + (size * slopeVariance) / (n * slope * slope);
  const variance = (squares / (n - size)) * (correction / slope) ** 2;
  const normal = new Float64Array(size * size);
  for (const row of rows) {
    for (let a = 0; a < size; a++) for (let b = 0; b < size; b++) normal[a * size + b] += row[a] * row[b];
  }
  const inverse = invertSymmetric(normal, size) ?? new Float64Array(size * size).fill(Number.NaN);
  return inverse.map((value) => value * variance);
}
