import { PROFILE_BINS } from '../measures.ts';
import { medianOfStretch } from '../statistics/median.ts';

/**
 * Median current in each of the equal bins of travel, from fully retracted to fully extended.
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
    counts[b + 1] > counts[b] ? medianOfStretch(sorted, counts[b], counts[b + 1]) : null,
  );
}

function binOf(position: number): number {
  return Math.min(PROFILE_BINS - 1, Math.max(0, Math.floor(position * PROFILE_BINS)));
}
