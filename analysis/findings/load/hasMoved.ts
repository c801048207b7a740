/** A side counts as relieved when it fell by this part of what the other rose by. */
const RELIEVED = 0.35;

/** What was said to have grown is said to have moved once the other fell by this part of it. A guess, no source. */
const PLAINLY_RELIEVED = 0.6;

/** Whether one of these sides fell while another rose, so that the load moved rather than grew. */
export function hasMoved(rises: readonly number[]): boolean {
  return isRelieved(rises, RELIEVED);
}

/** Whether it did so plainly, as is asked for where one side was said to draw more: a slow move shows on one side first. */
export function hasPlainlyMoved(rises: readonly number[]): boolean {
  return isRelieved(rises, PLAINLY_RELIEVED);
}

function isRelieved(rises: readonly number[], part: number): boolean {
  if (rises.length < 2) return false;
  const most = Math.max(...rises);
  const least = Math.min(...rises);
  return least < 0 && least < -part * Math.max(0, most);
}
