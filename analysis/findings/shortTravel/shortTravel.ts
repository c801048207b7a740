import { type Direction, otherWay } from '../../trace.ts';
import type { Warning } from '../../warning.ts';
import { type FindingAnswer, type FindingContext, NOTHING, openOf } from '../finding.ts';
import { flag, isLasting, isOver } from '../recent.ts';
import { movesAgain } from '../stoodStill.ts';
import { isFasterOnly } from './fasterOnly.ts';
import { noteFirstShort } from './firstShort.ts';
import { lacksOwnEnd, noteMissingEnd } from './lackedEnd.ts';
import { isWhole, madeTogether, takeBack } from './movementParts.ts';
import {
  FAR_FROM_END,
  isBlocked,
  isLetGoAnywhere,
  isShortAgain,
  isShortAlone,
  LATEST_STROKES,
  lacksItsStop,
  leastShort,
  mayBeTheStay,
  SHORT_WITHOUT_STOP,
  stopsUsually,
} from './shortSigns.ts';
import { endsEarly, letGo, openFor, saidOfTheOther } from './shortTravelSaid.ts';
import { type TravelMade, travelMade } from './travelMade.ts';
import { type DirectionTravel, SAME_SUPPLY_HOURS, type TravelMemory } from './travelMemory.ts';

/** Once said it goes on while strokes are shorter by this part of what counts. */
const STILL_PART = 0.5;
/** And while the motor makes fewer turns by this part of what was said. */
const AS_FEW_PART = 0.6;
/** A way back that is short by no more than this beyond the way out is explained by it. */
const EXPLAINED = 0.06;
const EXPLAINED_BY_LITTLE = 0.03;
const LEAST_STROKES = 3;
const CLEAR_STROKES = 3;
/** The usual rate of end stops is a moving mean over about so many strokes. */
const RATE_STROKES = 12;

/** One stroke that is a whole way by itself, and what speaks for its being short. */
interface JudgedWay {
  readonly made: TravelMade;
  /** Natural logarithm; 0: it was not. */
  readonly shortBy: number;
  /** The same by its course alone; null: that tells of none. */
  readonly lacking: number | null;
  readonly stopped: boolean;
}

/**
 * Strokes of one direction end before the room's usual travel: they take less time than supply and temperature
 * account for, though the motor ran as ever, and often without coming to the stop. The way back from a short stroke
 * is short too and says nothing; nor do the parts of a movement that was broken off and taken up again.
 */
export function shortTravel(context: FindingContext): FindingAnswer {
  const { state, analysis, direction } = context;
  const stopped = Object.values(analysis.sides).some((side) => side.endStopAmps !== null);
  state.travel.mayBeCut = false;
  const made = travelMade(context);
  if (made === null) {
    learnRate(state.travel[direction], stopped);
    if (context.doubtful.size > 0) forgetOne(context);
    return NOTHING;
  }
  const way = judgeWay(context, made, stopped);
  const together = madeTogether(context, made.part);
  if (together === null) return judgeAlone(context, way);
  takeUp(context, together, stopped);
  return NOTHING;
}

function judgeWay(context: FindingContext, made: TravelMade, stopped: boolean): JudgedWay {
  const open = openFor(context);
  const own = context.state.travel[context.direction];
  const lacking = lacksOwnEnd(context, made);
  const mayBeWhole = (stopped || !stopsUsually(own)) && made.shortBy > SHORT_WITHOUT_STOP;
  const byTime = isFasterOnly(context, made, mayBeWhole) ? 0 : made.shortBy;
  const shortBy = Math.max(byTime, lacking ?? 0, open === undefined ? 0 : asFewTurns(open, made));
  noteMissingEnd(context, shortBy);
  return { made, shortBy, lacking, stopped };
}

/**
 * How much shorter than expected a stroke was whose motor made as few turns as those that were said to end early, natural
 * logarithm; 0: it made more, or they were not counted. What else could explain it could not when it was said.
 */
function asFewTurns({ evidence }: Warning, { fewerTurns }: TravelMade): number {
  const said = -Math.log1p(-(evidence.shortPercent ?? 0) / 100);
  return fewerTurns !== null && fewerTurns > AS_FEW_PART * said ? Math.min(fewerTurns, said) : 0;
}

