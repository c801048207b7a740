import type { Residual } from '../../baseline/judge.ts';
import type { MeasureName } from '../../measures.ts';
import { isStandstillRead, standstillAmps } from '../../motor/turns.ts';
import { median } from '../../statistics/median.ts';
import { otherWay } from '../../trace.ts';
import { type FindingContext, isOpen, openOf } from '../finding.ts';
import { MOST_STALL_SPREAD } from '../unseen.ts';
import { UNREAD_OF_STANDSTILL } from './quickerBySupply.ts';
import { isLetGo } from './stallHeld.ts';
import { SAME_SUPPLY_HOURS, type TravelJudgedBy } from './travelMemory.ts';

/** How far a room travelled on one stroke, and how sure that is. */
export interface TravelMade {
  /** How much shorter than expected, natural logarithm, less what other causes may explain; 0: it was not. */
  readonly shortBy: number;
  /** No more of its way can be lacking, by the turns that were counted, natural logarithm; infinite: they tell nothing. */
  readonly most: number;
  /** How many fewer turns than expected the motor made, natural logarithm, whatever else may explain it; null: not counted. */
  readonly fewerTurns: number | null;
  /** The part of the expected time that the stroke took. */
  readonly part: number;
  /** What it was judged by. */
  readonly judged: Residual;
  readonly by: TravelJudgedBy;
}

/** A room may come to run easier and be quicker for it, but by no more than this: a travel cut short is no such drift. */
const MOST_QUICKER = 0.03;
/** A supply falls by no more than this from one stay to the next, natural logarithm: a guess, no source. */
const MOST_WEAKER = 0.15;
/** A motor that ran so shortly before is warm: its copper carries less, which is no travel. A guess, no source. */
const COOLED_MS = 20 * 60_000;

/** Turns that are fewer by so many deviations came to be so in one step, where the step is so much of it. */
const STEP_SIGMAS = 2;
const STEP_PART = 0.6;

/** What the current at standstill fell by is held against so many of the latest strokes: supplies of some stays. */
const SUPPLIES = 6;

/** Null while the room learns how long its strokes take. */
export function travelMade(context: FindingContext): TravelMade | null {
  const byTime = longestBy(context, context.state.room.sides, 'durationS');
  if (byTime === null) return null;
  const part = Math.exp(longerBy(byTime));
  const knowsSupply = context.analysis.supplyVolts !== null;
  const { restedMs } = context.state.stay;
  const isWarm = restedMs !== null && restedMs >= 0 && restedMs < COOLED_MS;
  const counted = knowsSupply || isWarm ? null : longestBy(context, comparableSides(context), 'turnsAs');
  const most = mostLacking(counted);
  // Where neither stall nor start is read well, the time tells more for all that a supply may do to it.
  const byTurns = counted !== null && counted.deviation < byTime.deviation ? counted : null;
  context.state.travel[context.direction].fewer = byTurns === null ? null : -longerBy(byTurns);
  if (byTurns !== null) {
    const fewer = -longerBy(byTurns) - otherwiseExplained(context, byTurns);
    const shortBy = Math.max(0, Math.min(fewer, mostWeaker(context) - longerBy(byTime)));
    return { shortBy, most, fewerTurns: -longerBy(byTurns), part, judged: byTurns, by: 'turns' };
  }
  const stronger = strongerSupply(context);
  const byClock = Math.max(0, -longerBy(byTime) - stronger.volts - quickerByEase(context));
  const shortBy = Math.min(byClock, most);
  const judged = { ...byTime, deviation: Math.hypot(byTime.deviation, stronger.deviation) };
  return { shortBy, most, fewerTurns: null, part, judged, by: knowsSupply ? 'time' : 'blind' };
}

/** Turns are known to within so many deviations; where they seem to be more by more than that, another stall was read. */
const COUNT_SIGMAS = { fewer: 2, more: 3 };

