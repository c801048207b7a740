import { stallFollowsSupply } from '../../baseline/stallFollowsSupply.ts';
import { comesToStop } from '../../measures.ts';
import { channelOf } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { DIRECTIONS } from '../../trace.ts';
import { droppedOn } from '../droppedLoad/droppedOn.ts';
import { type FindingContext, isOpen } from '../finding.ts';
import { stopsUsually } from '../shortTravel/shortSigns.ts';
import { holdsBothEnds } from '../shortTravel/wholeCourse.ts';
import { isWeak } from '../weakSupply.ts';
import { FEWEST_BOTH_WAYS, LATEST_EACH_WAY } from './bothWays.ts';

/** So many strokes in a row that took their usual time, and what was said of the rate stands no more. */
const FORGOTTEN = 6;
/** A rate that is wrong by less shows in nothing; all strokes are off by the same. */
const LEAST = 0.17;
/** A stroke that takes so much less, natural logarithm, may have ended early. */
const SHORTER = -LEAST / 2;
const ALIKE = 0.06;
/** A clock that stood still loses as many seconds of a quick stroke as of a slow one: a larger part of its time. */
const ALIKE_PART = 0.25;
/** What no battery does to a stroke's time, where neither the supply nor a stall tells how strong it was. */
const LEAST_UNSEEN = 0.3;
/** Of what the motor's turns seem to have changed, the time shows at least so much. */
const TIME_PART = 0.5;
/** A loaded motor slows by more than its supply fell, and by twice and more near half of its stall: (V - I R) / Ke. */
const BY_SUPPLY_PART = 0.35;
/** A current further from its normal than this tells of something else. */
const SAME_CURRENT = 0.1;

/**
 * By how much the logger's rate seems to be off: the factor, natural logarithm, by which all strokes of both directions
 * seem to take longer (negative: shorter) at an unchanged current; null: it is not. A weak supply slows the room and
 * lowers the stall; strokes that really end early show a part of the usual course only, or miss their stop. Once said, it goes on with each
 * stroke whose time is nearer to what was said than to its normal. An overloaded room's time hangs on a little more or
 * less of supply, and on where it trips: nothing is said of its rate; nor on a weak supply, which holds back what is
 * found of times.
 */
export function rateChange(context: FindingContext): number | null {
  const { clock } = context.state;
  const isOverloaded = isOpen(context.state, 'heavy-room');
  const timed = isOverloaded || isWeak(context) ? null : timesOf(context);
  if (timed === null) return null;
  const seems = sharedLonger(timed.map(({ longer }) => longer));
  // A motor that turns without its load for a part of the way takes longer there.
  const raw = seems > ALIKE && droppedOn(context).length > 0 ? 0 : seems;
  const byRate = isByRate(context, raw);
  // One side that works harder slows them all.
  const told = byRate || timed.every(({ isOther }) => !isOther) ? raw : 0;
  const own = clock[context.direction];
  const whole = told > SHORTER || byRate || isComplete(context, told);
  own.push({ longer: told, whole });
  if (own.length > LATEST_EACH_WAY) own.shift();
  const shared = sharedBy(context);
  const goesOn = shared !== null || (clock.said !== null && Math.abs(raw - clock.said) < Math.abs(raw));
  clock.usualRun = goesOn ? 0 : clock.usualRun + 1;
  clock.said = shared ?? (clock.usualRun < FORGOTTEN ? clock.said : null);
  return goesOn ? clock.said : null;
}

/** Whether a stroke that seems to take less went all the way: only where it does, its course is looked through. */
function isComplete(context: FindingContext, told: number): boolean {
  return !lacksStop(context) && holdsBothEnds(context, Math.exp(told));
}

/** Whether a stroke did not come to the stop that this direction comes to as a rule: no clock takes that away. */
function lacksStop({ state, analysis, direction }: FindingContext): boolean {
  return !comesToStop(analysis) && stopsUsually(state.travel[direction]);
}

