import { median } from '../../statistics/median.ts';
import { rangeOf } from '../../statistics/range.ts';
import { differenceNoise, type RestSearch } from './rests.ts';

/** What a record ends in steps down to its rest by this part of what the motor draws, over so many samples at least. */
const STEP_PART = 0.15;
const STEP_NOISES = 6;
const FEWEST_STEPPED = 2;
const FEWEST_LAST = 3;

/**
 * What comes after the end of a record steps down to its last level, where it does. A motor that lost its load, or runs on
 * alone, draws little until it is switched off, which only a rest as short as a few samples may show.
 */
export function afterStep(edge: Float64Array, rough: number): Float64Array {
  const level = median(edge.subarray(Math.max(0, edge.length - FEWEST_LAST)));
  const clear = level + STEP_PART * (rough - level) + STEP_NOISES * differenceNoise(edge);
  let higher = 0;
  for (let i = edge.length - 1; i >= 0; i--) {
    higher = edge[i] > clear ? higher + 1 : 0;
    // The sample next to the step may hold part of it.
    if (higher === FEWEST_STEPPED) return edge.subarray(Math.min(edge.length, i + FEWEST_STEPPED + 1));
  }
  return edge;
}

/** So much of what the motor draws is far enough from nothing to be a motor without load. */
const NEAR_PART = 0.1;
/**
 * A current that is switched off is gone within some hundredths of a second, as the winding's inductance lets it; one whose
 * load goes falls as slowly as the motor gains speed. From four fifths of the way to one fifth, seconds: a guess, no source.
 */
const SWITCHED_OFF_S = 0.05;
const FALL = { high: 0.8, low: 0.2 };
const FEW_STEPS = 2;
/** A resting sensor stays at one level but for its noise and this part of what the motor draws. */
const WANDER_NOISES = 1.5;
const WANDER_PART = 0.02;

/**
 * Whether the readings that a record ends in may be those of a motor that runs lightly up to the last: they stand well above
 * nothing and were either not come to as a current that is switched off falls, or wander as no resting sensor does.
 */
export function mayBeLightRunning(search: RestSearch, edge: Float64Array): boolean {
  const { rough } = search;
  const level = median(edge);
  if (!(level > NEAR_PART * (rough - level))) return false;
  return (
    fallS(search, edge, level) > Math.max(SWITCHED_OFF_S, FEW_STEPS * search.signal.stepS) ||
    wanders(search, edge, level)
  );
}

/** How long the fall to the last level took, seconds. */
function fallS({ signal, rough }: RestSearch, edge: Float64Array, level: number): number {
  const { amps, timesS } = signal;
  const above = (part: number) => level + part * (rough - level);
  let low = amps.length - edge.length;
  while (low > 0 && amps[low] < above(FALL.low)) low--;
  let high = low;
  while (high > 0 && amps[high] < above(FALL.high)) high--;
  return timesS[low] - timesS[high];
}

/** Whether the smoothed readings differ by more than the sensor's noise makes of one level. */
function wanders({ smooth, rough }: RestSearch, edge: Float64Array, level: number): boolean {
  const inner = smooth.subarray(smooth.length - edge.length + 2, smooth.length - 2);
  return rangeOf(inner) > WANDER_NOISES * differenceNoise(edge) + WANDER_PART * (rough - level);
}
