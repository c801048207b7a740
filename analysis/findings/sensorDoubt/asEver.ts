/** What moved by less than this part of what a current beside it did stayed as it was: halfway between the two. */
const AS_EVER_PART = 0.5;
/** Where a reading leaves more open than that, by so many standard deviations, it does not tell: a guess, no source. */
const SIGMAS = 1.5;

/** Whether a reading stayed as it was though what it is held against moved by so much; both in the same unit. */
export function isAsEver(moved: number, beside: number): boolean {
  return moved / beside < AS_EVER_PART;
}

/** Whether a reading of such a standard deviation is read well enough to tell that, in the same unit. */
export function isReadBeside(deviation: number, beside: number): boolean {
  return AS_EVER_PART * Math.abs(beside) > SIGMAS * deviation;
}