/** All sides have one clock: what they do not share is none of its. */
function sharedLonger(sides: readonly number[]): number {
  const longer = median(sides);
  const alike = Math.max(2 * ALIKE, ALIKE_PART * Math.abs(longer));
  return sides.some((each) => Math.abs(each - longer) > alike) ? 0 : longer;
}

/** What the latest strokes of both directions agree on, natural logarithm; null: nothing, or they really are short. */
function sharedBy({ state }: FindingContext): number | null {
  const recorded = DIRECTIONS.filter((way) => state.usable[way] > 0);
  const latest = recorded.flatMap((way) => state.clock[way]);
  if (latest.length < Math.min(FEWEST_BOTH_WAYS, LATEST_EACH_WAY * recorded.length)) return null;
  const longer = median(latest.map((stroke) => stroke.longer));
  const alike = Math.max(ALIKE, ALIKE_PART * Math.abs(longer));
  if (Math.abs(longer) < LEAST || latest.some((stroke) => Math.abs(stroke.longer - longer) > alike))
    return null;
  return longer > 0 || latest.every(({ whole }) => whole) ? longer : null;
}

/** By how much longer each side seemed to take, and whether something else than the clock explains it; null: not known. */
function timesOf({
  state,
  analysis,
  residual,
}: FindingContext): { longer: number; isOther: boolean }[] | null {
  const times: { longer: number; isOther: boolean }[] = [];
  for (const side of state.room.sides.filter((name) => analysis.sides[name] !== undefined)) {
    const duration = residual(side, 'durationS');
    const running = residual(side, 'runningAmps');
    if (duration === null || running === null) return null;
    const isSupplyTold =
      analysis.supplyVolts === null && stallFollowsSupply(channelOf(state, side, analysis.direction));
    const turns = isSupplyTold ? residual(side, 'turnsAs') : null;
    // Turns are counted in amperes: a current that moved may be a scale's.
    // What was followed for long is no less of a load: it slows the room.
    const isSame = Math.max(Math.abs(running.residual), running.rise) <= SAME_CURRENT;
    const isCounted = turns !== null && turns.deviation < duration.deviation && isSame;
    const isLess = turns !== null && isSame && Math.abs(turns.residual) < Math.abs(duration.residual);
    const longer = isCounted || isLess ? turns.residual : duration.residual;
    // A supply that nobody recorded stretches the time as it lowers the stall; the motor's turns it leaves as they are.
    const stall = isSupplyTold && !isCounted ? residual(side, 'endStopAmps') : null;
    const bySupply = stall === null ? 0 : -stall.residual;
    // A charger holds its volts while the room runs, not when it stalls: the stall tells that it went, not how much it took.
    const tells = stall !== null && (isLess || bySupply * Math.sign(longer) < ALIKE);
    const unseen = analysis.supplyVolts === null && !isCounted && !tells;
    // A wrong rate stretches the time itself, whatever the supply was.
    const isTime = !isCounted || duration.residual / longer > TIME_PART;
    const isOther =
      !isTime ||
      !isSame ||
      Math.abs(bySupply) > BY_SUPPLY_PART * Math.abs(longer) ||
      (unseen && Math.abs(longer) < LEAST_UNSEEN);
    times.push({ longer, isOther });
  }
  return times.length > 0 ? times : null;
}

/** Whether the logger claims to sample as much faster as the stroke took less time: it holds as many samples as ever. */
function isByRate({ state, analysis }: FindingContext, longer: number): boolean {
  const { clock } = state;
  const rateHz = median(Object.values(analysis.sides).map((side) => side.rateHz ?? 0));
  if (!(rateHz > 0)) return false;
  if (Math.abs(longer) < ALIKE) clock.usualHz = rateHz;
  const faster = Math.log(rateHz / (clock.usualHz ?? rateHz));
  return Math.abs(faster) > LEAST && Math.abs(faster + longer) < ALIKE;
}
