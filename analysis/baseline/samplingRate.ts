import { MEASURE_INDEX, MEASURE_NAMES, type MeasureName } from '../measures.ts';
import { type Channel, forgetMeasure, shapeOf } from './channel.ts';

/** What is read off single samples depends on how many there are: a peak between two of them is not seen. */
export const READ_OFF_SAMPLES: ReadonlySet<MeasureName> = new Set(['inrushAmps', 'roughness']);
/** What is read off the stall, which may be brief: a few samples. */
export const READ_OFF_STALL: ReadonlySet<MeasureName> = new Set(['endStopAmps', 'turnsAs']);
/** Rates nearer to each other than this, natural logarithm, are one: clocks drift by less. A guess, no source. */
const SAME_RATE = 0.1;

/**
 * Whether a measure depends on the sampling rate: those of `READ_OFF_SAMPLES`; a motor's turns where no stall is read, since the
 * peak of its start counts them then; and, where stalls last for a few samples only (`briefStalls`), the stall and the turns that
 * it counts.
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
 * Takes a stroke's sampling rate for the reference's. Where it is another than before, what is read off single samples
 * is learnt anew, from the old one's shape; everything else stands.
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
