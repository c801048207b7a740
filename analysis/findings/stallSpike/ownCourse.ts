import { mean } from 'simple-statistics';
import { hasOwnNormal } from '../../baseline/channel.ts';
import { channelOf } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';
import { otherWay } from '../../trace.ts';
import type { FindingContext } from '../finding.ts';

/** What lies beside a place is this many bins of 64 away; the place itself is three bins wide. */
const BESIDE_FROM = 4;
const BESIDE_TO = 8;
/** By how many bins the two directions may be shifted against each other. */
const WAYS_APART = [-2, -1, 0, 1, 2] as const;
/**
 * A peak this many times as high as the rise of the room's usual course there is more than that. A guess, no source.
 */
const TIMES_OWN = 2.2;
/**
 * A slope gives back, on the way down, more than this part of the peak on the way up, and more than this part of the
 * current. Guesses, no source.
 */
const GIVEN_BACK = 0.17;
const LEAST_GIVEN_BACK = 0.06;
/**
 * The same where all sides rise at one place: then it is enough if each side gives back this much. Worms and screws
 * give back little, because their flanks rub downhill too. All sides rise if each does by the third part. Guesses, no
 * source.
 */
const SHARED_GIVEN_BACK = 0.08;
const LEAST_SHARED_GIVEN_BACK = 0.03;
const LEAST_SHARED_RISE = 0.08;

/**
 * Whether a peak is how the room goes. Either its usual course has it, once that is known from its own strokes. Or the
 * way back is lighter there: what rises one way and falls the other is a slope, such as the ramp of a floor that comes
 * down flush, while a fastener is met both ways or felt on one of them only. `height`: over the running current, as a
 * part of it.
 */
export function isOwnCourse(
  context: FindingContext,
  side: string,
  position: number,
  height: number,
): boolean {
  const { state, direction } = context;
  const [there, back] = [direction, otherWay(direction)];
  const usual = channelOf(state, side, there);
  const isKnown = usual !== undefined && hasOwnNormal(usual);
  if (isKnown && height < TIMES_OWN * riseNear(usual.profile, position, 1, [0])) return true;
  const lighter = (of: string) =>
    riseNear(channelOf(state, of, back)?.profile ?? [], position, -1, WAYS_APART);
  if (lighter(side) > Math.max(LEAST_GIVEN_BACK, GIVEN_BACK * height)) return true;
  const least = Math.max(LEAST_SHARED_GIVEN_BACK, SHARED_GIVEN_BACK * height);
  return doAllRise(context, position) && state.room.sides.every((of) => lighter(of) > least);
}

/**
 * A place with a warning still draws more than it used to if it does so by more than this part of the current, and more
 * than this part of the peak that the warning tells of. Guesses, no source.
 */
const LEAST_LEFT = 0.05;
const LEFT_PART = 0.25;
/** And by more than this many deviations of the noise of a mean over three bins. A guess, no source. */
const LEFT_SIGMAS = 4;
const NEAR = [-1, 0, 1] as const;

/**
 * Whether a side still draws more at a place with a warning than its usual course has there: a fault that has become
 * too gentle for peaks is not gone. `height`: what the warning says, over the running current, as a part of it.
 */
export function stillRises(context: FindingContext, side: string, position: number, height: number): boolean {
  const { state, analysis, direction } = context;
  const usual = channelOf(state, side, direction);
  if (usual === undefined || !hasOwnNormal(usual)) return false;
  const { profile } = analysis.sides[side];
  const more = riseNear(profile, position, 1, NEAR) - riseNear(usual.profile, position, 1, NEAR);
  const noise = noiseBetween(profile, usual.profile) / Math.sqrt(NEAR.length);
  return more > Math.max(LEAST_LEFT, LEFT_PART * height, LEFT_SIGMAS * noise);
}

/**
 * The noise of a bin's current against its usual one, as a part of it, from the steps between neighbouring bins: a slow
 * course has none.
 */
function noiseBetween(profile: readonly (number | null)[], usual: readonly (number | null)[]): number {
  const ratios = profile.flatMap((amps, bin) => {
    const normal = usual[bin] ?? null;
    return amps === null || normal === null || normal <= 0 ? [] : [amps / normal];
  });
  return medianAbsoluteDeviation(ratios.slice(1).map((ratio, i) => ratio - ratios[i])) / Math.SQRT2;
}

/** Whether a room has several sides and each of them draws more about this place than beside it on this stroke. */
function doAllRise({ state, analysis }: FindingContext, position: number): boolean {
  const { sides } = state.room;
  const rises = (side: string) => riseNear(analysis.sides[side]?.profile ?? [], position, 1, WAYS_APART);
  return sides.length > 1 && sides.every((side) => rises(side) > LEAST_SHARED_RISE);
}

/**
 * How much more is drawn about a place (with `sign` -1: how much less) than beside it, as a part of what is drawn
 * beside it; the most over the `offsets`, in bins. 0 where it is not known.
 */
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
    return place.length === 0 ? [] : [sign * (mean(place) / level - 1)];
  });
  return Math.max(0, ...rises);
}
