import { designCusum } from '../../statistics/runLength.ts';

/**
 * The budget that the load's and the lag's charts are designed by: one false warning in 20 room-years of 60 strokes
 * is one in 1,200 strokes over all charts of a room together. A room of two sides runs six (a rise for each side, the
 * share both ways, the lag both ways). Each is given an average run length of 50,000 healthy strokes, one false
 * warning in 140 room-years over the six: sevenfold room for what the design does not know, that strokes remember
 * each other (one camp tilts both its strokes), that the spread is estimated from few strokes, and tails fatter than
 * the normal's.
 */
export const RUN_LENGTH_STROKES = 50_000;

/** Reference value in standard deviations of a stroke: best against a step of two (E. S. Page, 1954). */
export const K_SIGMAS = 1;

/** Decision interval in standard deviations, from the run length (D. Brook, D. A. Evans, 1972). */
export const H_SIGMAS = designCusum({ k: K_SIGMAS }, RUN_LENGTH_STROKES);

/** What the strokes share is no independent evidence: one standard deviation of it is never counted. */
export const SHARED_SIGMAS = 1;

/** One camp tilts both its strokes: a third stroke must agree, and no single one counts for more than half of h. */
export const LEAST_RUN = 3;
