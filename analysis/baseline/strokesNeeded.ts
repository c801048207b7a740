/** Strokes of one direction after which a room's own normal is usable (contract, section 5: status). */
export const LEARNING_STROKES = 8;
/** Strokes that the reference is made of; from then on it stands, so that a slow fault is not learnt as normal. */
export const REFERENCE_STROKES = 16;
/** Beyond those, strokes under conditions that the reference has not seen may teach it the slopes. */
export const MOST_REFERENCE_STROKES = 32;
/**
 * Strokes of one direction after a service until its new normal is usable: the slopes and the spread are known, and how
 * little is known of the level is allowed for. What goes wrong soon after is not to be learnt as normal.
 */
export const RELEARNING_STROKES = 2;
/** Strokes of one direction after a light service until the old normal is brought down to them. */
export const SETTLING_STROKES = 4;
