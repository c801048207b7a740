/**
 * A reading stayed as it was if it moved by less than this part of another's move: half way between staying and moving
 * alike.
 */
const AS_EVER_PART = 0.5;
/** It tells so only if this many of its standard deviations are less than that. A guess, no source. */
const SIGMAS = 1.5;

/**
 * Whether a reading stayed as it was while what it is compared with moved; `moved` and `beside` are in the same unit.
 */
export function isAsEver(moved: number, beside: number): boolean {
  return moved / beside < AS_EVER_PART;
}

/** Whether a reading with this standard deviation is good enough to tell that, in the same unit. */
export function isReadBeside(deviation: number, beside: number): boolean {
  return AS_EVER_PART * Math.abs(beside) > SIGMAS * deviation;
}
