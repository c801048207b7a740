import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';
import { quantileInPlace } from '../../statistics/quantile.ts';
import { ReusedArray } from '../../statistics/reusedArray.ts';
import type { Interval } from '../signal/interval.ts';
import type { SideSignal } from '../signal/sideSignal.ts';

/** The readings of a rest, and when it was, where it tells of the other sides as well: sides come to their end apart. */
export interface Rest {
  readonly rest: Float64Array;
  readonly stood: Interval | null;
}

/** A record in which a rest is looked for. */
export interface RestSearch {
  readonly signal: SideSignal;
  /** The signal's moving median, amperes. */
  readonly smooth: Float64Array;
  /** What a rest stays below once smoothed, amperes. */
  readonly threshold: number;
  /** The typical current above that, amperes, the offset still in. */
  readonly rough: number;
}

/** No readings of any rest. */
export const NO_REST: Rest = { rest: new Float64Array(0), stood: null };

/** Nothing shorter is a rest. */
export const SHORTEST_REST_S = 0.15;
/** Nor is a rest read from fewer samples. */
const FEWEST_REST_SAMPLES = 4;
/**
 * A level that is a large part of the running current may as well be a motor that holds or creeps at the edge of the
 * record: it counts as rest only when it lasts.
 */
export const HIGH_PART = 0.25;
/** Nor does it last for most of the record: then what rises above it is the stall at the end of the travel. */
export const LONGEST_HIGH_PART = 0.5;
/** A level so far from nothing, amperes, is more likely what a motor runs at than a zero: a guess, no source. */
export const FAR_AMPS = 2.5;
/** No rest lies so many times higher than the motor's current above it: that is the motor itself, running lightly. */
export const MOST_REST_TIMES = 1.5;

/** Readings that differ by less are at one level, amperes. */
export const FLAT_AMPS = 0.3;
/** Of readings that differ by so much more than noise does from one to the next, most are no rest. */
const FLAT_NOISES = 10;
const MOST_OF_THEM = { low: 0.1, high: 0.9 };

/** Whether readings all lie at one level, as those of a rest do. */
export function isFlat(rest: Float64Array): boolean {
  const ranked = rest.slice();
  const range = quantileInPlace(ranked, MOST_OF_THEM.high) - quantileInPlace(ranked, MOST_OF_THEM.low);
  return range < FLAT_AMPS || range < FLAT_NOISES * differenceNoise(rest);
}

/** Whether there are samples enough, over so many seconds. */
export function isLong(signal: SideSignal, samples: Float64Array, seconds: number): boolean {
  return samples.length + 1 >= FEWEST_REST_SAMPLES && (samples.length + 1) * signal.stepS >= seconds;
}

const forNow = new ReusedArray();

/**
 * The sensor's noise from the differences between neighbours: their median absolute deviation over the square root of two
 * (von Neumann, 1941, for the idea of successive differences). Amperes.
 */
export function differenceNoise(amps: Float64Array): number {
  const differences = forNow.ofLength(Math.max(0, amps.length - 1));
  for (let i = 1; i < amps.length; i++) differences[i - 1] = amps[i] - amps[i - 1];
  return differences.length === 0 ? 0 : medianAbsoluteDeviation(differences) / Math.SQRT2;
}
