import { median } from './median.ts';
import { ReusedArray } from './reusedArray.ts';
import { invertSymmetric } from './solveSymmetric.ts';

/**
 * A Gaussian prior on the coefficients: each by itself, an infinite standard deviation saying nothing, or together by
 * the inverse of their covariance, row after row.
 */
export type CoefficientPrior = { readonly means: ArrayLike<number> } & (
  | { readonly standardDeviations: ArrayLike<number>; readonly precision?: undefined }
  | { readonly precision: ArrayLike<number>; readonly standardDeviations?: undefined }
);

/** The prior's precision matrix, row after row. RangeError where its size is not that of the means. */
export function precisionOf(prior: CoefficientPrior): ArrayLike<number> {
  const size = prior.means.length;
  if (
    (prior.standardDeviations?.length ?? size) !== size ||
    (prior.precision?.length ?? size ** 2) !== size ** 2
  )
    throw new RangeError(`the prior must hold ${size} values`);
  if (prior.precision !== undefined) return prior.precision;
  const precision = new Float64Array(size * size);
  for (let a = 0; a < size; a++) precision[a * size + a] = 1 / prior.standardDeviations[a] ** 2;
  return precision;
}

/** How a fit is reweighted. */
export interface ReweightedFitOptions {
  /** Residuals beyond `k` scales count less, in proportion. Infinite: every one counts fully. */
  readonly k: number;
  readonly prior: CoefficientPrior;
  /** Turns the residuals and the number of coefficients that the data themselves settle into a noise scale. */
  readonly scaleOf: (residuals: Float64Array, effectiveParameters: number) => number;
  /** Stops once no residual changes by more than this part of the scale. */
  readonly tolerance: number;
  readonly maximumSteps: number;
}

/** A reweighted fit; `scale` and `residuals` in the unit of the responses, one weight a row. */
export interface ReweightedFit {
  readonly coefficients: Float64Array;
  /** Inverse of (X'WX + scale² / prior variance), row after row: times scale² it is the posterior covariance. */
  readonly unscaledCovariance: Float64Array;
  readonly scale: number;
  readonly weights: Float64Array;
  readonly residuals: Float64Array;
  /** Trace of the weighted hat matrix: how many coefficients the data, rather than the prior, settle. */
  readonly effectiveParameters: number;
  readonly converged: boolean;
}

/**
 * Iteratively reweighted least squares with Huber's weights: the loop under `huberRegression` and
 * `shrunkRegression`. `rows` holds one array of regressors per observation; no intercept is added. Null where the
 * coefficients are not determined. RangeError where lengths differ.
 *
 * Source: P. J. Huber (1981), Robust Statistics, sections 7.7 and 7.8; the prior enters as D. V. Lindley,
 * A. F. M. Smith (1972), Bayes estimates for the linear model.
 */
export function reweightedFit(
  rows: readonly ArrayLike<number>[],
  responses: ArrayLike<number>,
  options: ReweightedFitOptions,
): ReweightedFit | null {
  const n = rows.length;
  const size = options.prior.means.length;
  if (responses.length !== n) throw new RangeError(`${n} rows but ${responses.length} responses`);
  if (rows.some((row) => row.length !== size)) throw new RangeError(`every row must hold ${size} values`);
  const precision = precisionOf(options.prior);
  if (n === 0 || size === 0) return null;
  const weights = new Float64Array(n).fill(1);
  let scale = Number.NaN;
  let residuals: Float64Array | null = null;
  for (let step = 1; ; step++) {
    const noise = Number.isNaN(scale) ? firstNoise(responses, options) : scale;
    const solved = solve({ rows, responses, weights }, noise, { means: options.prior.means, precision });
    if (solved === null) return null;
    const next = forResiduals[step % 2].ofLength(n);
    putResiduals(next, rows, responses, solved.coefficients);
    const previousScale = scale;
    scale = options.scaleOf(next, solved.effectiveParameters);
    const moved = residuals === null ? Infinity : largestMove(next, residuals, previousScale, scale);
    residuals = next;
    const converged = scale === 0 || moved <= options.tolerance * scale;
    if (converged || step >= options.maximumSteps) {
      return { ...solved, scale, weights, residuals: residuals.slice(), converged };
    }
    for (let i = 0; i < n; i++) weights[i] = Math.min(1, (options.k * scale) / Math.abs(residuals[i]));
  }
}

/** Where responses are all alike, any small width will do, a part of them, but none at all would switch the prior off. */
const ALIKE_PART = 1e-6;

/** There is no scale before the first fit: take the noise to be as wide as the responses are. */
function firstNoise(responses: ArrayLike<number>, options: ReweightedFitOptions): number {
  const centre = median(responses);
  const about = new Float64Array(responses.length);
  for (let i = 0; i < about.length; i++) about[i] = responses[i] - centre;
  const spread = options.scaleOf(about, 0);
  return spread > 0 ? spread : ALIKE_PART * (Math.abs(centre) || 1);
}

function largestMove(next: Float64Array, previous: Float64Array, previousScale: number, scale: number) {
  let moved = Math.abs(scale - previousScale);
  for (let i = 0; i < next.length; i++) moved = Math.max(moved, Math.abs(next[i] - previous[i]));
  return moved;
}

/** Those of one step and of the one before it. */
const forResiduals = [new ReusedArray(), new ReusedArray()];

function putResiduals(
  residuals: Float64Array,
  rows: readonly ArrayLike<number>[],
  y: ArrayLike<number>,
  coefficients: Float64Array,
): void {
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i];
    let fitted = 0;
    for (let j = 0; j < coefficients.length; j++) fitted += row[j] * coefficients[j];
    residuals[i] = y[i] - fitted;
  }
}

/** What a step is solved for. */
interface Observed {
  readonly rows: readonly ArrayLike<number>[];
  readonly responses: ArrayLike<number>;
  readonly weights: Float64Array;
}

interface PriorPull {
  readonly means: ArrayLike<number>;
  /** Row after row. */
  readonly precision: ArrayLike<number>;
}

const [forNormal, forRight, forPrior] = [new ReusedArray(), new ReusedArray(), new ReusedArray()];

/** One step: the coefficients that the weighted observations and the prior settle on; null where they leave one open. */
function solve({ rows, responses, weights }: Observed, scale: number, { means, precision }: PriorPull) {
  const size = means.length;
  const normal = forNormal.ofLength(size * size).fill(0);
  const right = forRight.ofLength(size).fill(0);
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i];
    for (let a = 0; a < size; a++) {
      const weighted = weights[i] * row[a];
      right[a] += weighted * responses[i];
      for (let b = 0; b <= a; b++) normal[a * size + b] += weighted * row[b];
    }
  }
  for (let a = 0; a < size; a++) for (let b = 0; b < a; b++) normal[b * size + a] = normal[a * size + b];
  const withPrior = forPrior.copyOf(normal);
  for (let a = 0; a < size; a++) {
    for (let b = 0; b < size; b++) {
      const pull = scale * scale * precision[a * size + b];
      withPrior[a * size + b] += pull;
      right[a] += pull === 0 ? 0 : pull * means[b];
    }
  }
  const inverse = invertSymmetric(withPrior, size);
  if (inverse === null) return null;
  const coefficients = new Float64Array(size);
  let effectiveParameters = 0;
  for (let a = 0; a < size; a++) {
    for (let b = 0; b < size; b++) {
      coefficients[a] += inverse[a * size + b] * right[b];
      effectiveParameters += inverse[a * size + b] * normal[b * size + a];
    }
  }
  return { coefficients, unscaledCovariance: inverse, effectiveParameters };
}
