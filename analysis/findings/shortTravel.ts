import type { Residual } from '../baseline/judge.ts';
import { LEARNING_STROKES } from '../baseline/strokesNeeded.ts';
import { median } from '../statistics/median.ts';
import { type Direction, otherWay } from '../trace.ts';
import type { Warning } from '../warning.ts';
import { type FindingAnswer, type FindingContext, NOTHING, openOf } from './finding.ts';
import { lackedEnd, lacksItsBeginning, lacksOwnEnd, noteMissingEnd } from './lackedEnd.ts';
import { isWhole, madeTogether, takeBack } from './movementParts.ts';
import { flag, isLasting, isOver } from './recent.ts';
import { mayBeThePlace } from './stay.ts';
import { movesAgain, wayOf } from './stoodStill.ts';
import { type TravelMade, travelMade } from './travelMade.ts';
import { type DirectionTravel, SAME_SUPPLY_HOURS, type TravelMemory } from './travelMemory.ts';
import { isByWeakMagnets } from './unseen.ts';
import { squeezedOverCut, WHOLE_FITS_BETTER } from './wholeCourse.ts';

/** Strokes this much shorter than expected count as short, and where neither supply nor the motor's turns are known. */
const SHORT = 0.06;
const SHORT_BLIND = 0.13;
const SIGMAS = 3;
/** Once said it goes on while strokes are shorter by this part of that. */
const STILL_PART = 0.5;
/** Strokes that end without their usual end stop need not be as much shorter, if they all are. */
const STOPPED_USUALLY = 0.7;
const SHORT_WITHOUT_STOP = 0.035;
const WITHOUT_STOP_STROKES = 4;
/** A way back that is short by no more than this beyond the way out is explained by it. */
const EXPLAINED = 0.06;
const EXPLAINED_BY_LITTLE = 0.03;
/** A sixth of the way is missing, natural logarithm, surely, and what is drawn there is no seal: guesses, no source. */
const FAR_FROM_END = 0.18;
const SURELY_SIGMAS = 5;
const LEAST_STALL = -0.25;
const LEAST_STROKES = 3;
const CLEAR_STROKES = 3;
/** A charger that lifts its battery from 12.2 V to 14.4 V quickens a room by so much, natural logarithm. */
const MOST_STRONGER = 0.17;
const DRAWN_SIGMAS = 2;
/** The courses of so many quick strokes in a row tell whether they were whole. */
const COURSES = 4;
/** The usual rate of end stops is a moving mean over about so many strokes. */
const RATE_STROKES = 12;

/**
 * Strokes of one direction end before the room's usual travel: they take less time than supply and temperature
 * account for, though the motor ran as ever, and often without coming to the stop. The way back from a short stroke
 * is short too and says nothing; nor do the parts of a movement that was broken off and taken up again.
 */
