import { MEASURE_INDEX, type MeasureName } from '../measures.ts';
import { medianAbsoluteDeviation } from '../statistics/medianAbsoluteDeviation.ts';
import type { Channel } from './channel.ts';

/** So many reference strokes tell. */
const FEWEST = 6;
/** What stands at V/R moves with the supply as the time does; a stall of so little of the time's spread does not. A guess, no source. */
const LEAST_PART = 0.2;

/**
 * Whether what a side draws at its end moves from stroke to stroke as the time that it takes does, where nobody recorded the
 * supply: one that a clutch or a valve holds at the same current on every supply tells nothing of it. True while few strokes tell.
 */
export function stallFollowsSupply(channel: Channel | undefined): boolean {
  const [stalls, times] = (['endStopAmps', 'durationS'] as const).map((measure) => read(channel, measure));
  if (stalls.length < FEWEST || times.length < FEWEST) return true;
  return medianAbsoluteDeviation(stalls) >= LEAST_PART * medianAbsoluteDeviation(times);
}

/** What the reference strokes read of a measure, on its scale. */
function read(channel: Channel | undefined, measure: MeasureName): Float64Array {
  const values = (channel?.values ?? []).map((stroke) => stroke[MEASURE_INDEX[measure]]);
  return Float64Array.from(values.filter((value) => value !== null));
}
