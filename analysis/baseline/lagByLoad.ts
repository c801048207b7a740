/**
 * A motor slows by the part of its stall current that it draws more: seldom more than a third, in any motor that is
 * not overloaded.
 */
const SLOWED_PART = 0.35;

/**
 * What the load does not explain of a lag that moved, seconds: where one side works harder than it did, or the other
 * less, as on ground that stands crooked, it is slower for it. `moved`: the lag over its normal, seconds, positive where
 * the last side is later; `harder`: how much more the last side's current rose than the first's, natural logarithm.
 */
export function unexplainedLag(moved: number, harder: number, durationS: number): number {
  return lessExplained(moved, SLOWED_PART * durationS * harder);
}

/** What is left of a lag that moved once something explains as much of it as `explained`, seconds, the same way. */
export function lessExplained(moved: number, explained: number): number {
  return explained * moved > 0
    ? Math.sign(moved) * Math.max(0, Math.abs(moved) - Math.abs(explained))
    : moved;
}
