import { findRoot } from '../statistics/findRoot.ts';
import { mannKendall } from '../statistics/mannKendall.ts';
import { normalUpperTail } from '../statistics/normalDistribution.ts';
import { addedBy, type Rise, weighCourses } from './courses.ts';

/** When a rise reaches a line. */
export interface Forecast {
  /** Strokes from the latest one until the expected value has as likely as not reached the line. */
  readonly strokes: number;
  /** The 80 % interval; `upper` null: further off than anybody plans, if ever. */
  readonly lower: number;
  readonly upper: number | null;
  /** Expected rise for each stroke from now on, natural logarithm. */
  readonly perStroke: number;
}

/** Fewer strokes tell no trend from a stay at one place: a guess, no source. */
const FEWEST_STROKES = 16;
/** Two-sided: what may pass for a trend by chance. */
const TREND_PROBABILITY = 0.01;
/** A rise that goes on is to be likelier than a level that stayed and one that only stepped together. */
const RISE_PROBABILITY = 0.5;
const COVERAGE = 0.8;
/** Further off than this nobody plans, and the line will have bent. */
const FARTHEST_STROKES = 400;
/** Relative, of what is told in tenths of strokes. */
const TOLERANCE = 1e-4;

/**
 * When a rise will reach a line, with an 80 % interval; null unless a rise is established (Mann and Kendall, p below 0.01, at
 * least 16 strokes, and likelier than the other courses of `weighCourses`) and the line lies ahead within 400 strokes.
 *
 * `levels`: natural logarithm of the value over its normal, oldest first, one a stroke, no gaps; strokes from before the rise
 * began belong to them, for it is not known when that was. The interval is Bayesian: the tenth and ninetieth percentiles of
 * the stroke at which the line is reached, over all onsets, bends, slopes, levels, spreads and memories that the strokes leave open.
 * A line drawn through the quiet strokes as well would be too flat, and tell of too many strokes to come. Of simulated rises after
 * a quiet stretch, straight ones and such as bend up, the interval holds four in five.
 */
export function strokesToLine(levels: ArrayLike<number>, line: number): Forecast | null {
  if (levels.length < FEWEST_STROKES) return null;
  const trend = mannKendall(levels);
  if (trend === null || trend.s <= 0 || trend.p > TREND_PROBABILITY) return null;
  const { riseProbability, rises } = weighCourses(levels);
  if (riseProbability < RISE_PROBABILITY) return null;
  const latest = levels.length - 1;
  /** How likely the line is reached within so many strokes. */
  const reachedWithin = (strokes: number) =>
    rises.reduce((sum, rise) => sum + rise.weight * isReached(rise, latest + strokes, line), 0);
  const strokesUntil = (probability: number) => {
    if (reachedWithin(0) >= probability) return 0;
    if (reachedWithin(FARTHEST_STROKES) < probability) return null;
    return findRoot((strokes) => reachedWithin(strokes) - probability, 0, FARTHEST_STROKES, TOLERANCE);
  };
  const strokes = strokesUntil(0.5);
  const lower = strokesUntil((1 - COVERAGE) / 2);
  if (strokes === null || lower === null || strokes === 0) return null;
  return {
    strokes,
    lower,
    upper: strokesUntil((1 + COVERAGE) / 2),
    perStroke: rises.reduce((sum, { weight, sized, bend }) => sum + weight * bend * sized.size, 0),
  };
}

/** How likely a rise has brought the level to the line by this stroke. */
function isReached(rise: Rise, stroke: number, line: number): number {
  const { level, levelDeviation } = rise.sized;
  return normalUpperTail((line - level - addedBy(rise, stroke)) / levelDeviation);
}
