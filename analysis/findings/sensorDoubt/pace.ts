import type { RoomState } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import type { FindingContext } from '../finding.ts';
import type { ScaleMemory } from './scaleMemory.ts';

/** Fewer strokes than this do not tell the pace. */
const FEWEST = 2;
/** A room takes its usual time if it is within this of it, natural logarithm: a guess, no source. */
const KEEPS_TIME = 0.08;

/** Whether the latest strokes took as long as expected: the motor has the supply that it had. */
export function keepsTime({ duration }: ScaleMemory): boolean {
  return duration.length >= FEWEST && Math.abs(median(duration)) < KEEPS_TIME;
}

/**
 * Much faster is below this, natural logarithm. Neither a sensor nor a supply makes a room so much faster; a motor
 * whose magnets lost some of their field draws more and does. A guess, no source.
 */
const MUCH_FASTER = -0.15;

/**
 * Whether the latest strokes took much less time than expected; without a recorded supply, than the other sides did.
 */
export function runsFaster({ state, conditions }: FindingContext, side: string): boolean {
  const { duration } = state.scale[side];
  if (duration.length < FEWEST) return false;
  const own = median(duration);
  return (conditions[0] === null ? (longerThanOthers(state, side) ?? own) : own) < MUCH_FASTER;
}

/**
 * Whether the latest strokes took so much less time that the motor must have been relieved: neither sensor nor supply
 * does that.
 */
export function runsRelieved({ duration }: ScaleMemory): boolean {
  return duration.length >= FEWEST && median(duration) < MUCH_FASTER;
}

/**
 * Slower is above this, natural logarithm: a motor that takes longer at a higher current works harder, which no sensor
 * makes it do. A comparison with the other side needs less, because both have the very same supply. Guesses, no source.
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

/**
 * A side that draws less and takes less time than the other by this, natural logarithm, lost load to it. A guess, no
 * source.
 */
const AHEAD = -0.035;

/** Whether the latest strokes of a side took less time than the other sides did. */
export function runsAhead({ state }: FindingContext, side: string): boolean {
  const longer = longerThanOthers(state, side);
  return longer !== null && longer < AHEAD;
}

/**
 * By how much longer than the other sides a side took on the latest strokes, against what is usual, natural logarithm;
 * null: not known.
 */
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
