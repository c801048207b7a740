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

/** After this many strokes in a row that took their usual time a rate that was found is dropped. */
const FORGOTTEN = 6;
/**
 * A rate that is wrong by less than this, natural logarithm, cannot be seen. All strokes must be off by the same,
 * within `ALIKE`.
 */
const LEAST = 0.17;
/** A stroke that takes less than this, natural logarithm, may have ended early. */
const SHORTER = -LEAST / 2;
const ALIKE = 0.06;
/** A clock that stood still loses as many seconds of a quick stroke as of a slow one: a larger part of its time. */
const ALIKE_PART = 0.25;
/**
 * The least that counts where neither a supply record nor a stall tells how strong the battery was: no battery changes
 * the time by more.
 */
const LEAST_UNSEEN = 0.3;
/** The time must show at least this part of the change that the motor's turns seem to show. */
const TIME_PART = 0.5;
/**
 * If the supply, as told by the stall, explains more than this part of the change, it is not the clock. A loaded motor
 * slows by more than its supply fell, and by twice and more near half of its stall: (V - I R) / Ke.
 */
const BY_SUPPLY_PART = 0.35;
/** If the running current is further off its normal than this, natural logarithm, something else has changed. */
const SAME_CURRENT = 0.1;

/**
 * By how much the logger's rate seems to be off: the natural logarithm of the factor by which all strokes of both
 * directions seem to take longer (negative: shorter) at an unchanged current; null: it is not off.
 *
 * Other causes look different: a weak supply slows the room and lowers the stall, and strokes that really end early
 * show only a part of the usual course or miss their stop. Once found, a rate stays with each stroke whose time is
 * nearer to it than to its normal. Nothing is found on a weak supply, nor in an overloaded room, whose time depends on
 * a little more or less of supply and on where it trips.
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
  // One side that works harder slows all of them.
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

/** Whether a stroke that seems to take less went all the way: it came to its stop and its course holds both ends. */
function isComplete(context: FindingContext, told: number): boolean {
  return !lacksStop(context) && holdsBothEnds(context, Math.exp(told));
}

/** Whether a stroke lacks the stop that this direction usually comes to, which no clock takes away. */
function lacksStop({ state, analysis, direction }: FindingContext): boolean {
  return !comesToStop(analysis) && stopsUsually(state.travel[direction]);
}

/**
 * What all sides share, natural logarithm; 0 where they differ. They have one clock, so that a difference is not the
 * clock's.
 */
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

/**
 * By how much longer each side seemed to take, and whether something else than the clock explains it; null: not known.
 */
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
    // Turns are worked out from amperes, so that a changed scale would move them: the current must be the usual one.
    // The rise is
    // looked at as well as the residual: a load that the baseline has followed for long still slows the room.
    const isSame = Math.max(Math.abs(running.residual), running.rise) <= SAME_CURRENT;
    const isCounted = turns !== null && turns.deviation < duration.deviation && isSame;
    const isLess = turns !== null && isSame && Math.abs(turns.residual) < Math.abs(duration.residual);
    const longer = isCounted || isLess ? turns.residual : duration.residual;
    // A weak unrecorded supply lengthens the time and lowers the stall, but leaves the motor's turns as they are.
    const stall = isSupplyTold && !isCounted ? residual(side, 'endStopAmps') : null;
    const bySupply = stall === null ? 0 : -stall.residual;
    // A charger holds its volts while the room runs, but not at a stall: the stall shows that it is off, not how much
    // that cost.
    const tells = stall !== null && (isLess || bySupply * Math.sign(longer) < ALIKE);
    const unseen = analysis.supplyVolts === null && !isCounted && !tells;
    // A wrong rate changes the time itself, whatever the supply was.
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

/**
 * Whether the logger claims a rate that is higher by as much as the stroke took less time, so that it holds as many
 * samples as ever.
 */
function isByRate({ state, analysis }: FindingContext, longer: number): boolean {
  const { clock } = state;
  const rateHz = median(Object.values(analysis.sides).map((side) => side.rateHz ?? 0));
  if (!(rateHz > 0)) return false;
  if (Math.abs(longer) < ALIKE) clock.usualHz = rateHz;
  const faster = Math.log(rateHz / (clock.usualHz ?? rateHz));
  return Math.abs(faster) > LEAST && Math.abs(faster + longer) < ALIKE;
}
