/** A reading that moved by less than this part of what a current beside it did stayed as it was: half way between staying and moving alike. */
const AS_EVER_PART = 0.5;
/** A reading tells that only where so many of its standard deviations are less than that. A guess, no source. */
const SIGMAS = 1.5;

/** Whether a reading stayed as it was though what it is held against moved by so much; both in the same unit. */
export function isAsEver(moved: number, beside: number): boolean {
  return moved / beside < AS_EVER_PART;
}

/** Whether a reading of such a standard deviation is read well enough to tell that, in the same unit. */
export function isReadBeside(deviation: number, beside: number): boolean {
  return AS_EVER_PART * Math.abs(beside) > SIGMAS * deviation;
}
