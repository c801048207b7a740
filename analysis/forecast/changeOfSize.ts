import type { Sums } from './memoryTakenOut.ts';

/** A change of one size, summed over the level before it and over the spread. */
export interface Sized {
  readonly size: number;
  /** Natural logarithm, up to what is the same for all changes of the same strokes. */
  readonly evidence: number;
  /** The level before the change with its standard deviation, if the size is so. */
  readonly level: number;
  readonly levelDeviation: number;
}

/** Strokes scatter by so much at least, natural logarithm. A guess, no source. */
const LEAST_SCATTER = 0.003;
/** A size is summed over at so many places, within so many of its standard errors. */
const PLACES = 10;
const MOST_ERRORS = 3.5;

/** A change of this size, which stands for so much of all that it may have been, as a natural logarithm. */
export function ofSize(size: number, sums: Sums, logPart = 0): Sized {
  const { count, memory, ones, valueMean, shapeMean } = sums;
  const squares = squaresAt(size, sums);
  return {
    size,
    evidence: logPart + (Math.log((1 - memory * memory) / ones) - (count - 1) * Math.log(squares)) / 2,
    level: valueMean - size * shapeMean,
    levelDeviation: Math.sqrt(squares / (count - 1) / ones),
  };
}

/** The likeliest size from 0 up to `most`. */
export function likeliestSize({ products, shapes }: Sums, most: number): number {
  return Math.min(most, Math.max(0, products / shapes));
}

/** The sizes from 0 up to `most` that a change may have had, each with the evidence for its part of them. */
export function sizesOf(sums: Sums, most: number): Sized[] {
  const likeliest = sums.products / sums.shapes;
  const error = Math.sqrt(squaresAt(likeliest, sums) / (sums.count - 2) / sums.shapes);
  const from = Math.max(0, likeliest - MOST_ERRORS * error);
  const to = Math.min(most, likeliest + MOST_ERRORS * error);
  if (!(from < to)) return [];
  const part = (to - from) / PLACES;
  const logPart = Math.log(part / most);
  return Array.from({ length: PLACES }, (_, i) => ofSize(from + (i + 0.5) * part, sums, logPart));
}

/** The squares that a change of this size leaves. */
function squaresAt(size: number, { count, values, shapes, products }: Sums): number {
  return Math.max(0, values - 2 * size * products + size * size * shapes) + count * LEAST_SCATTER ** 2;
}
