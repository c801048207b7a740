import { PROFILE_BINS } from '../measures.ts';
import { medianOfStretch } from '../statistics/median.ts';
import { ReusedArray } from '../statistics/reusedArray.ts';

/** A profile is told to 10 µA, below what any sensor reads: it is most of what is kept of a stroke, and half as long. */
const STEPS_TO_AN_AMPERE = 100_000;

const forRanks = new ReusedArray();

/**
 * Median current in each of the equal bins of travel, from fully retracted to fully extended, in whole 10 µA; null in a bin
 * without a sample.
 *
 * `positions` (0 to 1) and `amps` are those of the running part, as long as each other; the room goes one way, so that the
 * positions rise, or fall, and the samples of a bin follow each other.
 */
export function profileOf(positions: Float64Array, amps: Float64Array): (number | null)[] {
  const ranked = forRanks.copyOf(amps);
  const profile: (number | null)[] = new Array(PROFILE_BINS).fill(null);
  for (let from = 0, end = 0; from < amps.length; from = end) {
    const bin = binOf(positions[from]);
    while (end < amps.length && binOf(positions[end]) === bin) end++;
    profile[bin] = inSteps(medianOfStretch(ranked, from, end));
  }
  return profile;
}

function inSteps(amps: number): number {
  // Plus nothing: JSON has no negative zero.
  return Math.round(amps * STEPS_TO_AN_AMPERE) / STEPS_TO_AN_AMPERE + 0;
}

function binOf(position: number): number {
  return Math.min(PROFILE_BINS - 1, Math.max(0, Math.floor(position * PROFILE_BINS)));
}
