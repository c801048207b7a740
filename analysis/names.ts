import type { Direction } from './trace.ts';

/** How a side is called in a sentence. */
export function nameSide(side: string, sides: readonly string[]): string {
  return sides.length === 1 ? 'the motor' : `the ${side} side`;
}

/** How all sides of a room that has several are called together. */
export function nameAll(sides: readonly string[]): string {
  return sides.length > 2 ? 'all sides' : 'both sides';
}

/** How a direction is called in a sentence: going out, going in. */
export function wayOf(direction: Direction): string {
  return direction === 'extend' ? 'out' : 'in';
}
