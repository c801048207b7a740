import { median } from '../statistics/median.ts';
import { medianAbsoluteDeviation } from '../statistics/medianAbsoluteDeviation.ts';
import { rollingMedian } from '../statistics/rollingMedian.ts';

/** One side's current about its rest, and how far it strays there. Amperes. */
export interface SteadyCurrent {
  readonly amps: Float64Array;
  readonly offsetAmps: number;
  readonly noiseAmps: number;
}

/** Samples of the running median: three clicks of interference in a row do not reach it. */
const HALF_WINDOW = 3;
/** A sensor's rest is within this of zero, amperes, or within a tenth of the largest reading. */
const MOST_OFFSET_AMPS = 1;
const OFFSET_PART = 0.1;
/**
 * Takes the offset and the clicks out of one side of a continuous recording: the current's running median of seven
 * samples less the median of what lies near zero. Gaps (NaN) are left out; where seven in a row are missed, the answer
 * is 0. A record that is never near zero has no rest to be read: its offset and noise are 0.
 */
export function steadyCurrent(amps: Float64Array): SteadyCurrent {
  let largest = 0;
  for (const value of amps) if (Math.abs(value) > largest) largest = Math.abs(value);
  const nearZero = Math.min(MOST_OFFSET_AMPS, OFFSET_PART * largest);
  const rest = amps.filter((value) => Math.abs(value) <= nearZero);
  const offsetAmps = rest.length === 0 ? 0 : median(rest);
  const noiseAmps = rest.length === 0 ? 0 : medianAbsoluteDeviation(rest);
  const steady = rollingMedian(amps, HALF_WINDOW);
  for (let i = 0; i < steady.length; i++) steady[i] = Number.isNaN(steady[i]) ? 0 : steady[i] - offsetAmps;
  return { amps: steady, offsetAmps, noiseAmps };
}
