import { median } from '../../statistics/median.ts';
import { DIRECTIONS, type Direction, otherWay } from '../../trace.ts';
import { LEAST_RUN } from '../charts/chartDesign.ts';
import { type ChartDesign, chartStep } from '../charts/chartStep.ts';
import type { FindingContext } from '../finding.ts';
import { mayBeThePlace } from '../stay.ts';
import { latestOneWay, type SideLoad } from './loadMemory.ts';

/**
 * Least reference value and decision interval, natural logarithm, of the chart for a rise in one direction only. It
 * takes the strokes of that direction alone, less what the other direction draws more as well. Guesses, no source.
 */
export const ONE_WAY = { kLeast: 0.09, hLeast: 0.11 };
/**
 * A larger rise than this is more than sloping ground does to one direction, so that one stay is enough to tell. A
 * guess, no source.
 */
const PLACE_ONE_WAY = 0.2;
/** The part of its effect that unrecorded weather has on one direction and not on the other. A guess, no source. */
export const WEATHER_OF_ONE_WAY = 0.4;
/** The other direction counts as unchanged if it fell by no more than this part of the rise. A guess, no source. */
const OTHER_WAY_FELL = 0.25;

/**
 * Takes the stroke into the chart of its own direction, and answers whether the side draws more in that direction
 * alone. A slope would take off the other direction what it adds here, and weather would add to both. Where no rest
 * tells the sensor's zero, a zero that jumped looks the same: then the strokes must take longer as well.
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

/**
 * Whether the ground that the coach stands on may explain all of it. About half of a stay's strokes are of this
 * direction.
 */
function isByPlace({ state: { stay }, direction }: FindingContext, load: SideLoad): boolean {
  const strokes = Math.ceil((stay.strokes - stay.parts) / DIRECTIONS.length);
  const rise = latestOneWay(load, direction) ?? 0;
  return mayBeThePlace({ strokes }, load.oneWay[direction].run) && rise < PLACE_ONE_WAY;
}

/**
 * If the other direction rose by less than this part of this one's rise, the rise is not of both. A guess, no source.
 */
const BOTH_WAYS = 0.3;

/** Whether a rise is of one direction only: the other rose by hardly any of it, or was not recorded. */
export function isAsEverBack(load: SideLoad, direction: Direction): boolean {
  const back = latestOneWay(load, otherWay(direction));
  return back === null || back < BOTH_WAYS * (latestOneWay(load, direction) ?? 0);
}

/** Each direction shows at least this part of the whole rise. */
const LEAST_EACH_WAY = 0.4;

/**
 * Whether the latest rise shows in both directions. A room that draws more does so in both, while a sensor whose zero
 * jumped, in records without a rest to tell it by, reads more in one direction and less in the other. `usable`: strokes
 * by direction.
 */
export function isBothWays(usable: Readonly<Record<Direction, number>>, load: SideLoad): boolean {
  const latest = load.rises.slice(-load.run);
  const least = LEAST_EACH_WAY * median(latest);
  return DIRECTIONS.every((direction) => {
    const own = latest.filter((_, i) => load.ways[load.ways.length - latest.length + i] === direction);
    return own.length > 0 ? median(own) >= least : usable[direction] === 0;
  });
}
