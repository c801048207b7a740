import { goesByOtherSides, MEASURE_NAMES, type MeasureName } from '../measures.ts';
import type { Channel } from './channel.ts';
import { READ_OFF_SAMPLES, READ_OFF_STALL } from './samplingRate.ts';
import { LEARNING_STROKES } from './strokesNeeded.ts';

/**
 * The values of a stroke that may still teach a complete reference, because those measures are learnt anew: after a
 * change of the sampling rate (`takeRate`), or after work on another side (`compareAnew`). Null: none. By index of
 * MEASURES, as `values` are.
 *
 * `isOdd`: whether the stroke lies outside its normal. Such a stroke teaches only the measures that go by the other
 * sides: work on one side moves load to or from the other, whose current has then changed.
 */
export function lacking(
  channel: Channel,
  values: readonly (number | null)[],
  isOdd: boolean,
): (number | null)[] | null {
  let lacks = false;
  const taught = MEASURE_NAMES.map((measure, index) => {
    if (!isLearntAnew(channel, measure, isOdd)) return null;
    const known = channel.values.reduce((count, stroke) => count + (stroke[index] === null ? 0 : 1), 0);
    if (known >= LEARNING_STROKES || values[index] === null) return null;
    lacks = true;
    return values[index];
  });
  return lacks ? taught : null;
}

function isLearntAnew(channel: Channel, measure: MeasureName, isOdd: boolean): boolean {
  if (goesByOtherSides(measure) && channel.comparesAnew) return true;
  if (isOdd) return false;
  return READ_OFF_SAMPLES.has(measure) || (channel.readsStallsAnew && READ_OFF_STALL.has(measure));
}
