import { MEASURE_INDEX } from '../measures.ts';
import { quantile } from '../statistics/quantile.ts';

/**
 * A stroke that took less time than the longer ones by this, natural logarithm, is a part of one. A guess, no source.
 */
const PART_OF_STROKE = Math.log(0.7);

/**
 * For each stroke, whether it went all the way. One that was broken off, or taken up again, does not tell what is
 * normal for a whole stroke. `values`: by stroke, by index of MEASURES, on the measures' scale. All true where no
 * stroke has a time.
 */
export function wholeStrokes(values: readonly (readonly (number | null)[])[]): boolean[] {
  const times = values.map((stroke) => stroke[MEASURE_INDEX.durationS]);
  const known = times.filter((time) => time !== null);
  if (known.length === 0) return times.map(() => true);
  const long = quantile(known, 0.75);
  return times.map((time) => time === null || time > long + PART_OF_STROKE);
}
