/** A side counts as relieved when it fell by this part of what the other rose by. */
const RELIEVED = 0.35;

/** Whether one of these sides fell while another rose, so that the load moved rather than grew. */
export function hasMoved(rises: readonly number[]): boolean {
  if (rises.length < 2) return false;
  const most = Math.max(...rises);
  const least = Math.min(...rises);
  return least < 0 && least < -RELIEVED * Math.max(0, most);
}
