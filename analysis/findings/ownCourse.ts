import { isBorrowing, isReady } from '../baseline/channel.ts';
import { channelOf } from '../room/state.ts';
import { median } from '../statistics/median.ts';
import { otherWay } from '../trace.ts';
import type { FindingContext } from './finding.ts';

/** What lies beside a place is so many bins of 64 away; the place itself is three. */
const BESIDE_FROM = 4;
const BESIDE_TO = 8;
/** The two ways lie over each other to within so many. */
const WAYS_APART = [-2, -1, 0, 1, 2] as const;
/** A peak so many times as high as what the room's own course has there is more than it. A guess, no source. */
const TIMES_OWN = 2.2;
/** What goes down a slope on the way back gives back so much of what it takes to climb it, and so much at least. Guesses, no source. */
const GIVEN_BACK = 0.17;
const LEAST_GIVEN_BACK = 0.06;

/**
 * Whether a peak is how the room goes: its usual course has it, once that is known of its own strokes; or the way back is as much lighter there,
 * for what rises on one way and falls on the other is a slope, such as the ramp of a floor that comes down flush. A fastener
 * is met on both ways, or is not felt on one of them. `height`: over the running current, as a part of it.
 */
export function isOwnCourse(
  { state, direction }: FindingContext,
  side: string,
  position: number,
  height: number,
): boolean {
  const [there, back] = [direction, otherWay(direction)];
  const usual = channelOf(state, side, there);
  const isKnown = usual !== undefined && isReady(usual) && !isBorrowing(usual);
  if (isKnown && height < TIMES_OWN * riseNear(usual.profile, position, 1, [0])) return true;
  const lighter = riseNear(channelOf(state, side, back)?.profile ?? [], position, -1, WAYS_APART);
  return lighter > Math.max(LEAST_GIVEN_BACK, GIVEN_BACK * height);
}

/** How much more is drawn about a place (`sign` -1: how much less) than beside it, as a part of that; 0 where it is not known. */
function riseNear(
  profile: readonly (number | null)[],
  position: number,
  sign: 1 | -1,
  offsets: readonly number[],
): number {
  const middle = Math.min(profile.length - 1, Math.floor(position * profile.length));
  const known = (from: number, to: number) =>
    profile.slice(Math.max(0, from), Math.max(0, to + 1)).filter((amps) => amps !== null);
  const beside = [
    ...known(middle - BESIDE_TO, middle - BESIDE_FROM),
    ...known(middle + BESIDE_FROM, middle + BESIDE_TO),
  ];
  const level = beside.length === 0 ? 0 : median(beside);
  if (!(level > 0)) return 0;
  const rises = offsets.flatMap((offset) => {
    const place = known(middle + offset - 1, middle + offset + 1);
    const mean = place.reduce((sum, amps) => sum + amps, 0) / place.length;
    return place.length === 0 ? [] : [sign * (mean / level - 1)];
  });
  return Math.max(0, ...rises);
}
