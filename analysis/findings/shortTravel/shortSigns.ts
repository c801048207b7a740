import type { Residual } from '../../baseline/judge.ts';
import { LEARNING_STROKES } from '../../baseline/strokesNeeded.ts';
import { median } from '../../statistics/median.ts';
import type { FindingContext } from '../finding.ts';
import { mayBeThePlace } from '../stay.ts';
import { lacksItsBeginning, SHORT } from './lackedEnd.ts';
import { isWhole } from './movementParts.ts';
import { quickerByStart } from './quickerBySupply.ts';
import type { TravelMade } from './travelMade.ts';
import type { DirectionTravel } from './travelMemory.ts';

/** Strokes must be so much shorter than expected where neither supply nor the motor's turns are known, natural logarithm. */
const SHORT_BLIND = 0.13;
const SIGMAS = 3;
/** Strokes that end without their usual end stop need not be as much shorter, if they all are. */
export const SHORT_WITHOUT_STOP = 0.035;
const STOPPED_USUALLY = 0.7;
/** So many of the latest strokes tell together what none of them does. */
export const LATEST_STROKES = 4;
/** A sixth of the way is missing, natural logarithm, surely, and what is drawn there is no seal: guesses, no source. */
export const FAR_FROM_END = 0.18;
const SURELY_SIGMAS = 5;
const LEAST_STALL = -0.25;

/** By how much strokes must be shorter to count by themselves, natural logarithm. */
export function leastShort({ by }: TravelMade): number {
  return by === 'blind' ? SHORT_BLIND : SHORT;
}

/** Whether one stroke is shorter by more than chance makes it. */
export function isShortAlone(made: TravelMade, shortBy: number): boolean {
  return shortBy > Math.max(leastShort(made), SIGMAS * (made.judged.deviation + extrapolated(made.judged)));
}

/** Whether it is shorter by far more than that, and by a good part of the way. */
export function isSurelyShort({ judged }: TravelMade, shortBy: number): boolean {
  return shortBy > Math.max(FAR_FROM_END, SURELY_SIGMAS * (judged.deviation + extrapolated(judged)));
}

/** The latest strokes were all a little short, by as sure a measure as this one. */
export function isShortAgain({ latest }: DirectionTravel, made: TravelMade): boolean {
  const { judged, by } = made;
  const shorts = latest.filter((stroke) => by === 'blind' || stroke.by === by).map(({ short }) => short);
  if (shorts.length < LATEST_STROKES || shorts.some((short) => short <= SHORT_WITHOUT_STOP)) return false;
  return median(shorts) > Math.max(0.75 * leastShort(made), SIGMAS * spreadOfAll(judged, by));
}

/** Whether strokes of this direction come to their stop as a rule. */
export function stopsUsually({ stopRate }: DirectionTravel): boolean {
  return (stopRate ?? 0) >= STOPPED_USUALLY;
}

/** The latest strokes were all a little short, and none came to its stop, as they do as a rule. */
export function lacksItsStop(travel: DirectionTravel): boolean {
  const { latest } = travel;
  if (!stopsUsually(travel) || latest.length < LATEST_STROKES) return false;
  const usual = median(latest.map(({ short }) => short));
  return usual > SHORT_WITHOUT_STOP && latest.every(({ stopped }) => !stopped);
}

/** Strokes that end at one place take the same part of their time, by so much; and so many of them tell. Guesses, no source. */
const SAME_PLACE = { part: 0.08, strokes: 3 };

/**
 * Whether the latest stroke was let go far from its end, without coming to a stop, and not where those before
 * it were: what stops a room stops it at one place, who draws it in by a piece lets go anywhere.
 */
export function isLetGoAnywhere(travel: DirectionTravel): boolean {
  const own = travel.latest.at(-1);
  if (own === undefined || own.stopped || own.short <= FAR_FROM_END) return false;
  const alike = travel.latest.filter(
    ({ short, stopped }) => !stopped && Math.abs(Math.exp(-short) - Math.exp(-own.short)) < SAME_PLACE.part,
  );
  return alike.length < SAME_PLACE.strokes;
}

/**
 * Whether the motor came to a stand far from the end on a way that began at the other end, as the whole stroke before it
 * tells: something stands in the way, and one stroke is enough to say so. What a charger that nobody recorded quickens shows in
 * the start: a stall may be ended by something else than the motor's V / R.
 */
export function isBlocked(context: FindingContext, made: TravelMade): boolean {
  const { state, event, direction, residual } = context;
  const { travel } = state;
  const beganAtEnd =
    !travel.followsUnread &&
    travel.direction !== null &&
    travel.direction !== direction &&
    event.atMs - travel.atMs === state.stay.restedMs &&
    !travel.leftBehind &&
    isWhole(travel.part, Math.max(1, travel[travel.direction].took));
  const stalls = state.room.sides.every((side) => {
    const stop = residual(side, 'endStopAmps');
    return stop !== null && stop.rise > LEAST_STALL;
  });
  // A course that is all there, only squeezed, is a clock's doing, which the next strokes tell.
  const isCut = state.clock[direction].at(-1)?.whole === false;
  const isAtEnd = !lacksItsBeginning(travel, direction);
  const shortBy = made.shortBy - quickerByStart(context);
  return isSurelyShort(made, shortBy) && beganAtEnd && isAtEnd && stalls && isCut;
}

/**
 * One stay's supply, which nobody recorded, quickens all strokes there, and its heat makes the turns of all seem fewer: what
 * is known from one stay only may be that.
 */
export function mayBeTheStay({ state }: FindingContext, { by, judged }: TravelMade): boolean {
  const { quickRun } = state.travel;
  const isKnown = by === 'time' || (by === 'turns' && judged.knowsWeather);
  return !isKnown && quickRun > 1 && mayBeThePlace(state.stay, quickRun);
}

/**
 * How far the latest strokes together may lie off: only what differs from stroke to stroke evens out, and a supply that
 * nobody recorded differs from stay to stay.
 */
function spreadOfAll(judged: Residual, by: TravelMade['by']): number {
  const { deviation, noise } = judged;
  const shared = Math.sqrt(deviation ** 2 - noise ** 2 + noise ** 2 / LATEST_STROKES);
  return (by === 'blind' ? deviation : shared) + extrapolated(judged);
}

/** What goes beyond the reference's own standard error is extrapolation, as to a frost: it counts twice. */
function extrapolated({ uncertainty, noise }: Residual): number {
  return Math.max(0, uncertainty - noise / Math.sqrt(LEARNING_STROKES));
}
