import type { Residual } from '../baseline/judge.ts';
import { LEARNING_STROKES } from '../baseline/strokesNeeded.ts';
import { median } from '../statistics/median.ts';
import type { Direction } from '../trace.ts';
import { type FindingAnswer, type FindingContext, NOTHING, openOf } from './finding.ts';
import { flag, isLasting, isOver, type RecentFlags } from './recent.ts';
import { mayBeThePlace } from './stay.ts';

/** Strokes this much shorter than expected count as short, with the supply recorded and without. */
const SHORT = 0.06;
const SHORT_UNRECORDED = 0.13;
const SIGMAS = 3;
/** A room may come to run easier and be quicker for it, but by no more than this: a travel cut short is no such drift. */
const MOST_QUICKER = 0.03;
/** Strokes that end without their usual end stop need not be as much shorter, if they all are. */
const STOPPED_USUALLY = 0.7;
const SHORT_WITHOUT_STOP = 0.035;
const WITHOUT_STOP_STROKES = 4;
/** A way back that is short by no more than this beyond the way out is explained by it. */
const EXPLAINED = 0.06;
const EXPLAINED_BY_LITTLE = 0.03;
/** A stroke that was broken off is taken up within so long, and both together make a whole one. */
const TAKEN_UP_HOURS = 24;
/** A way back within so long was made on the supply of the way out, more or less. */
const SAME_SUPPLY_HOURS = 168;
const WHOLE: readonly [number, number] = [0.85, 1.25];
const LEAST_STROKES = 3;
const CLEAR_STROKES = 3;
/** A supply falls by no more than this from one stay to the next, natural logarithm: a guess, no source. */
const MOST_WEAKER = 0.15;
/** The usual rate of end stops is a moving mean over about so many strokes. */
const RATE_STROKES = 12;

interface DirectionTravel {
  /** Share of strokes that ended at the stop, while nothing was short; null: none seen. */
  stopRate: number | null;
  /** The latest strokes: how much shorter than expected, and whether they came to the stop. */
  latest: { short: number; stopped: boolean }[];
}

export interface TravelMemory extends Record<Direction, DirectionTravel> {
  /** How much shorter than expected the latest stroke was, natural logarithm; 0: it was not. */
  shortBy: number;
  direction: Direction | null;
  /** Whether it was so short that it counts by itself. */
  wasShort: boolean;
  /** When that was, and the part of the expected time that it took. */
  atMs: number;
  part: number;
  /** Strokes in a row, whichever way, that were all quicker than expected. */
  quickRun: number;
  /** Whether it may have been cut short, and is no whole stroke to learn from. */
  mayBeCut: boolean;
}

export function beginTravelMemory(): TravelMemory {
  const travel = (): DirectionTravel => ({ stopRate: null, latest: [] });
  return {
    extend: travel(),
    retract: travel(),
    shortBy: 0,
    wasShort: false,
    direction: null,
    atMs: 0,
    part: 0,
    quickRun: 0,
    mayBeCut: false,
  };
}

/**
 * Strokes of one direction end before the room's usual travel: they take less time than supply and temperature
 * account for, though the motor ran as ever, and often without coming to the stop. The way back from a short stroke
 * is short too and says nothing; nor do two strokes that make a whole one, broken off and taken up again.
 */
export function shortTravel(context: FindingContext): FindingAnswer {
  const { state, analysis, direction } = context;
  const judged = state.room.sides
    .map((side) => context.residual(side, 'durationS'))
    .filter((residual) => residual !== null);
  const stopped = Object.values(analysis.sides).some((side) => side.endStopAmps !== null);
  const travel = state.travel[direction];
  state.travel.mayBeCut = false;
  if (judged.length === 0) {
    learnRate(travel, stopped);
    return NOTHING;
  }
  // The side that was driven longest tells how far the room went.
  const longest = judged.reduce((a, b) => (longerBy(b) > longerBy(a) ? b : a));
  const shortBy = Math.max(0, -longerBy(longest) - strongerSupply(context));
  const least = analysis.supplyVolts === null ? SHORT_UNRECORDED : SHORT;
  const { travel: before } = state;
  const back = before.direction !== null && before.direction !== direction;
  const part = Math.exp(longerBy(longest));
  const takenUp = takesUp(before, direction, context.event.atMs, part);
  if (takenUp) takeBack(state.recent, travel, direction);
  const excused = before.shortBy + (before.wasShort ? EXPLAINED : EXPLAINED_BY_LITTLE);
  if (back && stopped && analysis.supplyVolts === null)
    compareOtherWay(state.travel, direction, context.event.atMs, part);
  // The one of the two that lacks its usual stop is the one that ends early.
  const lacksOwn = !stopped && (travel.stopRate ?? 0) >= STOPPED_USUALLY;
  const explained = takenUp || (back && !lacksOwn && before.shortBy > 0 && shortBy <= excused);
  travel.latest.push({ short: explained ? 0 : shortBy, stopped });
  if (travel.latest.length > WITHOUT_STOP_STROKES) travel.latest.shift();
  const missesStop = lacksItsStop(travel);
  before.quickRun = shortBy > SHORT_WITHOUT_STOP ? before.quickRun + 1 : 0;
  const alone = shortBy > Math.max(least, SIGMAS * (longest.deviation + extrapolated(longest)));
  const told = alone || isShortAgain(travel, least, spreadOfAll(longest, analysis.supplyVolts !== null));
  const short = !explained && (missesStop || (told && !mayBeSupply(context)));
  before.mayBeCut = short || takenUp || (explained && before.wasShort);
  before.shortBy = !explained && shortBy > SHORT_WITHOUT_STOP ? shortBy : 0;
  before.wasShort = short;
  Object.assign(before, { direction, atMs: context.event.atMs, part: takenUp ? 1 : part });
  const flags = flag(state.recent, `short-travel ${direction}`, short);
  const open = openOf(state, 'short-travel').find((warning) => warning.direction === direction);
  if (open === undefined && !short) learnRate(travel, stopped);
  if (open !== undefined && isOver(flags, CLEAR_STROKES)) return { present: [], gone: [open] };
  const opens = shortBy > SHORT_WITHOUT_STOP;
  if (
    !short ||
    (open === undefined && !opens) ||
    (open === undefined &&
      !missesStop &&
      !isShortAgain(travel, least, spreadOfAll(longest, analysis.supplyVolts !== null)) &&
      !isLasting(flags, LEAST_STROKES, 4))
  )
    return NOTHING;
  const percent = Math.round(-100 * Math.expm1(-shortBy));
  const doing = direction === 'extend' ? 'out' : 'in';
  return {
    present: [
      {
        kind: 'short-travel',
        side: null,
        direction,
        position: null,
        pattern: null,
        severity: percent >= 15 || stopped ? 'service' : 'watch',
        headline: `Going ${doing}, the room ends its travel about ${percent} % early${stopped ? ' and the motor stalls there' : ''}.`,
        evidence: { shortPercent: percent, stalled: stopped },
      },
    ],
    gone: [],
  };
}

