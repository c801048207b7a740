import { HUBER_K, scaleAboutZero } from './huberRegression.ts';
import { type CoefficientPrior, precisionOf, reweightedFit } from './reweightedFit.ts';
import { invertSymmetric } from './solveSymmetric.ts';

export type { CoefficientPrior } from './reweightedFit.ts';

/** What is known before the rows; `k`: residuals beyond so many scales count less. */
export interface ShrunkRegressionOptions {
  readonly prior: CoefficientPrior;
  readonly k?: number;
  /** The noise scale is never taken to be below this, in the unit of the responses. */
  readonly scaleFloor?: number;
  /** A noise scale known beforehand, and how many observations it is worth. */
  readonly priorScale?: { readonly scale: number; readonly weight: number };
  /** Widen the scale by sqrt(n / (n - effective parameters)), which the plain one lacks in small samples. */
  readonly correctScale?: boolean;
  readonly tolerance?: number;
  readonly maximumSteps?: number;
}

/** A fit that the prior had a say in; `scale` in the unit of the responses, one weight a row. */
export interface ShrunkRegression {
  /** Posterior means. */
  readonly coefficients: Float64Array;
  /** Posterior covariance of the coefficients, row after row. */
  readonly covariance: Float64Array;
  readonly scale: number;
  readonly weights: Float64Array;
  readonly effectiveParameters: number;
  readonly converged: boolean;
}

/**
 * Huber's regression with a Gaussian prior on each coefficient: posterior means and covariance given the noise
 * scale, which is estimated along the way. With infinite prior standard deviations and no floor its coefficients,
 * scale and weights are those of `huberRegression`; with few or no observations they are the prior's.
 *
 * `rows`: one array of regressors per observation (none is fine), no intercept added; `responses`: as many, no
 * gaps. Null only where the prior is infinite for a coefficient that the observations leave open. RangeError where
 * lengths differ.
 *
 * Source: D. V. Lindley, A. F. M. Smith (1972), Bayes estimates for the linear model, equation 11; weights of
 * P. J. Huber (1981), Robust Statistics, section 7.8.
 */
export function shrunkRegression(
  rows: readonly ArrayLike<number>[],
  responses: ArrayLike<number>,
  options: ShrunkRegressionOptions,
): ShrunkRegression | null {
  const { prior, k = HUBER_K, scaleFloor = 0, priorScale, correctScale = false } = options;
  const { tolerance = 1e-10, maximumSteps = 500 } = options;
  if (rows.length === 0) return fromPriorAlone(options);
  const n = rows.length;
  const scaleOf = (residuals: Float64Array, effectiveParameters: number) => {
    const correction = correctScale ? n / Math.max(1, n - effectiveParameters) : 1;
    const variance = scaleAboutZero(residuals) ** 2 * correction;
    const weight = priorScale?.weight ?? 0;
    const pooled = priorScale ? (n * variance + weight * priorScale.scale ** 2) / (n + weight) : variance;
    return Math.max(scaleFloor, Math.sqrt(pooled));
  };
  const fit = reweightedFit(rows, responses, { k, prior, scaleOf, tolerance, maximumSteps });
  if (fit === null) return null;
  const { coefficients, scale, weights, effectiveParameters, converged } = fit;
  const covariance = fit.unscaledCovariance.map((value) => value * scale * scale);
  return { coefficients, covariance, scale, weights, effectiveParameters, converged };
}

function fromPriorAlone({ prior, scaleFloor = 0, priorScale }: ShrunkRegressionOptions) {
  const coefficients = Float64Array.from(prior.means);
  const covariance = invertSymmetric(Float64Array.from(precisionOf(prior)), coefficients.length);
  if (covariance === null) return null;
  const scale = Math.max(scaleFloor, priorScale?.scale ?? 0);
  return {
    coefficients,
    covariance,
    scale,
    weights: new Float64Array(0),
    effectiveParameters: 0,
    converged: true,
  };
}

/** What the fit predicts for one row of regressors, and the standard deviation of a new observation there. */
export function predict(
  fit: {
    readonly coefficients: ArrayLike<number>;
    readonly covariance: ArrayLike<number>;
    readonly scale: number;
  },
  row: ArrayLike<number>,
): { value: number; standardDeviation: number } {
  const size = fit.coefficients.length;
  if (row.length !== size) throw new RangeError(`a row must hold ${size} values, not ${row.length}`);
  let value = 0;
  for (let a = 0; a < size; a++) value += row[a] * fit.coefficients[a];
  const variance = fit.scale * fit.scale + quadraticForm(fit.covariance, row);
  return { value, standardDeviation: Math.sqrt(variance) };
}

/** x' M x, of a matrix row after row: with a covariance of coefficients the variance of what they say at a row. */
export function quadraticForm(matrix: ArrayLike<number>, row: ArrayLike<number>): number {
  let sum = 0;
  for (let a = 0; a < row.length; a++) {
    for (let b = 0; b < row.length; b++) sum += row[a] * matrix[a * row.length + b] * row[b];
  }
  return sum;
}
