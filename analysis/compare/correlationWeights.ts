import { choleskyFactor, substituteForward } from '../statistics/cholesky.ts';
import { median } from '../statistics/median.ts';
import { MAD_TO_SIGMA } from '../statistics/medianAbsoluteDeviation.ts';
import type { AtReference } from './atReference.ts';
import { correlationOf, STROKE_CORRELATIONS, type StrokeCorrelation } from './strokeCorrelation.ts';

/** What the strokes of one side and direction say: a log likelihood for each of `STROKE_CORRELATIONS`, and on how many degrees. */
export interface CorrelationEvidence {
  readonly logLikelihoods: readonly number[];
  readonly degreesOfFreedom: number;
}

/** Of each span the strokes nearest to the work. The lengths of two spans as they are shown. */
const MOST_OF_A_SPAN = 30;
/** A stroke farther out than so many of the robust spreads counts as one so far out: a single odd one would hide a wander. */
const FARTHEST_OUT = 3;

/**
 * How well each hypothesis fits the strokes within two spans, each span about a level of its own, measure by measure: the
 * likelihood of what is left when levels and spread are taken off, so that no small sample hides its own correlation as the
 * usual estimate does.
 *
 * Source: restricted likelihood, H. D. Patterson, R. Thompson (1971), Recovery of inter-block information when block sizes
 * are unequal, the variance taken out.
 */
export function correlationEvidence(measures: readonly CorrelatedValues[]): CorrelationEvidence[] {
  const known = new Map<string, readonly Whitening[]>();
  return measures.map(({ before, after, beforeMs, afterMs }) => {
    const spans = [
      byTime(before, beforeMs).slice(-MOST_OF_A_SPAN),
      byTime(after, afterMs).slice(0, MOST_OF_A_SPAN),
    ].filter((span) => span.length > 0);
    // Whatever was asked for as before and after, neighbours are those in time.
    const strokes = spans
      .flatMap((span, index) =>
        aboutMedian(span).map((residual, i) => ({ residual, index, atMs: span[i].atMs })),
      )
      .sort((one, other) => one.atMs - other.atMs);
    const residuals = drawnIn(strokes.map(({ residual }) => residual));
    const degreesOfFreedom = residuals.length - spans.length;
    if (degreesOfFreedom < 1 || residuals.every((residual) => residual === 0)) return NOTHING_SAID;
    // Most measures have a value on every stroke, and share what goes by the times alone.
    const key = strokes.map(({ atMs, index }) => `${atMs} ${index}`).join();
    const whitenings = known.get(key) ?? STROKE_CORRELATIONS.map((each) => whitening(each, strokes));
    known.set(key, whitenings);
    const logLikelihoods = whitenings.map((each) => restrictedLogLikelihood(each, residuals));
    return { logLikelihoods, degreesOfFreedom };
  });
}

type CorrelatedValues = Pick<AtReference, 'before' | 'after' | 'beforeMs' | 'afterMs'>;

const NOTHING_SAID: CorrelationEvidence = {
  logLikelihoods: STROKE_CORRELATIONS.map(() => 0),
  degreesOfFreedom: 0,
};

/**
 * What each of `STROKE_CORRELATIONS` is worth after the strokes, together 1. The sides and directions of a room wander with each
 * other, so that all of them together count as much as the one with the most strokes.
 */
export function correlationWeights(evidence: readonly CorrelationEvidence[]): number[] {
  const degrees = evidence.map(({ degreesOfFreedom }) => degreesOfFreedom);
  const all = degrees.reduce((sum, each) => sum + each, 0);
  const share = all > 0 ? Math.max(...degrees) / all : 0;
  const logs = STROKE_CORRELATIONS.map(
    ({ prior }, index) =>
      Math.log(prior) + share * evidence.reduce((sum, each) => sum + each.logLikelihoods[index], 0),
  );
  const largest = Math.max(...logs);
  const parts = logs.map((log) => Math.exp(log - largest));
  const whole = parts.reduce((sum, part) => sum + part, 0);
  return parts.map((part) => part / whole);
}

interface ValueAt {
  readonly value: number;
  readonly atMs: number;
}

function byTime(values: readonly number[], times: readonly number[]): ValueAt[] {
  return values
    .map((value, index) => ({ value, atMs: times[index] }))
    .sort((one, other) => one.atMs - other.atMs);
}

function aboutMedian(span: readonly ValueAt[]): number[] {
  const level = median(span.map(({ value }) => value));
  return span.map(({ value }) => value - level);
}

function drawnIn(residuals: readonly number[]): readonly number[] {
  if (residuals.length === 0) return [];
  const spread = MAD_TO_SIGMA * median(residuals.map(Math.abs));
  if (spread === 0) return residuals;
  const limit = FARTHEST_OUT * spread;
  return residuals.map((residual) => Math.max(-limit, Math.min(limit, residual)));
}

/** When a stroke was made, and in which span. */
interface PlacedStroke {
  readonly atMs: number;
  readonly index: number;
}

/** What one hypothesis makes of the times: how to take the correlation off, and the levels so taken, at right angles. */
interface Whitening {
  readonly factor: Float64Array;
  readonly levels: readonly Float64Array[];
  readonly logDeterminant: number;
}

function whitening(correlation: StrokeCorrelation, strokes: readonly PlacedStroke[]): Whitening {
  const n = strokes.length;
  const times = strokes.map(({ atMs }) => atMs);
  const factor = choleskyFactor(correlationMatrix(times, correlation), n);
  if (factor === null) throw new RangeError('Strokes were supposed to share all that they vary by.');
  let logDeterminant = 0;
  for (let i = 0; i < n; i++) logDeterminant += 2 * Math.log(factor[i * n + i]);
  const levels: Float64Array[] = [];
  for (const span of new Set(strokes.map(({ index }) => index))) {
    const column = strokes.map(({ index }) => (index === span ? 1 : 0));
    const level = levels.reduce((left, earlier) => without(left, earlier), whitened(factor, column));
    levels.push(level);
    logDeterminant += Math.log(dot(level, level));
  }
  return { factor, levels, logDeterminant };
}

function restrictedLogLikelihood(
  { factor, levels, logDeterminant }: Whitening,
  residuals: readonly number[],
): number {
  const left = levels.reduce((rest, level) => without(rest, level), whitened(factor, residuals));
  return -0.5 * (logDeterminant + (residuals.length - levels.length) * Math.log(dot(left, left)));
}

/** Row after row; with a unit diagonal, and what no two strokes share keeps it positive definite. */
function correlationMatrix(times: readonly number[], correlation: StrokeCorrelation): Float64Array {
  const n = times.length;
  return Float64Array.from({ length: n * n }, (_, at) => {
    const [i, j] = [Math.floor(at / n), at % n];
    return i === j ? 1 : correlationOf(correlation, Math.abs(i - j), Math.abs(times[i] - times[j]));
  });
}

function whitened(factor: Float64Array, values: readonly number[]): Float64Array {
  const solved = Float64Array.from(values);
  substituteForward(factor, solved);
  return solved;
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i] * other[i];
  return sum;
}

function without(values: Float64Array, basis: Float64Array): Float64Array {
  const part = dot(values, basis) / dot(basis, basis);
  return values.map((value, index) => value - part * basis[index]);
}
