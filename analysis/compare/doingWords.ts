import type { Direction } from '../trace.ts';

/** What the room does in a direction, as a comparison says it. */
export function doingWords(direction: Direction): string {
  return direction === 'extend' ? 'going out' : 'coming in';
}
