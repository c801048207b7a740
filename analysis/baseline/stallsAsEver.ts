import { type DoneAnalysis, MEASURE_INDEX } from '../measures.ts';
import { lagAtStops } from '../stroke/lag.ts';
import type { Channel } from './channel.ts';

/** A lag further from its usual than this, seconds and standard deviations: a guess, no source. */
const LAG_MOVED = { leastS: 0.1, sigmas: 4 };

/**
 * Whether the sides come to their ends together, or apart, as they did when the normal was learnt. A side that stalls while
 * the other still runs, or has stopped, pulls the supply down by less than two do: its stall is higher, and neither its copper
 * colder nor its sensor another. True where no lag is known.
 */
export function stallsAsEver(channel: Channel | undefined, analysis: DoneAnalysis): boolean {
  const lagS = lagAtStops(analysis);
  const usual = channel?.fits[MEASURE_INDEX.lagS] ?? null;
  if (lagS === null || usual === null) return true;
  return Math.abs(lagS - usual.coefficients[0]) < Math.max(LAG_MOVED.leastS, LAG_MOVED.sigmas * usual.scale);
}
