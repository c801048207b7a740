import type { Residual } from '../../baseline/judge.ts';
import { WEATHER_DAYS } from '../../baseline/priors.ts';
import { DAY_MS } from '../../history.ts';

/**
 * An exponentially weighted moving mean of a side's rise (S. W. Roberts, 1959), natural logarithm, with the variance
 * that unrecorded weather adds to it: strokes of one spell share their weather, strokes some weeks apart do not.
 *
 * Where nobody records the temperature the charts alone tell a slow drift late, because they allow for weather as if it
 * lasted as long as wear. Of 27 simulated drifts of 0.3 % a stroke, half are told after 32 strokes with this mean and
 * after 38 without it, with no more false warnings in 474 healthy room-years. Two deviations instead of three would
 * make it 30 strokes, but gave five false warnings more, for winters that cost more current than the one the room had
 * learnt: for months a winter and a fault look alike.
 */
export interface LastingRise {
  mean: number;
  /** Strokes taken in. */
  strokes: number;
  /** For how many strokes in a row up to the latest the mean has stood above `LEAST_MEAN`. */
  run: number;
  /**
   * Variance of what unrecorded weather adds to the mean, and the covariance of that with what it adds to the latest
   * stroke.
   */
  variance: number;
  covariance: number;
  /** When the latest stroke was made, milliseconds since 1970; null: there is none. */
  atMs: number | null;
}

/** No stroke taken in. */
export function beginLastingRise(): LastingRise {
  return { mean: 0, strokes: 0, run: 0, variance: 0, covariance: 0, atMs: null };
}

/** The weight of the newest stroke: the mean is over about nine. */
const PART = 0.2;
/** A single stroke counts for no more than this, natural logarithm: a guess, no source. */
const MOST_AT_ONCE = 0.2;
/** The mean counts from this many strokes on: a guess, no source. */
const LEAST_STROKES = 12;
/** A mean below this is never a reason to call anybody, natural logarithm: as for the charts. */
const LEAST_MEAN = 0.045;
/** The mean must lie this many standard deviations above that. */
const SIGMAS = 3;
/**
 * Variance of the mean as a part of one stroke's, half as much again because strokes in a row are alike: a guess, no
 * source.
 */
const NOISE_PART = (1.5 * PART) / (2 - PART);

/**
 * Takes in a stroke. `rise`: natural logarithm, with nothing taken off for a season. `unseen`: standard deviation of
 * what unrecorded weather may add. `atMs`: when the stroke was made.
 */
export function takeLasting(lasting: LastingRise, rise: number, unseen: number, atMs: number): void {
  const days = lasting.atMs === null ? 0 : Math.max(0, atMs - lasting.atMs) / DAY_MS;
  const alike = Math.exp(-days / WEATHER_DAYS);
  lasting.strokes += 1;
  lasting.atMs = atMs;
  const part = Math.max(PART, 1 / lasting.strokes);
  const left = 1 - part;
  const own = part * unseen ** 2;
  const before = left * alike * lasting.covariance;
  lasting.variance = left ** 2 * lasting.variance + part * (own + 2 * before);
  lasting.covariance = before + own;
  lasting.mean = left * lasting.mean + part * Math.min(rise, MOST_AT_ONCE);
  lasting.run = lasting.mean > LEAST_MEAN ? lasting.run + 1 : 0;
}

/**
 * Whether the mean stands above what weather, noise, the baseline's own uncertainty and an unseen zero can make, and
 * has stood above `LEAST_MEAN` for more than the `ofStay` strokes of this stay: a rise that began with the stay may
 * come from the ground that the coach stands on.
 */
export function hasLasted(
  { mean, strokes, run, variance }: LastingRise,
  { noise, uncertainty, zero }: Pick<Residual, 'noise' | 'uncertainty' | 'zero'>,
  ofStay: number,
): boolean {
  const deviation = Math.hypot(Math.sqrt(variance + NOISE_PART * noise ** 2), uncertainty, zero);
  return strokes >= LEAST_STROKES && run > ofStay && mean > LEAST_MEAN + SIGMAS * deviation;
}
