import type { Residual } from '../../baseline/judge.ts';
import type { FindingContext } from '../finding.ts';
import { countedTurns } from './countedTurns.ts';
import { furthestDriven, longerBy } from './furthestDriven.ts';
import { quickerByEase } from './quickerByEase.ts';
import { seeminglyFewer } from './seeminglyFewer.ts';
import type { TravelJudgedBy } from './travelMemory.ts';
import { mostWeaker, unseenSupply } from './unseenSupply.ts';

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

/**
 * How far the room went: by its motors' turns where they tell more than the time does, else by the time. Takes the stroke into
 * what is remembered of turns: once for each. Null while the room learns how long its strokes take.
 */
export function travelMade(context: FindingContext): TravelMade | null {
  const time = furthestDriven(context, context.state.room.sides, 'durationS');
  if (time === null) return null;
  const counted = countedTurns(context);
  // Where neither stall nor start is read well, the time tells more for all that a supply may do to it.
  const turns = counted !== null && counted.deviation < time.deviation ? counted : null;
  context.state.travel[context.direction].fewer = turns === null ? null : -longerBy(turns);
  const most = mostLacking(counted);
  return turns === null ? byTime(context, time, most) : byTurns(context, turns, time, most);
}

/** By turns a stroke is no shorter than by its time on the weakest supply that it may have had. */
function byTurns(context: FindingContext, turns: Residual, time: Residual, most: number): TravelMade {
  const fewerTurns = -longerBy(turns);
  const fewer = fewerTurns - seeminglyFewer(context, fewerTurns, turns.deviation);
  const shortBy = Math.max(0, Math.min(fewer, mostWeaker(context) - longerBy(time)));
  return { shortBy, most, fewerTurns, part: Math.exp(longerBy(time)), judged: turns, by: 'turns' };
}

/** By time a stroke is no shorter than a stronger supply and an easier run leave it, nor than its turns allow. */
function byTime(context: FindingContext, time: Residual, most: number): TravelMade {
  const supply = unseenSupply(context);
  const shorter = Math.max(0, -longerBy(time) - supply.stronger - quickerByEase(context));
  return {
    shortBy: Math.min(shorter, most),
    most,
    fewerTurns: null,
    part: Math.exp(longerBy(time)),
    judged: { ...time, deviation: Math.hypot(time.deviation, supply.deviation) },
    by: context.analysis.supplyVolts === null ? 'blind' : 'time',
  };
}

/** Turns are known to within so many deviations; where they seem to be more by more than that, another stall was read. */
const COUNT_SIGMAS = { fewer: 2, more: 3 };

/** How much of its way the room may lack by the turns that were counted, though they may be told less well than the time. */
function mostLacking(counted: Residual | null): number {
  if (counted === null || longerBy(counted) > COUNT_SIGMAS.more * counted.deviation)
    return Number.POSITIVE_INFINITY;
  return Math.max(0, -longerBy(counted) + COUNT_SIGMAS.fewer * counted.deviation);
}
