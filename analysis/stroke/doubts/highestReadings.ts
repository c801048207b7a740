import { greatest } from '../../statistics/greatest.ts';

/** Two readings are the same if they differ by less than this part of them and this many amperes: that is rounding. */
const SAME_PART = 1e-6;
const SAME_AMPS = 1e-9;
/**
 * A crest has at most this many times as many readings in its highest step as in the step below, and lies at least this
 * many steps above the running current (`isCrest`).
 */
const MOST_OF_CREST = 2.5;
const CREST_STEPS = 3;
/**
 * Single readings below the highest, between two of the highest, as a part of all the highest: more than a spark or a
 * lost sample leaves.
 */
const FLICKERING_PART = 0.04;

/** The least that counts as the same reading, amperes. */
export function lowestSame(amps: number): number {
  return amps - SAME_PART * Math.abs(amps) - SAME_AMPS;
}

/** The highest of a record's readings, amperes; minus infinity where there is none. */
export interface HighestReadings {
  readonly amps: number;
  /** The least that counts as the same, amperes, and how many readings do. */
  readonly same: number;
  readonly count: number;
}

/** The highest of these readings, amperes. */
export function highestReadings(peakAmps: Float64Array): HighestReadings {
  const amps = greatest(peakAmps);
  const same = lowestSame(amps);
  let count = 0;
  for (let i = 0; i < peakAmps.length; i++) if (peakAmps[i] >= same) count++;
  return { amps, same, count };
}

/**
 * Whether the sensor still followed the current where it reads its highest several times: on a crest, or at a level
 * about which it flickers. `runningAmps`: what the side runs at, offset included.
 */
export function followsCurrent(
  peakAmps: Float64Array,
  highest: HighestReadings,
  runningAmps: number,
): boolean {
  return isCrest(peakAmps, highest, runningAmps) || flickers(peakAmps, highest);
}

/** The highest reading below a level. */
function nextBelow(peakAmps: Float64Array, level: number): number {
  let next = -Infinity;
  for (const value of peakAmps) if (value < level && value > next) next = value;
  return next;
}

/**
 * Whether a sensor that still follows the current reads the same so often because a controller holds the current at its
 * limit: then noise takes single readings one step below. Where the sensor's range ends there is no noise; what falls
 * below does so by any amount, mostly by more than one step.
 */
function flickers(peakAmps: Float64Array, { same, count }: HighestReadings): boolean {
  const step = nextBelow(peakAmps, same) - SAME_PART * same;
  let oneStep = 0;
  let deeper = 0;
  for (let i = 1; i + 1 < peakAmps.length; i++) {
    if (peakAmps[i] >= same || peakAmps[i - 1] < same || peakAmps[i + 1] < same) continue;
    if (peakAmps[i] >= step) oneStep++;
    else deeper++;
  }
  return oneStep > Math.max(FLICKERING_PART * count, deeper);
}

/**
 * Whether the `count` readings from `same` up are no more than a smooth crest leaves there when it is read in steps. A
 * crest is a parabola: it spends at most 1 / (sqrt(2) - 1) = 2.4 times as long in its highest step as in the one below,
 * while a cut heaps up in its highest step all that was above. Near the `running` current (amperes) the step below
 * holds other readings than the crest's, so that this cannot be told: false.
 */
function isCrest(peakAmps: Float64Array, { same, count }: HighestReadings, running: number): boolean {
  const next = nextBelow(peakAmps, same);
  if (same - CREST_STEPS * (same - next) <= running) return false;
  const step = lowestSame(next);
  let below = 0;
  for (const value of peakAmps) if (value >= step && value < same) below++;
  return count <= MOST_OF_CREST * below;
}
