import { median, medianInPlace } from '../../statistics/median.ts';
import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';
import { ReusedArray } from '../../statistics/reusedArray.ts';
import { OFFSET_AMPS } from './offset.ts';

/** Where the drive is a smaller part of a record than this, the ranks of its readings tell of the rest alone. */
const LEAST_DRIVEN = 0.15;
/** It strays from its level by its noise, and by this at the least, amperes. */
const LEAST_STRAY_AMPS = 0.3;
const NOISE_SIGMAS = 6;
/** A small motor runs at less than an ampere itself: its drive stands far above its rest, and is more than some odd samples. */
const MOST_OF_DRIVE = 0.25;
const FEWEST_DRIVEN = 8;
const EDGE_SAMPLES = 3;
const STRIDE = 8;

/** The rest that most of a record is. Amperes. */
export interface LongRest {
  readonly level: number;
  /** What lies within this of the level is rest. */
  readonly stray: number;
  /** How many readings lie further off. */
  readonly driven: number;
}

/**
 * The rest of a record that hardly holds anything else: one that was left running while somebody went away in mid-stroke, or
 * long before it and after it. It is near nothing, and so are both ends of the record: most of a record may also be a motor
 * that runs lightly, or a running current that a lost zero brought to nothing. Null where there is none. `values` hold no
 * NaN.
 */
export function longRest(values: Float64Array): LongRest | null {
  const level = medianInPlace(everyOther(values, STRIDE));
  if (!(Math.abs(level) <= OFFSET_AMPS)) return null;
  const noise = medianAbsoluteDeviation(everyOther(values, STRIDE));
  const stray = Math.max(LEAST_STRAY_AMPS, NOISE_SIGMAS * noise);
  const ends = [values.subarray(0, EDGE_SAMPLES), values.subarray(-EDGE_SAMPLES)];
  if (ends.some((end) => Math.abs(median(end) - level) > stray)) return null;
  const drive = values.filter((value) => Math.abs(value - level) > stray);
  if (drive.length < FEWEST_DRIVEN || drive.length >= LEAST_DRIVEN * values.length) return null;
  const drivenAmps = Math.abs(median(drive) - level);
  return Math.abs(level) <= MOST_OF_DRIVE * drivenAmps ? { level, stray, driven: drive.length } : null;
}

/** All of the drive and as much of a long rest, so that ranks tell of both; the same values where there is no such rest. */
export function withShortRest(values: Float64Array, fewestDriven: number): Float64Array {
  const rest = longRest(values);
  if (rest === null || rest.driven < fewestDriven) return values;
  const stride = Math.ceil((values.length - rest.driven) / rest.driven);
  let resting = 0;
  return values.filter((value) => Math.abs(value - rest.level) > rest.stray || resting++ % stride === 0);
}

const forNow = new ReusedArray();

/** The first value and every `stride`-th after it, in an array that the next call uses again. */
export function everyOther(values: Float64Array, stride: number): Float64Array {
  const some = forNow.ofLength(Math.ceil(values.length / stride));
  for (let i = 0; i < some.length; i++) some[i] = values[i * stride];
  return some;
}
