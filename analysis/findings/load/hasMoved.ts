/** A side counts as relieved if it fell by this part of the other's rise. */
const RELIEVED = 0.35;

/**
 * A warning that the load has grown gives way to one that it has moved once the other side fell by this part. A guess,
 * no source.
 */
const PLAINLY_RELIEVED = 0.6;

/**
 * Whether one side fell while another rose, so that the load moved rather than grew. `rises`: by side, natural
 * logarithm.
 */
export function hasMoved(rises: readonly number[]): boolean {
  return isRelieved(rises, RELIEVED);
}

/**
 * Whether it plainly did so. That is asked for where a warning says that one side draws more: a slow move shows on one
 * side first.
 */
export function hasPlainlyMoved(rises: readonly number[]): boolean {
  return isRelieved(rises, PLAINLY_RELIEVED);
}

function isRelieved(rises: readonly number[], part: number): boolean {
  if (rises.length < 2) return false;
  const most = Math.max(...rises);
  const least = Math.min(...rises);
  return least < 0 && least < -part * Math.max(0, most);
}
