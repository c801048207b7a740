import type { Trend } from '../../api/types.ts';
import { endOfForecast, forecastLine } from './forecastLine.ts';
import { type TrendScale, trendExtent } from './trendValues.ts';

/** What pictures of trends show: so much up and down, in the measure's unit, and from when to when, seconds since 1970. */
export interface TrendFrame {
  readonly values: readonly [lowest: number, highest: number];
  readonly times: readonly [first: number, last: number];
}

/** What a picture of this trend must have room for: strokes, work, normal and forecast. Null where there is nothing. */
export function frameOfTrend(trend: Trend, scale: TrendScale): TrendFrame | null {
  const values = trendExtent(trend, scale);
  if (values === null) return null;
  const times = [...trend.points, ...trend.services].map(({ at }) => Date.parse(at) / 1000);
  const [first, last] = spanOf(times);
  const forecast = scale === 'adjusted' ? forecastLine(trend) : null;
  return {
    values,
    times: [first, forecast === null ? last : Math.max(last, endOfForecast(forecast, first))],
  };
}

/** The one frame that holds all of them, so that sides can be compared by eye; null where there is none. */
export function frameOfAll(frames: readonly TrendFrame[]): TrendFrame | null {
  if (frames.length === 0) return null;
  return {
    values: spanOf(frames.flatMap((frame) => frame.values)),
    times: spanOf(frames.flatMap((frame) => frame.times)),
  };
}

export const isSameFrame = (one: TrendFrame, other: TrendFrame): boolean =>
  [...one.values, ...one.times].every((part, i) => part === [...other.values, ...other.times][i]);

const spanOf = (numbers: readonly number[]): [number, number] =>
  numbers.reduce<[number, number]>(
    ([low, high], n) => [Math.min(low, n), Math.max(high, n)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
