import { quantileInPlace } from '../../statistics/quantile.ts';
import { ReusedArray } from '../../statistics/reusedArray.ts';
import { medianAbove } from './drivenLevel.ts';
import type { RestSearch } from './rests.ts';

/** What lies lowest and highest in a record, as quantiles: single samples may lie anywhere. */
const LOWEST = 0.02;
const HIGHEST = 0.9;
/** From the one to the other, this part of the way up begins what may be drive. */
const DRIVE_PART = 0.3;

const forRanks = new ReusedArray();

/** Between which levels of a record a rest is looked for. Amperes. */
export type RoughLevels = Pick<RestSearch, 'threshold' | 'rough'>;

/** The levels of a record's smoothed current, amperes, which holds no NaN: only to set thresholds by. */
export function roughLevels(values: Float64Array): RoughLevels {
  const ranked = forRanks.copyOf(values);
  const high = quantileInPlace(ranked, HIGHEST);
  const low = quantileInPlace(ranked, LOWEST);
  const rough = medianAbove(values, low + DRIVE_PART * (high - low));
  return { threshold: low + DRIVE_PART * (rough - low), rough };
}
