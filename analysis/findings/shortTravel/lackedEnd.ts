import { mean } from 'simple-statistics';
import { median } from '../../statistics/median.ts';
import { type Direction, otherWay } from '../../trace.ts';
import { type FindingContext, openOf } from '../finding.ts';
import type { TravelMade } from './travelMade.ts';
import { SAME_SUPPLY_HOURS, type TravelMemory } from './travelMemory.ts';
import { missingEnd } from './wholeCourse.ts';

/** Strokes this much shorter than expected count as short, natural logarithm; what lacks less does not tell which end. */
export const SHORT = 0.06;
/** So many of the latest short strokes tell which end they lack, if they lack one so surely: guesses, no source. */
const LACKING = { fewest: 2, most: 6, least: 0.4 };

/** Remembers which end of the travel a stroke lacks that was shorter by so much, until both ways were whole again. */
export function noteMissingEnd(context: FindingContext, shortBy: number): void {
  const { travel } = context.state;
  if (shortBy <= SHORT) {
    if (travel.quickRun === 0) travel.missing = [];
    return;
  }
  const missing = missingEnd(context, Math.exp(-shortBy));
  if (missing !== null) travel.missing = [...travel.missing, missing].slice(-LACKING.most);
}

/**
 * The direction whose end the latest short strokes lack, by their courses; null: they do not tell. A stroke that begins where
 * the one before it was stopped is as short as that, and which of the two was stopped no time tells.
 */
export function lackedEnd({ missing }: TravelMemory): Direction | null {
  if (missing.length < LACKING.fewest) return null;
  const usual = mean(missing);
  return Math.abs(usual) < LACKING.least ? null : usual > 0 ? 'extend' : 'retract';
}

/** Whether the latest short stroke lacks the end that it came from rather than the one that it went to. */
export function lacksItsBeginning({ missing }: TravelMemory, direction: Direction): boolean {
  const latest = missing.at(-1) ?? 0;
  return (direction === 'extend' ? latest : -latest) < -LACKING.least;
}

/** How much of its way a stroke is asked for that lacks its end: what is missed of an eighth or a quarter shows at a sixth too. */
const PROBED_PART = 0.85;
/**
 * So many strokes of one direction in a row whose courses lack its own end, each so clearly and all together more so, and
 * that took so much less of their time than the way before, natural logarithm: guesses, no source.
 */
const OWN = { strokes: 4, each: 0.5, mean: 0.8, shorter: 0.08 };
/** While it is said already, so much will do to go on, all together. */
const STILL = { mean: 0.4, shorter: 0.04 };

/**
 * How much shorter than the way before a stroke was, natural logarithm, where neither a supply that nobody recorded nor what
 * stands in the way and holds the motor at another stall tells it, but the courses of the latest strokes do: they lack the end
 * that this direction goes to. Null: they lack none, or the supply was recorded, by which the time tells it better.
 */
export function lacksOwnEnd(context: FindingContext, { part, by }: TravelMade): number | null {
  const { state, event, direction } = context;
  const { travel } = state;
  const own = travel[direction];
  const isBack =
    travel.direction === otherWay(direction) && event.atMs - travel.atMs < SAME_SUPPLY_HOURS * 3_600_000;
  const lacks = by === 'time' || !isBack ? null : missingEnd(context, PROBED_PART);
  if (lacks === null) return null;
  const shorter = Math.log(timeOfTheWayBefore(context) / part);
  own.ends = [...own.ends, { lacks: direction === 'extend' ? lacks : -lacks, shorter }].slice(-OWN.strokes);
  const lacking = mean(own.ends.map((end) => end.lacks));
  const usual = median(own.ends.map((end) => end.shorter));
  const isLacking =
    own.saidOf !== null
      ? lacking > STILL.mean && usual > STILL.shorter
      : own.ends.length === OWN.strokes &&
        lacking > OWN.mean &&
        own.ends.every((end) => end.lacks > OWN.each && end.shorter > OWN.shorter);
  return isLacking ? usual : null;
}

/**
 * The part of its usual time that the way before took: what a load that only that way feels made it longer by is no measure of
 * this one.
 */
function timeOfTheWayBefore({ state, direction }: FindingContext): number {
  const { part } = state.travel;
  const isSlowed = openOf(state, 'rising-draw').some((open) => open.direction === otherWay(direction));
  return isSlowed ? Math.min(1, part) : part;
}
