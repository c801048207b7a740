import type { Squares } from '../statistics/moderatedVariance.ts';

/** What the neighbouring bins count of their degrees of freedom, the nearest first: a place's spread is much like theirs. */
const NEIGHBOURS_COUNT = [0.5, 0.25];

/** Standard deviation of one stroke at one place, and the degrees of freedom behind it. */
export interface PlaceSpread {
  readonly deviation: number;
  readonly degreesOfFreedom: number;
}

/**
 * Spread at each bin by its own squares within the spans, those of its neighbours at part of their worth, and what is known of it from
 * elsewhere. `within`: squares bin by bin, each with `degreesOfFreedom`; `known`: as many.
 */
export function placeSpreads(
  within: ArrayLike<number>,
  degreesOfFreedom: number,
  known: readonly Squares[],
): PlaceSpread[] {
  return known.map((elsewhere, b) => {
    let squares = within[b] + elsewhere.squares;
    let degrees = degreesOfFreedom + elsewhere.degreesOfFreedom;
    for (let away = 0; away < NEIGHBOURS_COUNT.length; away++) {
      for (const other of [b - away - 1, b + away + 1]) {
        if (other < 0 || other >= known.length) continue;
        squares += NEIGHBOURS_COUNT[away] * within[other];
        degrees += NEIGHBOURS_COUNT[away] * degreesOfFreedom;
      }
    }
    return { deviation: Math.sqrt(squares / degrees), degreesOfFreedom: degrees };
  });
}