/** Judges a stroke that goes on from none before it. */
function judgeAlone(context: FindingContext, way: JudgedWay): FindingAnswer {
  const { state, direction } = context;
  const { travel } = state;
  const own = travel[direction];
  const { made, shortBy, lacking, stopped } = way;
  if (isBack(context) && stopped && context.analysis.supplyVolts === null)
    compareOtherWay(travel, direction, context.event.atMs, made.part);
  const open = openFor(context);
  const explained = isExplained(context, way);
  own.latest.push({ short: explained ? 0 : shortBy, stopped, by: made.by, part: made.part });
  if (own.latest.length > LATEST_STROKES) own.latest.shift();
  const missesStop = lacksItsStop(own);
  travel.quickRun = shortBy > SHORT_WITHOUT_STOP ? travel.quickRun + 1 : 0;
  const alone = isShortAlone(made, shortBy);
  const again = shortBy > 0 && isShortAgain(own, made);
  const blocked = alone && isBlocked(context, made);
  // Each of these tells by itself; strokes that are merely short may be so for the supply of their stay.
  const surely = missesStop || blocked || lacking !== null;
  const seems = !explained && (surely || ((alone || again) && !mayBeTheStay(context, made)));
  noteFirstShort(context, made, shortBy);
  remember(context, way, { short: seems, explained });
  const short = seems && !isLetGoAnywhere(own);
  const goesOn = open !== undefined && !explained && shortBy > STILL_PART * leastShort(made);
  const flags = flag(state.recent, `short-travel ${direction}`, short || goesOn);
  if (open === undefined && !short) learnRate(own, stopped);
  if (open !== undefined && isOver(flags, CLEAR_STROKES))
    return { present: [], gone: letGo(travel, direction, open) };
  const moves = short ? null : movesAgain(open, direction);
  if (moves !== null) return { present: [moves], gone: [] };
  const lasts = isLasting(flags, LEAST_STROKES, LATEST_STROKES);
  const opens = shortBy > SHORT_WITHOUT_STOP && (surely || again || lasts);
  if (!short || (open === undefined && !opens)) return NOTHING;
  const byItself = blocked && !lasts ? shortBy : null;
  return { present: [endsEarly(context, open, byItself, flags.filter(Boolean).length)], gone: [] };
}

/** Whether the stroke before it went the other way. */
function isBack({ state: { travel }, direction }: FindingContext): boolean {
  return travel.direction === otherWay(direction);
}

/** Whether it is short only because the way before it was, or what is said of the other direction has it so. */
function isExplained(context: FindingContext, { shortBy, stopped }: JudgedWay): boolean {
  const { travel } = context.state;
  const own = travel[context.direction];
  // What keeps up a warning of the other end is short for that end's sake, and explained by nothing before it.
  if (own.saidOf !== null && own.saidOf !== context.direction) return false;
  // The one of the two that lacks its usual stop is the one that ends early; that happens once to the other as well.
  const isOnce = travel.shortBy > 0 && own.latest.at(-1)?.stopped !== false;
  if (!stopped && !isOnce && stopsUsually(own)) return false;
  const excused = travel.shortBy + (travel.wasShort ? EXPLAINED : EXPLAINED_BY_LITTLE);
  const byTheWayBefore = isBack(context) && travel.shortBy > 0 && shortBy <= excused;
  return byTheWayBefore || shortBy <= saidOfTheOther(context) + EXPLAINED;
}

/** Keeps what the next stroke is held against. */
function remember(
  context: FindingContext,
  { made: { part }, shortBy }: JudgedWay,
  { short, explained }: { readonly short: boolean; readonly explained: boolean },
): void {
  const { state, event, direction } = context;
  const { travel } = state;
  if (!short && !explained) travel[direction].took = part;
  Object.assign(travel, {
    mayBeCut: short || (explained && travel.wasShort),
    shortBy: !explained && shortBy > SHORT_WITHOUT_STOP ? shortBy : 0,
    wasShort: short,
    direction,
    atMs: event.atMs,
    part,
    leftBehind: leavesBehind(context),
  } satisfies Partial<TravelMemory>);
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
  } satisfies Partial<TravelMemory>);
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

function learnRate(travel: DirectionTravel, stopped: boolean): void {
  const now = stopped ? 1 : 0;
  travel.stopRate = travel.stopRate === null ? now : travel.stopRate + (now - travel.stopRate) / RATE_STROKES;
}