export function shortTravel(context: FindingContext): FindingAnswer {
  const { state, analysis, direction } = context;
  const stopped = Object.values(analysis.sides).some((side) => side.endStopAmps !== null);
  const travel = state.travel[direction];
  state.travel.mayBeCut = false;
  const made = travelMade(context);
  if (made === null) {
    learnRate(travel, stopped);
    if (context.doubtful.size > 0) forgetOne(context);
    return NOTHING;
  }
  const { part, judged, by } = made;
  const lacking = lacksOwnEnd(context, made);
  const byTime = isFasterOnly(context, made, stopped) ? 0 : made.shortBy;
  const shortBy = Math.max(byTime, lacking ?? 0);
  noteMissingEnd(context, shortBy);
  const least = by === 'blind' ? SHORT_BLIND : SHORT;
  const { travel: before } = state;
  const back = before.direction !== null && before.direction !== direction;
  const together = madeTogether(context, part);
  if (together !== null) {
    takeUp(context, together, stopped);
    return NOTHING;
  }
  const excused = before.shortBy + (before.wasShort ? EXPLAINED : EXPLAINED_BY_LITTLE);
  if (back && stopped && analysis.supplyVolts === null)
    compareOtherWay(state.travel, direction, context.event.atMs, part);
  // The one of the two that lacks its usual stop is the one that ends early; that happens once to the other as well.
  const isOnce = before.shortBy > 0 && travel.latest.at(-1)?.stopped !== false;
  const lacksOwn = !stopped && !isOnce && (travel.stopRate ?? 0) >= STOPPED_USUALLY;
  const open = openFor(context);
  // What keeps up a warning of the other end is short for that end's sake, and explained by nothing before it.
  const keepsUpOther = travel.saidOf !== null && travel.saidOf !== direction;
  const explained =
    !keepsUpOther &&
    ((back && !lacksOwn && before.shortBy > 0 && shortBy <= excused) ||
      (!lacksOwn && shortBy <= saidOfTheOther(context) + EXPLAINED));
  travel.latest.push({ short: explained ? 0 : shortBy, stopped, by });
  if (travel.latest.length > WITHOUT_STOP_STROKES) travel.latest.shift();
  const missesStop = lacksItsStop(travel);
  before.quickRun = shortBy > SHORT_WITHOUT_STOP ? before.quickRun + 1 : 0;
  const alone = shortBy > Math.max(least, SIGMAS * (judged.deviation + extrapolated(judged)));
  const again = shortBy > 0 && isShortAgain(travel, least, made);
  const blocked = alone && isBlocked(context, made);
  const short =
    !explained &&
    (missesStop || blocked || lacking !== null || ((alone || again) && !mayBeTheStay(context, made)));
  before.mayBeCut = short || (explained && before.wasShort);
  before.shortBy = !explained && shortBy > SHORT_WITHOUT_STOP ? shortBy : 0;
  before.wasShort = short;
  if (!short && !explained) travel.took = part;
  Object.assign(before, { direction, atMs: context.event.atMs, part, leftBehind: leavesBehind(context) });
  const goesOn = open !== undefined && !explained && shortBy > STILL_PART * least;
  const flags = flag(state.recent, `short-travel ${direction}`, short || goesOn);
  if (open === undefined && !short) learnRate(travel, stopped);
  if (open !== undefined && isOver(flags, CLEAR_STROKES))
    return { present: [], gone: letGo(before, direction, open) };
  const moves = short ? null : movesAgain(open, direction);
  if (moves !== null) return { present: [moves], gone: [] };
  const opens = shortBy > SHORT_WITHOUT_STOP;
  if (
    !short ||
    (open === undefined && !opens) ||
    (open === undefined &&
      !missesStop &&
      !again &&
      !blocked &&
      lacking === null &&
      !isLasting(flags, LEAST_STROKES, 4))
  )
    return NOTHING;
  // One stroke that was broken off besides says nothing of how early all of them end.
  const shorts = travel.latest.flatMap((stroke) => (stroke.short > 0 ? [stroke.short] : []));
  const usual = blocked && !isLasting(flags, LEAST_STROKES, 4) ? shortBy : median(shorts);
  const percent = Math.round(-100 * Math.expm1(-usual));
  const at = open?.direction ?? lackedEnd(before) ?? direction;
  travel.saidOf = at;
  const stalls = at === direction ? stopped : before[at].latest.at(-1)?.stopped === true;
  return {
    present: [
      {
        kind: 'short-travel',
        side: null,
        direction: at,
        position: null,
        pattern: null,
        severity: percent >= 15 || stalls ? 'service' : 'watch',
        headline: `Going ${wayOf(at)}, the room ends its travel about ${percent} % early${stalls ? ' and the motor stalls there' : ''}.`,
        evidence: {
          shortPercent: percent,
          stalled: stalls,
          shortStrokes: flags.filter(Boolean).length,
        },
      },
    ],
    gone: [],
  };
}

/** The warning that strokes of this direction keep up, if there is one. */
function openFor({ state, direction }: FindingContext): Warning | undefined {
  const { travel } = state;
  const own = travel[direction];
  const open = (at: Direction) => openOf(state, 'short-travel').find((warning) => warning.direction === at);
  if (own.saidOf !== null && open(own.saidOf) === undefined) own.saidOf = null;
  const isOfOther = own.saidOf === null && travel[otherWay(direction)].saidOf === direction;
  return isOfOther ? undefined : open(own.saidOf ?? direction);
}

