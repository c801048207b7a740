import type { RoomState } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { DIRECTIONS } from '../../trace.ts';
import { SCALE_STROKES } from './scaleMemory.ts';

/** By so much more than the start, natural logarithm, and by so much of its own change, the stop has moved. Guesses, no source. */
const LEAST_APART = 0.05;
const APART_PART = 0.5;
/** What the start leaves open of that: standard deviations of the median (1.25 of one, over the root of their number). */
const SIGMAS = 2;
const MEDIAN_SPREAD = 1.25;

/**
 * Whether what a side draws at its end, one way at least, lately rose while its start did not. Supply, copper and sensor move the current at
 * standstill wherever it is read; an end that moves alone is held by a clutch, or by what the room is pressed against, and
 * tells of the load.
 */
export function stopFollowsLoad({ scale }: RoomState, side: string): boolean {
  const memory = scale[side];
  if (memory === undefined || memory.startDeviation === null) return false;
  const { ends, startDeviation } = memory;
  return DIRECTIONS.some((way) => {
    const read = ends[way];
    if (read.length < SCALE_STROKES) return false;
    const apart = median(read.map(({ start, stop }) => stop - start));
    const spread = (MEDIAN_SPREAD * startDeviation) / Math.sqrt(read.length);
    return apart > Math.max(LEAST_APART, SIGMAS * spread, APART_PART * median(read.map(({ stop }) => stop)));
  });
}
