import type { StrokeEvent } from '../../history.ts';
import type { ClockMemory } from './clockMemory.ts';

/**
 * A room makes one stroke at a time. Two loggers may record the same one side by side, and either may send it twice;
 * but this many in a row with the very same start come from a clock that stands, or are stamped when they were sent. A
 * guess, no source.
 */
const FEWEST_TOGETHER = 6;

/**
 * Takes a stroke into the memory (once for each) and answers whether the clock seems to stand. A stroke with an
 * impossible date has no start to compare.
 */
export function clockStands(
  memory: ClockMemory,
  { atMs, placedByArrival = false }: Pick<StrokeEvent, 'atMs' | 'placedByArrival'>,
): boolean {
  const isTogether = !placedByArrival && memory.beganAtMs === atMs;
  memory.beganTogether = isTogether ? memory.beganTogether + 1 : 1;
  memory.beganAtMs = placedByArrival ? null : atMs;
  return memory.beganTogether >= FEWEST_TOGETHER;
}
