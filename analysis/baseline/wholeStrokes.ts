import { MEASURE_INDEX } from '../measures.ts';
import { quantile } from '../statistics/quantile.ts';

/** A stroke that took so much less of its time than the longer ones is a part of one, natural logarithm. */
const PART_OF_STROKE = Math.log(0.7);

/**
 * Which of some strokes were not broken off or taken up again: those know no whole stroke's normal. `values`: by stroke, by
 * index of MEASURES, on the measures' scale.
 */
export function wholeStrokes(values: readonly (readonly (number | null)[])[]): boolean[] {
  const times = values.map((stroke) => stroke[MEASURE_INDEX.durationS]);
  const known = times.filter((time) => time !== null);
  if (known.length === 0) return times.map(() => true);
  const long = quantile(known, 0.75);
  return times.map((time) => time === null || time > long + PART_OF_STROKE);
}
