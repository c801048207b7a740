import type { RoomState } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import type { FindingContext } from '../finding.ts';
import type { ScaleMemory } from './scaleMemory.ts';

/** Fewer strokes tell no pace. */
const FEWEST = 2;
/** A room takes its time as ever within this, natural logarithm: a guess, no source. */
const KEEPS_TIME = 0.08;

/** Whether the latest strokes took as long as expected: the motor turns on the supply that it did. */
export function keepsTime({ duration }: ScaleMemory): boolean {
  return duration.length >= FEWEST && Math.abs(median(duration)) < KEEPS_TIME;
}

/**
 * A sensor quickens nothing; a motor whose magnets lost some of their field draws more and turns faster. Nor does any supply quicken
 * a room by so much. Natural logarithm, a guess.
 */
const MUCH_FASTER = -0.15;

/** Whether the latest strokes took much less time than expected; where nobody recorded the supply, than the other sides did. */
export function runsFaster({ state, conditions }: FindingContext, side: string): boolean {
  const { duration } = state.scale[side];
  if (duration.length < FEWEST) return false;
  const own = median(duration);
  return (conditions[0] === null ? (longerThanOthers(state, side) ?? own) : own) < MUCH_FASTER;
}

/** Whether the latest strokes took so much less time that a motor which draws less was relieved: no sensor and no supply does that. */
export function runsRelieved({ duration }: ScaleMemory): boolean {
  return duration.length >= FEWEST && median(duration) < MUCH_FASTER;
}

/**
 * Nor does a sensor slow anything: a motor that takes longer at a higher current works harder. Natural logarithm, guesses. The
 * other side goes by the very same supply, so that less is asked of a comparison with it than with a recorded supply.
 */
const SLOWER = { thanOther: 0.06, byRecord: 0.08 };

/** Whether the latest strokes of a side took longer than expected, and than the other sides did. */
export function runsSlower({ state, conditions }: FindingContext, side: string): boolean {
  const { duration } = state.scale[side];
  if (duration.length < FEWEST) return false;
  const longer = longerThanOthers(state, side);
  if (longer === null) return conditions[0] !== null && median(duration) > SLOWER.byRecord;
  return longer > SLOWER.thanOther;
}

/** A side that draws less and takes so much less time than the other lost load to it: natural logarithm, a guess. */
const AHEAD = -0.035;

/** Whether the latest strokes of a side took less time than the other sides did. */
export function runsAhead({ state }: FindingContext, side: string): boolean {
  const longer = longerThanOthers(state, side);
  return longer !== null && longer < AHEAD;
}

/** By how much longer than the other sides a side took on the latest strokes, beside what it used to; null: not known. */
function longerThanOthers({ scale, room }: RoomState, side: string): number | null {
  const taken = (name: string) =>
    scale[name].duration.length < FEWEST ? null : median(scale[name].duration);
  const own = taken(side);
  const others = room.sides
    .filter((name) => name !== side)
    .map(taken)
    .filter((longer) => longer !== null);
  return own === null || others.length === 0 ? null : own - median(others);
}
