import { MEASURE_INDEX, MEASURE_NAMES, type MeasureName } from '../measures.ts';
import { type Channel, forgetMeasure, shapeOf } from './channel.ts';

/** The measures read off single samples, which depend on the sampling rate: a peak between two samples is not seen. */
export const READ_OFF_SAMPLES: ReadonlySet<MeasureName> = new Set(['inrushAmps', 'roughness']);
/** The measures read off the stall, which may last for a few samples only. */
export const READ_OFF_STALL: ReadonlySet<MeasureName> = new Set(['endStopAmps', 'turnsAs']);
/** Rates that differ by less than this, natural logarithm, are the same: clocks drift by less. A guess, no source. */
const SAME_RATE = 0.1;

/**
 * Whether a measure depends on the sampling rate: those of `READ_OFF_SAMPLES`; a motor's turns where no stall is read,
 * which are then worked out from the peak of its start; and, where stalls last for a few samples only (`briefStalls`),
 * the stall and the turns worked out from it.
 */
function isReadOffSamples({ fits }: Channel, measure: MeasureName, briefStalls: boolean): boolean {
  if (READ_OFF_SAMPLES.has(measure)) return true;
  return (
    READ_OFF_STALL.has(measure) &&
    (briefStalls || (measure === 'turnsAs' && fits[MEASURE_INDEX.endStopAmps] === null))
  );
}

/**
 * Whether a stroke's value of a measure can be compared with the reference, recorded at so many samples a second.
 * `briefStalls`: whether the slower of both records holds only a few samples of a stall.
 */
export function isSameRecording(
  channel: Channel,
  measure: MeasureName,
  rateHz: number | null,
  briefStalls: boolean,
): boolean {
  if (rateHz === null || channel.rateHz === null || !isReadOffSamples(channel, measure, briefStalls))
    return true;
  return Math.abs(Math.log(rateHz / channel.rateHz)) < SAME_RATE;
}

/**
 * Makes a stroke's sampling rate that of the reference. If it has changed, what is read off single samples is learnt
 * anew from the shape of the old fit; everything else stands.
 */
export function takeRate(channel: Channel, rateHz: number | null, briefStalls: boolean): void {
  if (rateHz === null) return;
  const isOther = MEASURE_NAMES.some((measure) => !isSameRecording(channel, measure, rateHz, briefStalls));
  channel.rateHz = rateHz;
  if (!isOther) return;
  channel.readsStallsAnew = briefStalls;
  // A stroke that taught only what was `lacking` after an earlier change has nothing else to keep.
  const kept = channel.values.map((values) => values[MEASURE_INDEX.runningAmps] !== null);
  channel.values = channel.values.filter((_, stroke) => kept[stroke]);
  channel.conditions = channel.conditions.filter((_, stroke) => kept[stroke]);
  MEASURE_NAMES.forEach((measure, index) => {
    if (!isReadOffSamples(channel, measure, briefStalls)) return;
    const fit = channel.fits[index];
    if (fit !== null) channel.shapes[index] = shapeOf(fit);
    forgetMeasure(channel, index);
  });
}