/** How much of its way the room may lack by the turns that were counted, though they may be told less well than the time. */
function mostLacking(counted: Residual | null): number {
  if (counted === null || longerBy(counted) > COUNT_SIGMAS.more * counted.deviation)
    return Number.POSITIVE_INFINITY;
  return Math.max(0, -longerBy(counted) + COUNT_SIGMAS.fewer * counted.deviation);
}

/**
 * How much weaker the supply may have been than it was, natural logarithm: no more than what was drawn at standstill tells, at
 * the start or at the stop, on the side that lost least of it, as far as that is read at all.
 */
function mostWeaker({ state, residual }: FindingContext): number {
  const fell = state.room.sides.flatMap((side) =>
    [residual(side, 'endStopAmps'), residual(side, 'inrushAmps')]
      .filter((standstill) => standstill !== null)
      .map(({ rise, deviation }) => Math.max(0, -rise) + deviation),
  );
  return Math.min(MOST_WEAKER, ...fell);
}

/**
 * Sides whose turns are still to be held against what they were: one that draws more than it did may have lost some of its
 * magnets' field, and turns as often for fewer ampere-seconds (`Ke` falls with the field). None where the sides share the load
 * otherwise than they did: the one that takes less may be the one whose contact or winding is no longer what it was.
 */
function comparableSides({ state }: FindingContext): string[] {
  const harder = openOf(state, 'rising-draw').map(({ side }) => side);
  const isUneven = isOpen(state, 'uneven-sides');
  return isUneven || harder.includes(null) ? [] : state.room.sides.filter((side) => !harder.includes(side));
}

/** Of these sides the one that was driven furthest tells how far the room went. */
function longestBy(
  { residual }: FindingContext,
  sides: readonly string[],
  measure: MeasureName,
): Residual | null {
  const judged = sides.map((side) => residual(side, measure)).filter((each) => each !== null);
  return judged.length === 0 ? null : judged.reduce((a, b) => (longerBy(b) > longerBy(a) ? b : a));
}

/** By how much longer than expected a side was driven, natural logarithm. */
function longerBy({ rise, fromReference }: Residual): number {
  return Math.min(rise, fromReference + MOST_QUICKER);
}

/**
 * What else makes the turns seem fewer. A bad contact, and heat that nobody recorded, lower the current at standstill
 * without slowing the room as a weak supply would, whatever the supply of the day, and make the turns of the way back as
 * few: not where they came to be fewer from one stroke to the next on the same standstill. A clamp that reads too little
 * lowers the running current as well.
 */
function otherwiseExplained(context: FindingContext, byTurns: Residual): number {
  const { state, direction, residual } = context;
  const { travel } = state;
  const now = state.room.sides
    .map((side) => fewerByStandstill(context, side))
    .filter((each) => each !== null);
  if (now.length > 0) travel.fell.push(Math.max(...now));
  if (travel.fell.length > SUPPLIES) travel.fell.shift();
  noteStep(context, byTurns);
  const byStandstill =
    travel.fell.length > 0 ? Math.max(0, travel.fell[travel.fell.length - 1], median(travel.fell)) : 0;
  const back = Math.max(0, travel[otherWay(direction)].fewer ?? 0);
  const running = state.room.sides
    .map((side) => residual(side, 'runningAmps'))
    .filter((each) => each !== null);
  const readsLess = Math.max(0, ...running.map(({ rise, deviation }) => -rise - deviation));
  return Math.max(readsLess, travel.isStep ? 0 : Math.min(back, byStandstill));
}

/**
 * Sees whether the turns have just become fewer while the current at standstill stayed what it was, or are no longer. Nobody
 * drives with a room out: going in it stands where it went out, mostly on the same supply. Elsewhere a stronger one may hide
 * what a contact took.
 */
