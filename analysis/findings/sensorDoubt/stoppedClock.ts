import type { StrokeEvent } from '../../history.ts';
import type { ClockMemory } from './clockMemory.ts';

/**
 * A room makes one stroke at a time. Two loggers may tell of the same one, side by side, and either may tell of it twice: so
 * many in a row at one and the same moment are told by a clock that stands, or by the time at which they were sent. A guess,
 * no source.
 */
const FEWEST_TOGETHER = 6;

/** Whether the clock seems to stand: takes the stroke into the memory, once for each. One whose date cannot be has no moment of its own. */
export function clockStands(
  memory: ClockMemory,
  { atMs, placedByArrival = false }: Pick<StrokeEvent, 'atMs' | 'placedByArrival'>,
): boolean {
  const isTogether = !placedByArrival && memory.beganAtMs === atMs;
  memory.beganTogether = isTogether ? memory.beganTogether + 1 : 1;
  memory.beganAtMs = placedByArrival ? null : atMs;
  return memory.beganTogether >= FEWEST_TOGETHER;
}
