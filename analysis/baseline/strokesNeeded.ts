/** Strokes of one direction after which a room's own normal is usable (contract, section 5: status). */
export const LEARNING_STROKES = 8;
/** Strokes that the reference is made of. From then on it is fixed, so that a slow fault is not learnt as normal. */
export const REFERENCE_STROKES = 16;
/** Up to this many, strokes under conditions that the reference has not seen may still teach it the slopes. */
export const MOST_REFERENCE_STROKES = 32;
/**
 * Strokes of one direction after a service until its new normal is usable. So few, because what goes wrong soon after
 * is not to be learnt as normal: slopes and spread are known from before, and the limits allow for how little is known
 * of the level.
 */
export const RELEARNING_STROKES = 2;
/** Strokes of one direction after a light service until the old normal is brought down to them. */
export const SETTLING_STROKES = 4;
