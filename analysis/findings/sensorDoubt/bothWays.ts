/** So many of the latest strokes of each direction are looked at together: a guess, no source. */
export const LATEST_EACH_WAY = 2;
/** So many of them at least, both ways, must agree: a guess, no source. */
export const FEWEST_BOTH_WAYS = 3;
