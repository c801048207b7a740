import { MOVING_PART } from '../rest/heldLevel.ts';
import type { SideSignal } from '../signal/sideSignal.ts';

/** What lies further apart than this is not one movement, and what lasts for less is none: it settles, or shakes. Seconds. */
const LONGEST_BREAK_S = 0.25;
const SHORTEST_MOVEMENT_S = 1;
/**
 * A motor that is told to set out slowly, and to arrive so, draws little for a while, but soon more than what holds it: one whose
 * speed is a sine comes a quarter of the way up in a twelfth of its time. What lies lower for no longer than this, in seconds and as a
 * part of the record, is left with the movement. Guesses, no source.
 */
const QUARTER = 0.25;
const SLOW_S = 1;
const SLOW_PART = 0.12;

/**
 * The first and the last sample of what a motor moves that is held in place before and after: from where its current first lies
 * half-way up to what it draws as it moves, to where it last does; from the edge of the record where that is near. What it draws
 * for less than a second apart from all else is its controller's settling. Null where nothing comes up to there for longer.
 * `smooth`: amperes, one value a sample of the signal.
 */
export function heldMovement(
  { timesS, stepS }: Pick<SideSignal, 'timesS' | 'stepS'>,
  smooth: Float64Array,
  { heldAmps, movingAmps }: { readonly heldAmps: number; readonly movingAmps: number },
): { readonly first: number; readonly last: number } | null {
  const moving = heldAmps + MOVING_PART * (movingAmps - heldAmps);
  const end = smooth.length - 1;
  let [first, last] = [-1, -1];
  for (let from = 0; from <= end; from++) {
    if (smooth[from] <= moving) continue;
    let to = from;
    for (let i = from + 1; i <= end && timesS[i] - timesS[to] <= LONGEST_BREAK_S + stepS; i++)
      if (smooth[i] > moving) to = i;
    if (timesS[to] - timesS[from] >= SHORTEST_MOVEMENT_S) {
      if (first < 0) first = from;
      last = to;
    }
    from = to;
  }
  if (first < 0) return null;
  const low = heldAmps + QUARTER * (movingAmps - heldAmps);
  const slowS = Math.max(SLOW_S, SLOW_PART * (timesS[end] - timesS[0]));
  const isHeld = (edge: Float64Array) => edge.filter((amps) => amps < low).length * stepS > slowS;
  return {
    first: isHeld(smooth.subarray(0, first)) ? first : 0,
    last: isHeld(smooth.subarray(last + 1)) ? last : end,
  };
}
