import { greatest } from '../../statistics/greatest.ts';
import { median } from '../../statistics/median.ts';
import { medianAbove } from './drivenLevel.ts';
import { isLong, type RestSearch, SHORTEST_REST_S } from './rests.ts';

/**
 * A motor that is switched on draws V/R first, many times what it runs on; one that is held in place and told to move sets out
 * with little more than that. How far above the held level its current stays, amperes, and in times of what its movement adds: of
 * the one drive of this kind of which recordings are at hand 1.0 A and 1.9 times. Guesses, on the wide side.
 */
const MOST_START_AMPS = 2;
const MOST_START_TIMES = 2.5;
/** What holds a motor is so many times what its movement adds: less is a sensor's zero, more moves nothing. Guesses, no source. */
const LEAST_HELD_TIMES = 0.15;
const MOST_HELD_TIMES = 2;
/** This part of the way up from the level that it is held at to the one it runs on begins what may be movement. */
export const MOVING_PART = 0.5;
/** Where the held level is not known yet, this part of the way up from what a rest stays below does. */
const FIRST_PART = 0.3;

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
  const below = (level: number) => {
    const low = signal.amps.filter((_, i) => smooth[i] < level);
    return isLong(signal, low, SHORTEST_REST_S) ? median(low) : null;
  };
  const first = below(threshold + FIRST_PART * (rough - threshold));
  if (first === null) return null;
  const moving = first + MOVING_PART * (rough - first);
  const heldAmps = below(moving);
  if (heldAmps === null) return null;
  const movingAmps = medianAbove(smooth, moving);
  const adds = movingAmps - heldAmps;
  if (heldAmps <= LEAST_HELD_TIMES * adds || heldAmps > MOST_HELD_TIMES * adds) return null;
  const starts = highest - heldAmps > Math.min(MOST_START_AMPS, MOST_START_TIMES * adds);
  return starts ? null : { heldAmps, movingAmps };
}