/** Strokes of this direction are short no more: the warning is gone, unless those of the other keep it up. */
function letGo(travel: TravelMemory, direction: Direction, open: Warning): Warning[] {
  travel[direction].saidOf = null;
  travel.missing = [];
  return travel[otherWay(direction)].saidOf === open.direction ? [] : [open];
}

/**
 * Whether the room went all the way, only faster than anything that was read accounts for: the latest quick strokes of this
 * direction hold the usual course from end to end. So goes a charger that nobody recorded, which holds its volts while the
 * room runs, but not when it stalls, where it gives all it can and the battery the rest; and so does a motor whose magnets
 * lost some of their field: it turns faster by no more than it draws more. One that lacks its usual stop did not go all the way.
 */
function isFasterOnly(context: FindingContext, { shortBy, by }: TravelMade, stopped: boolean): boolean {
  const { state, direction, residual } = context;
  const own = state.travel[direction];
  const lacksStop = !stopped && (own.stopRate ?? 0) >= STOPPED_USUALLY;
  if (lacksStop || shortBy <= SHORT_WITHOUT_STOP) {
    own.courses = [];
    return false;
  }
  if (isByWeakMagnets(context, shortBy)) return true;
  const ratio = squeezedOverCut(context, Math.exp(-shortBy));
  if (ratio !== null) own.courses = [...own.courses, ratio].slice(-COURSES);
  const byField = Math.max(0, ...state.room.sides.map((side) => mostDrawn(residual(side, 'runningAmps'))));
  const byCharger = by === 'time' ? 0 : MOST_STRONGER;
  const isPossible = shortBy <= byField + byCharger;
  return isPossible && own.courses.length > 0 && median(own.courses) < WHOLE_FITS_BETTER;
}

/** How much more than usual a side may draw by what it was read, natural logarithm; 0 where that is none for sure. */
function mostDrawn(running: Residual | null): number {
  if (running === null) return 0;
  const doubt = DRAWN_SIGMAS * running.deviation;
  return running.rise > doubt ? running.rise + doubt : 0;
}

/**
 * Whether the motor came to a stand far from the end on a way that began at the other end, as the whole stroke before it
 * tells: something stands in the way, and one stroke is enough to say so.
 */
function isBlocked(
  { state, event, direction, residual }: FindingContext,
  { shortBy, judged }: TravelMade,
): boolean {
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
  const surely = SURELY_SIGMAS * (judged.deviation + extrapolated(judged));
  // A course that is all there, only squeezed, is a clock's doing, which the next strokes tell.
  const isCut = state.clock[direction].at(-1)?.whole === false;
  const isAtEnd = !lacksItsBeginning(travel, direction);
  return shortBy > Math.max(FAR_FROM_END, surely) && beganAtEnd && isAtEnd && stalls && isCut;
}

/**
 * A stroke whose record is not to be trusted tells nothing of the travel, but neither does what was seen before many of them
 * make one run with what is seen after: one that was let go now and then is then all that is read.
 */
function forgetOne({ state, direction }: FindingContext): void {
  if (openOf(state, 'short-travel').some((open) => open.direction === direction)) return;
  flag(state.recent, `short-travel ${direction}`, false);
  state.travel[direction].latest.shift();
}

/** Whether a side stopped far from its end, while another may have gone all the way: where the room stands then nobody knows. */
function leavesBehind({ state, residual }: FindingContext): boolean {
  return state.room.sides.some((side) => (residual(side, 'durationS')?.rise ?? 0) < -FAR_FROM_END);
}

