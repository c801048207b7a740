import { PROFILE_BINS } from '../measures.ts';
import { medianOfStretch } from '../statistics/median.ts';

/** A profile is told to 10 µA, below what any sensor reads: it is most of what is kept of a stroke, and half as long. */
const STEPS_TO_AN_AMPERE = 100_000;

/**
 * Median current in each of the equal bins of travel, from fully retracted to fully extended, in whole 10 µA.
 *
 * `positions` (0 to 1) and `amps` are as long as each other; `include` says which samples count (the running part).
 * A bin without a sample is null.
 */
export function profileOf(
  positions: Float64Array,
  amps: Float64Array,
  include: Uint8Array,
): (number | null)[] {
  const n = amps.length;
  const bins = new Uint8Array(n);
  const counts = new Uint32Array(PROFILE_BINS + 1);
  for (let i = 0; i < n; i++) {
    if (include[i] === 0) continue;
    const bin = binOf(positions[i]);
    bins[i] = bin;
    counts[bin + 1]++;
  }
  for (let b = 0; b < PROFILE_BINS; b++) counts[b + 1] += counts[b];
  const sorted = new Float64Array(counts[PROFILE_BINS]);
  const next = counts.slice();
  for (let i = 0; i < n; i++) if (include[i] === 1) sorted[next[bins[i]]++] = amps[i];
  return Array.from({ length: PROFILE_BINS }, (_, b) =>
    counts[b + 1] > counts[b] ? inSteps(medianOfStretch(sorted, counts[b], counts[b + 1])) : null,
  );
}

function inSteps(amps: number): number {
  // Plus nothing: JSON has no negative zero.
  return Math.round(amps * STEPS_TO_AN_AMPERE) / STEPS_TO_AN_AMPERE + 0;
}

function binOf(position: number): number {
  return Math.min(PROFILE_BINS - 1, Math.max(0, Math.floor(position * PROFILE_BINS)));
}
