import { greatest } from '../../statistics/greatest.ts';
import { median } from '../../statistics/median.ts';
import { quantile } from '../../statistics/quantile.ts';
import { medianAbove } from './drivenLevel.ts';
import { isLong, type RestSearch, SHORTEST_REST_S } from './rests.ts';

/**
 * A motor that is switched on draws V/R first, many times what it runs on; one that is held in place and told to move sets out
 * with little more than that. How far above the held level its current stays, amperes, and in times of what its movement adds: of
 * the one drive of this kind of which recordings are at hand 1.0 A and 1.9 times. Guesses, on the wide side.
 */
export const MOST_START_AMPS = 2;
const MOST_START_TIMES = 2.5;
/**
 * What holds a motor is so many times what its movement adds. Friction bears a part of the load while it stands, and works against
 * the drive while it moves: so holding takes anything from nothing, of a screw that locks itself, to nearly what moving takes. Of
 * the one, less than the first part, a sensor's zero is not told apart; of the other, more than the second, a motor that runs
 * lightly and then less so. Guesses, no source.
 */
const LEAST_HELD_TIMES = 0.15;
const MOST_HELD_TIMES = 2;
/** This part of the way up from the level that it is held at to the one it runs on begins what may be movement. */
export const MOVING_PART = 0.5;
/** What lies lower than this part of it is held: what is only just set in motion may run on little more. */
export const HELD_PART = 0.25;
/** The lowest of a record, as a quantile: single samples may lie anywhere. */
const LOWEST = 0.005;

/** A motor that its controller holds in place before it moves it, or after; amperes as recorded. */
export interface HeldLevel {
  readonly heldAmps: number;
  /** What it draws as a rule while it moves. */
  readonly movingAmps: number;
}

/**
 * What a motor draws that is held in place, as servos and stepping drives are: nothing moves there, and yet it is no zero of the
 * sensor. Such a level stands high beside what the movement adds, and no start stands out above that. Null where nothing lies low
 * for 0.15 s and four samples together, and where that may as well be a zero.
 */
export function heldLevel({ signal, smooth, threshold, rough }: RestSearch): HeldLevel | null {
  const highest = greatest(signal.peakAmps);
  // Of nearly every motor its start alone tells that it was not held.
  if (highest - threshold > MOST_START_AMPS) return null;
  const lowest = quantile(smooth, LOWEST);
  const movingAmps = medianAbove(smooth, lowest + MOVING_PART * (rough - lowest));
  const low = signal.amps.filter((_, i) => smooth[i] < lowest + HELD_PART * (movingAmps - lowest));
  if (!isLong(signal, low, SHORTEST_REST_S)) return null;
  const level = { heldAmps: median(low), movingAmps };
  return isHeld(level, highest) ? level : null;
}

/** Whether one level can be what holds a motor that draws the other one as it moves, and never more than `highest`, amperes. */
export function isHeld({ heldAmps, movingAmps }: HeldLevel, highest: number): boolean {
  const adds = movingAmps - heldAmps;
  if (heldAmps <= LEAST_HELD_TIMES * adds || heldAmps > MOST_HELD_TIMES * adds) return false;
  return highest - heldAmps <= Math.min(MOST_START_AMPS, MOST_START_TIMES * adds);
}
