import { median } from '../../statistics/median.ts';
import { DIRECTIONS, type Direction, otherWay } from '../../trace.ts';
import { LEAST_RUN } from '../charts/chartDesign.ts';
import { type ChartDesign, chartStep } from '../charts/chartStep.ts';
import type { FindingContext } from '../finding.ts';
import { mayBeThePlace } from '../stay.ts';
import { latestOneWay, type SideLoad } from './loadMemory.ts';

/**
 * Least reference value and decision interval, natural logarithm, for what only one direction feels, by the strokes of that
 * direction alone, less what the other one draws more as well. Guesses, no source.
 */
export const ONE_WAY = { kLeast: 0.09, hLeast: 0.11 };
/** More than a slope that a coach stands on does to one direction: then one stay is enough to tell. A guess, no source. */
const PLACE_ONE_WAY = 0.2;
/** What unrecorded weather does to one direction and not to the other, as a part of what it does. A guess, no source. */
export const WEATHER_OF_ONE_WAY = 0.4;
/** The other direction is as ever: it fell by no more than this part of the rise. A guess, no source. */
const OTHER_WAY_FELL = 0.25;

/**
 * Takes the stroke into the chart of its own direction, and tells whether the side draws more in that direction alone: a slope
 * takes off the other direction what it adds here, and weather adds to both. Where no rest tells the sensor's zero, a zero that
 * jumped reads so too: then the strokes must take longer as well.
 */
export function hasRisenOneWay(
  context: FindingContext,
  side: string,
  rise: number,
  { k, h }: ChartDesign,
): boolean {
  const { state, direction, analysis } = context;
  const load = state.load.sides[side];
  const own = load.oneWay[direction];
  const back = latestOneWay(load, otherWay(direction)) ?? 0;
  const alone = rise - Math.max(0, back);
  [own.sum, own.run] = chartStep(own.sum, own.run, Math.min(alone, k + h / 2), { k, h });
  if (!(alone > k && own.sum > h && own.run >= LEAST_RUN) || back < -OTHER_WAY_FELL * rise) return false;
  if (isByPlace(context, load)) return false;
  const slower = context.residual(side, 'durationS');
  const isSlower = slower !== null && slower.rise > slower.deviation;
  return analysis.sides[side].offsetAmps !== null || isSlower;
}

/** Whether the ground that the coach stands on may be all of it: every other stroke of a stay is of this direction. */
function isByPlace({ state: { stay }, direction }: FindingContext, load: SideLoad): boolean {
  const strokes = Math.ceil((stay.strokes - stay.parts) / DIRECTIONS.length);
  const rise = latestOneWay(load, direction) ?? 0;
  return mayBeThePlace({ strokes }, load.oneWay[direction].run) && rise < PLACE_ONE_WAY;
}

/** A rise of the way back by less than this part of the way's own is none of both. A guess, no source. */
const BOTH_WAYS = 0.3;

/** Whether what one direction draws more is its own: the way back rose by hardly any of it, or was not recorded. */
export function isAsEverBack(load: SideLoad, direction: Direction): boolean {
  const back = latestOneWay(load, otherWay(direction));
  return back === null || back < BOTH_WAYS * (latestOneWay(load, direction) ?? 0);
}

/** Each direction's part of the rise is at least so much of the whole. */
const LEAST_EACH_WAY = 0.4;

/**
 * Whether the latest rise shows in both directions. A sensor whose zero jumped, in a record without any rest to tell
 * it by, reads more one way and less the other: a room that draws more does so both ways.
 */
export function isBothWays(usable: Readonly<Record<Direction, number>>, load: SideLoad): boolean {
  const latest = load.rises.slice(-load.run);
  const least = LEAST_EACH_WAY * median(latest);
  return DIRECTIONS.every((direction) => {
    const own = latest.filter((_, i) => load.ways[load.ways.length - latest.length + i] === direction);
    return own.length > 0 ? median(own) >= least : usable[direction] === 0;
  });
}
