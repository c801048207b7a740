import type { Direction } from '../trace.ts';

/** A side as a sentence names it: of a room with one, the motor. */
export function sideWords(side: string, sides: readonly string[]): string {
  return sides.length > 1 ? `the ${side} side` : 'the motor';
}

/** What the room does in a direction. */
export function doingWords(direction: Direction): string {
  return direction === 'extend' ? 'going out' : 'coming in';
}
