import { type DoneAnalysis, MEASURE_INDEX } from '../measures.ts';
import { lagAtStops } from '../stroke/lag.ts';
import type { Channel } from './channel.ts';

/**
 * A lag has moved if it is further from its usual than this many seconds and standard deviations. Guesses, no source.
 */
const LAG_MOVED = { leastS: 0.1, sigmas: 4 };

/**
 * Whether the sides come to their ends together, or as far apart, as when the normal was learnt. A side that stalls
 * while the other still runs, or has stopped, pulls the supply down by less than two do: its stall is higher although
 * neither its copper is colder nor its sensor has changed. True where no lag is known.
 */
export function stallsAsEver(channel: Channel | undefined, analysis: DoneAnalysis): boolean {
  const lagS = lagAtStops(analysis);
  const usual = channel?.fits[MEASURE_INDEX.lagS] ?? null;
  if (lagS === null || usual === null) return true;
  return Math.abs(lagS - usual.coefficients[0]) < Math.max(LAG_MOVED.leastS, LAG_MOVED.sigmas * usual.scale);
}