/** By how much longer than expected a side was driven, natural logarithm. */
function longerBy({ rise, fromReference }: Residual): number {
  return Math.min(rise, fromReference + MOST_QUICKER);
}

/** Whether this stroke goes on where the one before it in the same direction was broken off. */
function takesUp(before: TravelMemory, direction: Direction, atMs: number, part: number): boolean {
  const inTime = atMs - before.atMs <= TAKEN_UP_HOURS * 3_600_000;
  const whole = before.part + part;
  return before.direction === direction && inTime && whole >= WHOLE[0] && whole <= WHOLE[1];
}

/** One stay's supply, which nobody recorded, quickens all strokes there: what is known from one stay only may be that. */
function mayBeSupply({ state, analysis }: FindingContext): boolean {
  const { quickRun } = state.travel;
  return analysis.supplyVolts === null && quickRun > 1 && mayBeThePlace(state.stay, quickRun);
}

/**
 * Where nobody recorded the supply, the way back tells it: a stroke that lacked its stop and took less of its time than
 * the whole one after it, at the same place, was cut short by so much.
 */
function compareOtherWay(travel: TravelMemory, direction: Direction, atMs: number, part: number): void {
  const other = travel[direction === 'extend' ? 'retract' : 'extend'].latest.at(-1);
  if (other === undefined || other.stopped || atMs - travel.atMs > SAME_SUPPLY_HOURS * 3_600_000) return;
  other.short = Math.max(other.short, Math.log(part / travel.part));
}

/** The stroke that was broken off was not short after all. */
function takeBack(recent: RecentFlags, travel: DirectionTravel, direction: Direction): void {
  const flags = recent[`short-travel ${direction}`];
  if (flags !== undefined && flags.length > 0) flags[flags.length - 1] = false;
  const broken = travel.latest.at(-1);
  if (broken !== undefined) broken.short = 0;
}

/**
 * A supply that nobody recorded shows in the stall current: the stroke was faster by as much, not shorter. Where the
 * temperature is known a weaker one shows in it as well, and a stroke that took no longer on it was shorter: below zero.
 */
function strongerSupply({ state, analysis, conditions, residual }: FindingContext): number {
  if (analysis.supplyVolts !== null) return 0;
  const rises = state.room.sides
    .map((side) => residual(side, 'endStopAmps')?.rise ?? null)
    .filter((rise) => rise !== null);
  if (rises.length === 0) return 0;
  const stronger = Math.max(...rises);
  return conditions[1] === null ? Math.max(0, stronger) : Math.max(-MOST_WEAKER, stronger);
}

/** The latest strokes were all a little short: together they tell what none of them does. `spread`: of their median. */
function isShortAgain({ latest }: DirectionTravel, least: number, spread: number): boolean {
  if (latest.length < WITHOUT_STOP_STROKES || latest.some(({ short }) => short <= SHORT_WITHOUT_STOP))
    return false;
  return median(latest.map(({ short }) => short)) > Math.max(0.75 * least, SIGMAS * spread);
}

/**
 * How far the latest strokes together may lie off: only what differs from stroke to stroke evens out, and a supply that
 * nobody recorded differs from stay to stay.
 */
function spreadOfAll(judged: Residual, knowsSupply: boolean): number {
  const { deviation, noise } = judged;
  const shared = Math.sqrt(deviation ** 2 - noise ** 2 + noise ** 2 / WITHOUT_STOP_STROKES);
  return (knowsSupply ? shared : deviation) + extrapolated(judged);
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
