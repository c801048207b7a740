import { MEASURE_INDEX, type MeasureName } from '../measures.ts';
import { medianAbsoluteDeviation } from '../statistics/medianAbsoluteDeviation.ts';
import type { Channel, Fit } from './channel.ts';
import { PRIORS } from './priors.ts';

/** So many reference strokes tell, where nobody recorded the supply. */
const FEWEST = 6;
/** What stands at V/R moves with the supply as the time does; a stall of so little of the time's spread does not. A guess, no source. */
const LEAST_PART = 0.2;
/** A current that moves by less than half of V/R for each volt is nearer to one that a limit holds. */
const LEAST_PER_VOLT = PRIORS.endStopAmps.perVolt.mean / 2;

/**
 * Whether what a side draws at its end goes with the supply, as V/R does: by its own slope (`fit`), or where nobody recorded
 * the supply, as the time does that the room takes. One that a clutch, a valve or a controller holds at the same current on
 * every supply tells neither supply nor copper. True while few strokes tell.
 */
export function stallFollowsSupply(
  channel: Channel | undefined,
  fit = channel?.fits[MEASURE_INDEX.endStopAmps] ?? null,
): boolean {
  if (channel === undefined) return true;
  if (channel.conditions.some(([volts]) => volts !== null)) return fit === null || followsVolts(fit);
  const [stalls, times] = (['endStopAmps', 'durationS'] as const).map((measure) => read(channel, measure));
  if (stalls.length < FEWEST || times.length < FEWEST) return true;
  return medianAbsoluteDeviation(stalls) >= LEAST_PART * medianAbsoluteDeviation(times);
}

function followsVolts({ coefficients: [, perVolt] }: Fit): boolean {
  return perVolt >= LEAST_PER_VOLT;
}

/** What the reference strokes read of a measure, on its scale. */
function read({ values }: Channel, measure: MeasureName): Float64Array {
  const own = values.map((stroke) => stroke[MEASURE_INDEX[measure]]);
  return Float64Array.from(own.filter((value) => value !== null));
}
