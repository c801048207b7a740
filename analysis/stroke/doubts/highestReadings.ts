import { greatest } from '../../statistics/greatest.ts';

/** Readings are the same within this part of them, and so many amperes: what is left is how numbers are kept. */
const SAME_PART = 1e-6;
const SAME_AMPS = 1e-9;
/** Of a crest's readings in its highest step, to those in the step below; and how far above the running current. */
const MOST_OF_CREST = 2.5;
const CREST_STEPS = 3;
/** Single readings below the highest, between two of it, to all of the highest: more than what a spark or a lost sample leaves. */
const FLICKERING_PART = 0.04;

/** The least that counts as the same reading, amperes. */
export function lowestSame(amps: number): number {
  return amps - SAME_PART * Math.abs(amps) - SAME_AMPS;
}

/** The highest of a record's readings, amperes; minus infinity where there is none. */
export interface HighestReadings {
  readonly amps: number;
  /** The least that counts as the same, and how many do. */
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
 * Whether the sensor still followed the current where it reads its highest several times: those are a crest, or a level about which
 * it flickers. `runningAmps`: what the side runs at, the offset in it.
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
 * Whether a sensor that still follows the current is what reads the same so often: a controller holds a current at its limit,
 * and noise takes single readings one step below. What a sensor's end cuts off has no noise; what falls below it does so by
 * any amount, most of it by more than one step.
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
 * Whether the `count` readings from `same` up are no more than a smooth crest leaves there, read in steps. A crest is a
 * parabola: it spends at most 1 / (sqrt(2) - 1) = 2.4 times as long in its highest step as in the one below, while a
 * cut heaps up in its highest step all that was above. So near to the `running` current the step below holds other
 * readings than the crest's, and nothing is told.
 */
function isCrest(peakAmps: Float64Array, { same, count }: HighestReadings, running: number): boolean {
  const next = nextBelow(peakAmps, same);
  if (same - CREST_STEPS * (same - next) <= running) return false;
  const step = lowestSame(next);
  let below = 0;
  for (const value of peakAmps) if (value >= step && value < same) below++;
  return count <= MOST_OF_CREST * below;
}
