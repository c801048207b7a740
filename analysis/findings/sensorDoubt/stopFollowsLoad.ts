import type { RoomState } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { DIRECTIONS } from '../../trace.ts';
import { SCALE_STROKES } from './scaleMemory.ts';

/**
 * The stop moved more than the start by at least this, natural logarithm, and by this part of its own move. Guesses, no
 * source.
 */
const LEAST_APART = 0.05;
const APART_PART = 0.5;
/**
 * And by this many standard deviations of the median start, which is 1.25 of a single one's over the root of their
 * number.
 */
const SIGMAS = 2;
const MEDIAN_SPREAD = 1.25;

/**
 * Whether what a side draws at its stop lately rose, in one direction at least, while its start did not. Supply, copper
 * and sensor move the current at standstill wherever it is read. A stop that moves alone is held by a clutch, or by
 * what the room is pressed against, and follows the load.
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
