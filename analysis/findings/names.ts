import type { Direction } from '../trace.ts';

/** How a side is called in a sentence. */
export function nameSide(side: string, sides: readonly string[]): string {
  return sides.length === 1 ? 'the motor' : `the ${side} side`;
}

/** How a direction is called in a sentence: going out, going in. */
export function wayOf(direction: Direction): string {
  return direction === 'extend' ? 'out' : 'in';
}
