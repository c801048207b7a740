import { MEASURE_INDEX, type MeasureName } from '../measures.ts';
import { medianAbsoluteDeviation } from '../statistics/medianAbsoluteDeviation.ts';
import type { Channel, Fit } from './channel.ts';
import { PRIORS } from './priors.ts';

/** So many reference strokes tell. */
const FEWEST = 6;
/** What stands at V/R moves with the supply as the time does; a stall of so little of the time's spread does not. A guess, no source. */
const LEAST_PART = 0.2;
/**
 * A stall that scatters by less than this (standard deviation, natural logarithm) is held: what a fifth of a volt or four degrees
 * of the copper do to V/R, less than any battery and weather differ by from stroke to stroke. Where they did not, it tells nothing
 * that the season does not. A guess, no source.
 */
const HELD_SPREAD = 0.015;
/** A current that moves by less than half of V/R for each volt is nearer to one that a limit holds. */
const LEAST_PER_VOLT = PRIORS.endStopAmps.perVolt.mean / 2;

/**
 * Whether what a side draws at its end goes with the supply, as V/R does: by its own slope (`fit`), or where nobody recorded
 * the supply, as the time does that the room takes. One that a clutch, a valve or a controller holds at the same current on
 * every supply tells neither supply nor copper; of a slope a supply that hardly moves shows too little, and all the same a
 * stall that does not move at all is held. True while few strokes tell.
 */
export function stallFollowsSupply(
  channel: Channel | undefined,
  fit = channel?.fits[MEASURE_INDEX.endStopAmps] ?? null,
): boolean {
  if (channel === undefined) return true;
  const stalls = read(channel, 'endStopAmps');
  const spread = medianAbsoluteDeviation(stalls);
  if (stalls.length >= FEWEST && spread < HELD_SPREAD) return false;
  if (channel.conditions.some(([volts]) => volts !== null)) return fit === null || followsVolts(fit);
  const times = read(channel, 'durationS');
  if (stalls.length < FEWEST || times.length < FEWEST) return true;
  return spread >= LEAST_PART * medianAbsoluteDeviation(times);
}

function followsVolts({ coefficients: [, perVolt] }: Fit): boolean {
  return perVolt >= LEAST_PER_VOLT;
}

/** What the reference strokes read of a measure, on its scale. */
function read({ values }: Channel, measure: MeasureName): Float64Array {
  const own = values.map((stroke) => stroke[MEASURE_INDEX[measure]]);
  return Float64Array.from(own.filter((value) => value !== null));
}
