import { median } from '../statistics/median.ts';
import type { SampleRange } from './sampleRange.ts';
import type { SteadyCurrent } from './steadyCurrent.ts';

/** A motor that stands at its stop draws at least so many times what it drew on its way. */
const LEAST_STALL = 1.6;
/** So near to the switch-off, seconds: the steadied current, by which that is known, ends a little sooner or later. */
const BEFORE_S = 0.8;
const AFTER_S = 0.3;
/** And for so long: less is a spark. */
const SHORTEST_STALL_S = 0.1;
const FEWEST_SAMPLES = 2;
/** What is driven for less is a start, or a press at the stop. */
const SHORTEST_DRIVE_S = 2;

/** One side as it was recorded, NaN for missed samples, and steadied. Amperes. */
export interface RecordedSide {
  readonly amps: Float64Array;
  readonly steady: SteadyCurrent;
}

/** Whether the motor of any side stalled when it was switched off at the end of a stretch of drive. */
export function endsStalled(
  timesS: Float64Array,
  sides: readonly RecordedSide[],
  { from, to }: SampleRange,
): boolean {
  const endS = timesS[to - 1];
  if (endS - timesS[from] < SHORTEST_DRIVE_S) return false;
  let first = to - 1;
  while (first > from && endS - timesS[first - 1] <= BEFORE_S) first--;
  let end = to;
  while (end < timesS.length && timesS[end] - endS <= AFTER_S) end++;
  const stepS = (timesS[end - 1] - timesS[first]) / Math.max(1, end - 1 - first);
  return sides.some(({ amps, steady }) => {
    const running = Math.abs(median(steady.amps.subarray(from, to)));
    const isStalled = (value: number) => Math.abs(value - steady.offsetAmps) >= LEAST_STALL * running;
    const stalled = amps.subarray(first, end).filter(isStalled).length;
    return running > 0 && stalled >= FEWEST_SAMPLES && stalled * stepS >= SHORTEST_STALL_S;
  });
}
