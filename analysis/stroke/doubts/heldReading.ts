import type { HeldReading } from '../../measures.ts';
import type { RestLevel } from '../rest/restLevel.ts';
import type { SideSignal } from '../signal/sideSignal.ts';
import { followsCurrent, highestReadings, lowestSame } from './highestReadings.ts';

/** From this many readings of one value on it is more than two that happen to be alike. */
const FEWEST = 3;

/**
 * The highest reading of a side's record if several samples hold it and the sensor no longer followed the current there
 * (`followsCurrent`); else null. `runningAmpsP90`: amperes less the offset.
 */
export function heldReading(
  { peakAmps }: SideSignal,
  { noiseAmps, offsetAmps }: RestLevel,
  runningAmpsP90: number,
): HeldReading | null {
  const highest = highestReadings(peakAmps);
  if (highest.count < FEWEST) return null;
  if (followsCurrent(peakAmps, highest, runningAmpsP90 + (offsetAmps ?? 0))) return null;
  return { amps: highest.amps, noiseSteps: Math.round((100 * noiseAmps) / smallestStep(peakAmps)) / 100 };
}

/** The least by which two readings differ, amperes. */
function smallestStep(peakAmps: Float64Array): number {
  const ranked = peakAmps.slice().sort();
  let step = Number.POSITIVE_INFINITY;
  for (let i = 1; i < ranked.length; i++) {
    if (ranked[i - 1] < lowestSame(ranked[i])) step = Math.min(step, ranked[i] - ranked[i - 1]);
  }
  return step;
}