/** Takes a part of a movement to what it goes on from: none of them is short by itself, and none is a stroke to learn from. */
function takeUp({ state, event, direction }: FindingContext, together: number, stopped: boolean): void {
  const { travel } = state;
  const own = travel[direction];
  takeBack(state.recent, own, direction, stopped);
  const whole = isWhole(together, Math.max(1, own.took));
  const shortBy = whole ? 0 : Math.max(0, -Math.log(together));
  if (whole && openOf(state, 'short-travel').every((open) => open.direction !== direction))
    learnRate(own, stopped);
  Object.assign(travel, {
    atMs: event.atMs,
    part: together,
    leftBehind: false,
    shortBy,
    wasShort: !whole,
    mayBeCut: true,
  });
}

/** How short the other direction is said to be, natural logarithm; minus infinity: it is not. */
function saidOfTheOther({ state, direction }: FindingContext): number {
  if (state.travel[direction].saidOf !== null) return Number.NEGATIVE_INFINITY;
  const open = openOf(state, 'short-travel').find((warning) => warning.direction !== direction);
  const isOwn = openOf(state, 'short-travel').some((warning) => warning.direction === direction);
  const percent = Number(open?.evidence.shortPercent ?? Number.NaN);
  if (open?.evidence.stoodStill === true) return Number.NEGATIVE_INFINITY;
  return isOwn || Number.isNaN(percent) ? Number.NEGATIVE_INFINITY : -Math.log1p(-percent / 100);
}

/**
 * One stay's supply, which nobody recorded, quickens all strokes there, and its heat makes the turns of all seem fewer: what
 * is known from one stay only may be that.
 */
function mayBeTheStay({ state }: FindingContext, { by, judged }: TravelMade): boolean {
  const { quickRun } = state.travel;
  const isKnown = by === 'time' || (by === 'turns' && judged.knowsWeather);
  return !isKnown && quickRun > 1 && mayBeThePlace(state.stay, quickRun);
}

/**
 * Where nobody recorded the supply, the way back tells it: a stroke that lacked its stop and took less of its time than
 * the whole one after it, at the same place, was cut short by so much.
 */
function compareOtherWay(travel: TravelMemory, direction: Direction, atMs: number, part: number): void {
  const other = travel[otherWay(direction)].latest.at(-1);
  if (other === undefined || other.stopped || atMs - travel.atMs > SAME_SUPPLY_HOURS * 3_600_000) return;
  other.short = Math.max(other.short, Math.log(part / travel.part));
}

/** The latest strokes were all a little short, by as sure a measure as this one: together they tell what none of them does. */
function isShortAgain({ latest }: DirectionTravel, least: number, { judged, by }: TravelMade): boolean {
  const shorts = latest.filter((stroke) => by === 'blind' || stroke.by === by).map(({ short }) => short);
  if (shorts.length < WITHOUT_STOP_STROKES || shorts.some((short) => short <= SHORT_WITHOUT_STOP))
    return false;
  return median(shorts) > Math.max(0.75 * least, SIGMAS * spreadOfAll(judged, by));
}

/**
 * How far the latest strokes together may lie off: only what differs from stroke to stroke evens out, and a supply that
 * nobody recorded differs from stay to stay.
 */
function spreadOfAll(judged: Residual, by: TravelMade['by']): number {
  const { deviation, noise } = judged;
  const shared = Math.sqrt(deviation ** 2 - noise ** 2 + noise ** 2 / WITHOUT_STOP_STROKES);
  return (by === 'blind' ? deviation : shared) + extrapolated(judged);
}

/** What goes beyond the reference's own standard error is extrapolation, as to a frost: it counts twice. */
function extrapolated({ uncertainty, noise }: Residual): number {
  return Math.max(0, uncertainty - noise / Math.sqrt(LEARNING_STROKES));
}

function learnRate(travel: DirectionTravel, stopped: boolean): void {
  const now = stopped ? 1 : 0;
  travel.stopRate = travel.stopRate === null ? now : travel.stopRate + (now - travel.stopRate) / RATE_STROKES;
}

function lacksItsStop({ stopRate, latest }: DirectionTravel): boolean {
  if (stopRate === null || stopRate < STOPPED_USUALLY || latest.length < WITHOUT_STOP_STROKES) return false;
  const usual = median(latest.map(({ short }) => short));
  return usual > SHORT_WITHOUT_STOP && latest.every(({ stopped }) => !stopped);
}
