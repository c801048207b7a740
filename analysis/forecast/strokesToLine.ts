import { autocorrelation } from '../statistics/autocorrelation.ts';
import { mannKendall } from '../statistics/mannKendall.ts';
import { studentTUpperQuantile } from '../statistics/studentT.ts';

/** When a rise reaches a line. */
export interface Forecast {
  /** Strokes from the latest one until the expected value reaches the line. */
  readonly strokes: number;
  /** The 80 % interval; `upper` null: it may never reach it. */
  readonly lower: number;
  readonly upper: number | null;
  /** Rise for each stroke, natural logarithm. */
  readonly perStroke: number;
}

const FEWEST_STROKES = 16;
/** Two-sided: what may pass for a trend by chance. */
const TREND_PROBABILITY = 0.01;
const COVERAGE = 0.8;
/** Further off than this nobody plans, and the line will have bent. */
const FARTHEST_STROKES = 400;

/**
 * When a steady rise will reach a line, with an 80 % interval; null unless a trend is established (Mann and Kendall,
 * p below 0.01, at least 16 strokes) and the line lies ahead within 400 strokes.
 *
 * `levels`: natural logarithm of the value over its normal, oldest first, one a stroke, no gaps. The straight line is
 * fitted by least squares, its covariance widened by (1 + r) / (1 - r) for the strokes' lag-one autocorrelation r
 * (G. V. Bayley, J. M. Hammersley, 1946); the interval of the crossing is Fieller's (E. C. Fieller, 1954, Some
 * problems in interval estimation).
 */
export function strokesToLine(levels: ArrayLike<number>, line: number): Forecast | null {
  if (levels.length < FEWEST_STROKES) return null;
  const trend = mannKendall(levels);
  if (trend === null || trend.s <= 0 || trend.p > TREND_PROBABILITY) return null;
  const { now, slope, nowVariance, slopeVariance, covariance, freedom } = straightLine(levels);
  if (!(slope > 0) || now >= line) return null;
  const strokes = (line - now) / slope;
  if (strokes > FARTHEST_STROKES) return null;
  const t = studentTUpperQuantile((1 - COVERAGE) / 2, freedom);
  // What is still to rise falls as the level now rises: its covariance with the slope is the other way round.
  const ahead = { value: line - now, variance: nowVariance };
  return {
    strokes,
    perStroke: slope,
    ...fieller(ahead, { value: slope, variance: slopeVariance }, -covariance, t),
  };
}

/** Strokes remember each other by no more than this: beyond it a line is no model of them. A guess, no source. */
const MOST_REMEMBERED = 0.8;
/** However much they remember, so many degrees of freedom are left. */
const LEAST_FREEDOM = 3;

/** The line by least squares, its level at the latest stroke, with variances widened for what strokes remember. */
function straightLine(levels: ArrayLike<number>) {
  const n = levels.length;
  // Counted from the latest stroke backwards, so that the intercept is the level now.
  const middle = -(n - 1) / 2;
  let mean = 0;
  for (let i = 0; i < n; i++) mean += levels[i] / n;
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < n; i++) {
    const x = i - (n - 1) - middle;
    xx += x * x;
    xy += x * (levels[i] - mean);
  }
  const slope = xy / xx;
  const now = mean - slope * middle;
  const residuals = Float64Array.from({ length: n }, (_, i) => levels[i] - (now + slope * (i - (n - 1))));
  const squares = residuals.reduce((sum, value) => sum + value * value, 0);
  const r = squares > 0 ? Math.min(MOST_REMEMBERED, Math.max(0, autocorrelation(residuals, 1))) : 0;
  const variance = (squares / (n - 2)) * ((1 + r) / (1 - r));
  const slopeVariance = variance / xx;
  return {
    now,
    slope,
    nowVariance: variance / n + middle * middle * slopeVariance,
    slopeVariance,
    covariance: -middle * slopeVariance,
    freedom: Math.max(LEAST_FREEDOM, ((n - 2) * (1 - r)) / (1 + r)),
  };
}

interface Estimate {
  readonly value: number;
  readonly variance: number;
}

/** Fieller's limits of `over / by`, jointly normal estimates; `upper` null where `by` may as well be nothing. */
function fieller(over: Estimate, by: Estimate, covariance: number, t: number) {
  const quadratic = by.value * by.value - t * t * by.variance;
  const linear = over.value * by.value - t * t * covariance;
  const constant = over.value * over.value - t * t * over.variance;
  const root = Math.sqrt(Math.max(0, linear * linear - quadratic * constant));
  if (quadratic <= 0) return { lower: Math.max(0, constant / (linear + root)), upper: null };
  return { lower: Math.max(0, (linear - root) / quadratic), upper: (linear + root) / quadratic };
}
