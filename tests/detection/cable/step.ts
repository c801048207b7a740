/** Seconds between two steps of a stroke: the fastest logger's own. */
export const STEP_S = 0.005;
