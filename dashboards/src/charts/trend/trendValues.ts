import type { Trend } from '../../api/types.ts';

export type TrendScale = 'adjusted' | 'measured';

/** What one point is drawn at: adjusted where the room's normal allows it, else as measured. */
export function shownValue(point: Trend['points'][number], scale: TrendScale): number {
  return scale === 'adjusted' ? (point.adjusted ?? point.value) : point.value;
}

/** Lowest and highest value that a picture of this trend shows; null where there is none. */
export function trendExtent(trend: Trend, scale: TrendScale): readonly [number, number] | null {
  const shown = trend.points.map((p) => shownValue(p, scale));
  const around =
    scale === 'measured'
      ? trend.points.flatMap((p) => p.expected ?? [])
      : trend.limits === null
        ? []
        : [
            trend.limits.lower,
            trend.limits.upper,
            ...(trend.forecast === null ? [] : [trend.forecast.serviceLine]),
          ];
  const values = shown.concat(around);
  if (values.length === 0) return null;
  return values.reduce<[number, number]>(
    ([low, high], v) => [Math.min(low, v), Math.max(high, v)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
}
