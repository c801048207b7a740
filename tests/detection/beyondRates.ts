import { MEASURE_NAMES, type MeasureName } from '../../analysis/measures.ts';
import type { PlayedStroke } from './playFleet.ts';

/** By measure: values that were judged, and those beyond the single-stroke limits. */
export type BeyondCounts = Readonly<Record<MeasureName, { judged: number; beyond: number }>>;

function noCounts(): BeyondCounts {
  // fromEntries forgets the keys that it was given.
  return Object.fromEntries(MEASURE_NAMES.map((name) => [name, { judged: 0, beyond: 0 }])) as BeyondCounts;
}

/** Counts every side's judged values; a measure of the whole stroke counts once for each side that tells it. */
export function countBeyond(strokes: readonly PlayedStroke[]): BeyondCounts {
  const counts = noCounts();
  for (const { expectations, broken } of strokes) {
    if (broken) continue;
    for (const { measure, beyond } of expectations) {
      if (beyond === null) continue;
      counts[measure].judged++;
      if (beyond) counts[measure].beyond++;
    }
  }
  return counts;
}

export function addCounts(all: readonly BeyondCounts[]): BeyondCounts {
  const sum = noCounts();
  for (const counts of all) {
    for (const name of MEASURE_NAMES) {
      sum[name].judged += counts[name].judged;
      sum[name].beyond += counts[name].beyond;
    }
  }
  return sum;
}
