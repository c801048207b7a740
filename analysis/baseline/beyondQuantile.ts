import { studentTUpperQuantile } from '../statistics/studentT.ts';

/** About one healthy stroke in 400 lies outside the single-stroke limits, above and below together. */
export const BEYOND_PROBABILITY = 1 / 400;

/**
 * Real strokes have fatter tails than the normal distribution: on the public test rig, the only recorded ones at hand,
 * one healthy stroke in 25 runs four to thirteen per cent harder than the rest. Student's t with this many degrees of
 * freedom stands for them, however many strokes the spread is known from (K. L. Lange, R. J. A. Little, J. M. G.
 * Taylor, 1989, Robust statistical modeling using the t distribution).
 */
const MOST_DEGREES = 8;

/**
 * How many standard deviations a stroke may lie off in either direction, as long as its room's own strokes do not tell:
 * Student's t, with degrees of freedom for the strokes that the spread was estimated from (W. S. Gosset, 1908), and no
 * more than strokes' own tails have.
 */
export function beyondQuantile(degreesOfFreedom = MOST_DEGREES): number {
  return studentTUpperQuantile(BEYOND_PROBABILITY / 2, Math.min(MOST_DEGREES, degreesOfFreedom));
}
