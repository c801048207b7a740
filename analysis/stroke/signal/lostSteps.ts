/** Of the usual step: more is a sample that is not there; steps within this of it are regular, and so many of the others must be. */
const LONG_STEP = 1.5;
const REGULAR_WITHIN = 0.25;
const REGULAR_PART = 0.6;
/** A logger that samples less often while little happens takes one long step after another; what is lost is lost here and there. */
const MOST_IN_A_ROW = 0.6;
/** Longer than both, in seconds and in usual steps, is a silence by itself (`longestGapS`): a pause that was not recorded. */
const SILENCE_S = 1;
const SILENCE_STEPS = 10;

/**
 * How many samples are not there of a record that tells the time of each and leaves lost ones out: by its steps, seconds, of
 * which `usualS` is the median. 0 where the steps keep no beat that could have been missed.
 */
export function lostSteps(steps: Float64Array, usualS: number): number {
  let [lost, long, inARow, regular] = [0, 0, 0, 0];
  const silenceS = Math.max(SILENCE_S, SILENCE_STEPS * usualS);
  let wasLong = false;
  for (const step of steps) {
    const isLong = step > LONG_STEP * usualS;
    if (isLong) {
      long++;
      if (step < silenceS) lost += Math.round(step / usualS) - 1;
      if (wasLong) inARow++;
    } else if (Math.abs(step - usualS) < REGULAR_WITHIN * usualS) regular++;
    wasLong = isLong;
  }
  const keepsBeat = regular >= REGULAR_PART * (steps.length - long) && inARow <= MOST_IN_A_ROW * long;
  return keepsBeat ? lost : 0;
}
