/**
 * A motor slows by the part of its stall current that it draws more: seldom more than a third, in any motor that is
 * not overloaded.
 */
const SLOWED_PART = 0.35;

/**
 * The part of a moved lag that the load does not explain, seconds. A side that works harder than before, compared with
 * the other, is slower for it, as on crooked ground. `moved`: the lag over its normal, seconds, positive where the last
 * side is later; `harder`: how much more the last side's current rose than the first's, natural logarithm.
 */
export function unexplainedLag(moved: number, harder: number, durationS: number): number {
  return lessExplained(moved, SLOWED_PART * durationS * harder);
}

/**
 * What is left of a moved lag if something explains `explained` of it, both in seconds. An explanation of the other
 * sign takes nothing off.
 */
export function lessExplained(moved: number, explained: number): number {
  return explained * moved > 0
    ? Math.sign(moved) * Math.max(0, Math.abs(moved) - Math.abs(explained))
    : moved;
}
