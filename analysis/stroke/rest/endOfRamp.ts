import { rangeOf } from '../../statistics/range.ts';
import type { SideSignal } from '../signal/sideSignal.ts';
import { differenceNoise, FLAT_AMPS } from './rests.ts';

/** A controller takes a motor's current back within less than this. A guess, no source. */
const LONGEST_RAMP_S = 0.5;
/** The readings of a rest lie no further apart than by so many times the record's noise: twelve of them hardly ever do. */
const FLAT_NOISES = 5;

/**
 * What is left of the last low readings of a record without those through which the current still falls: a record that ends soon
 * after a motor was let down slowly holds little else, and its middle is no zero. Longer ones tell their level however they begin.
 */
export function afterRamp(signal: SideSignal, last: Float64Array): Float64Array {
  if (last.length * signal.stepS > LONGEST_RAMP_S) return last;
  if (rangeOf(last) <= FLAT_AMPS) return last;
  const most = Math.max(FLAT_AMPS, FLAT_NOISES * differenceNoise(signal.amps));
  let rest = last;
  while (rest.length > 1 && rangeOf(rest) > most) rest = rest.subarray(1);
  return rest;
}
