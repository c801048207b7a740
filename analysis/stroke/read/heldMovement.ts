import { MOVING_PART } from '../rest/heldLevel.ts';
import type { SideSignal } from '../signal/sideSignal.ts';

/** A start falls back below half-way for no longer than this before the movement goes on, seconds. A guess, no source. */
const LONGEST_DIP_S = 0.25;
/** What falls back there for longer than this has come to its end: then the drive rings, and no movement follows. A guess, no source. */
const LONGEST_DROP_S = 0.12;
/** What lasts for less is no movement: the drive settles, or shakes. Seconds; a guess, no source. */
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
 * for less than a second apart from all else, and once it has fallen, is its controller's settling. Null where nothing comes up to
 * there for longer.
 * `smooth`: amperes, one value a sample of the signal.
 */
export function heldMovement(
  signal: Pick<SideSignal, 'timesS' | 'stepS'>,
  smooth: Float64Array,
  { heldAmps, movingAmps }: { readonly heldAmps: number; readonly movingAmps: number },
): { readonly first: number; readonly last: number } | null {
  const above = heldAmps + MOVING_PART * (movingAmps - heldAmps);
  const movements = movementsIn(signal, smooth, above, LONGEST_DIP_S);
  if (movements.length === 0) return null;
  const last = (movementsIn(signal, smooth, above, LONGEST_DROP_S).at(-1) ?? movements[movements.length - 1])
    .to;
  const first = movements[0].from;
  const { timesS, stepS } = signal;
  const end = smooth.length - 1;
  const low = heldAmps + QUARTER * (movingAmps - heldAmps);
  const slowS = Math.max(SLOW_S, SLOW_PART * (timesS[end] - timesS[0]));
  const isHeld = (edge: Float64Array) => edge.filter((amps) => amps < low).length * stepS > slowS;
  return {
    first: isHeld(smooth.subarray(0, first)) ? first : 0,
    last: isHeld(smooth.subarray(last + 1)) ? last : end,
  };
}

/** Stretches that lie above a level for a second and more, and fall below it for no longer than `breakS` within. */
function movementsIn(
  { timesS, stepS }: Pick<SideSignal, 'timesS' | 'stepS'>,
  smooth: Float64Array,
  above: number,
  breakS: number,
): { from: number; to: number }[] {
  const movements: { from: number; to: number }[] = [];
  for (let from = 0; from < smooth.length; from++) {
    if (smooth[from] <= above) continue;
    let to = from;
    for (let i = from + 1; i < smooth.length && timesS[i] - timesS[to] <= breakS + stepS; i++)
      if (smooth[i] > above) to = i;
    if (timesS[to] - timesS[from] >= SHORTEST_MOVEMENT_S) movements.push({ from, to });
    from = to;
  }
  return movements;
}