function noteStep({ state, event, direction }: FindingContext, byTurns: Residual): void {
  const { travel } = state;
  const fewer = -longerBy(byTurns);
  const fell = travel.fell.at(-1) ?? 0;
  const before = travel.counted;
  travel.counted = { fewer, fell, direction, atMs: event.atMs };
  if (fewer <= STEP_SIGMAS * byTurns.deviation) {
    travel.isStep = false;
    return;
  }
  const isSamePlace = before?.direction === 'extend' && direction === 'retract';
  if (!isSamePlace || event.atMs - before.atMs > SAME_SUPPLY_HOURS * 3_600_000) return;
  const mostly = STEP_PART * fewer;
  if (fewer - before.fewer > mostly && fell - before.fell < fewer - mostly) travel.isStep = true;
}

/** How many fewer turns a side seems to have made for what it drew less at standstill, natural logarithm. */
function fewerByStandstill({ analysis, residual }: FindingContext, side: string): number | null {
  const judged = residual(side, 'endStopAmps') ?? residual(side, 'inrushAmps');
  if (judged === null) return null;
  const { runningAmps } = analysis.sides[side];
  const standstill = standstillAmps(analysis.sides[side]);
  // Turns go by what it draws more than running, of which the same amperes are the larger part.
  return (-judged.fromReference * standstill) / Math.max(standstill - runningAmps, runningAmps);
}

/**
 * A supply that nobody recorded shows in the stall current: the stroke was faster by as much, not shorter. Where the
 * temperature is known a weaker one shows in it as well, and a stroke that took no longer on it was shorter: below zero, and
 * as unsure as the stall is read. One that was let go before the motor stood still tells of no weaker supply.
 */
function strongerSupply(context: FindingContext): { volts: number; deviation: number } {
  const { state, analysis, direction, conditions, residual } = context;
  const stalls = state.room.sides.flatMap((side) => {
    const judged = residual(side, 'endStopAmps');
    return judged === null
      ? []
      : [{ judged, isLetGo: isLetGo(state.travel[direction], analysis, side, judged) }];
  });
  if (analysis.supplyVolts !== null || stalls.length === 0) return NO_OTHER;
  const { judged, isLetGo: letGo } = stalls.reduce((a, b) => (b.judged.rise > a.judged.rise ? b : a));
  if (judged.rise >= 0) return { volts: judged.rise, deviation: 0 };
  // Nor does one that is now let go sooner and now later.
  if (letGo || conditions[1] === null || judged.deviation > MOST_STALL_SPREAD) return NO_OTHER;
  return { volts: Math.max(-MOST_WEAKER, judged.rise), deviation: judged.deviation };
}

const NO_OTHER = { volts: 0, deviation: 0 };

/** A stroke that ends early misses its seal, and draws so much less for that, natural logarithm: a guess, no source. */
const BY_MISSED_SEAL = 0.1;

/**
 * By how much quicker a room is that runs easier than it did, as after lubricating, natural logarithm: speed is (V - I R) / Ke, and
 * what it draws at standstill V / R. The sides move one room: what all of them draw tells, as one that lost a steep piece of its
 * course draws less by itself.
 */
function quickerByEase(context: FindingContext): number {
  const eased = context.state.room.sides.map((side) => easeOf(context, side)).filter((side) => side !== null);
  const mean = (of: readonly number[]) => of.reduce((sum, each) => sum + each / of.length, 0);
  if (mean(eased.map(({ fell }) => fell)) < BY_MISSED_SEAL) return 0;
  return mean(eased.map(({ quicker }) => quicker));
}

/** By how much less a side draws than it did, and by how much quicker it would be for that by itself, natural logarithms. */
function easeOf(
  { analysis, residual }: FindingContext,
  side: string,
): { fell: number; quicker: number } | null {
  const running = residual(side, 'runningAmps');
  if (running === null) return null;
  const measured = analysis.sides[side];
  const { runningAmps } = measured;
  const usual = runningAmps * Math.exp(-running.rise);
  const standstill = isStandstillRead(measured) ? standstillAmps(measured) : usual / UNREAD_OF_STANDSTILL;
  const toSpare = standstill - usual;
  // No motor runs at more than half of what it draws at standstill.
  return {
    fell: -running.rise,
    quicker: Math.log1p(Math.max(0, usual - runningAmps) / Math.max(toSpare, usual)),
  };
}
