/** How many of the latest strokes of each direction are looked at together: a guess, no source. */
export const LATEST_EACH_WAY = 2;
/** How many of them, of both directions together, must at least agree: a guess, no source. */
export const FEWEST_BOTH_WAYS = 3;
