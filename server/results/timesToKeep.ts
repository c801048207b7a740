import type { TrendOutline } from './trendOutline.ts';

/** The newest are kept whole, for the table beside the picture. */
const KEPT_WHOLE = 200;

/**
 * When the points were made that a trend of about `most` keeps: of half as many stretches the lowest and the highest
 * of each, the earlier of equals; whatever lies beyond the limits, however much that is; and the newest.
 */
export function timesToKeep(outline: TrendOutline, most: number): ReadonlySet<bigint> {
  const { count } = outline;
  const kept = new Set(outline.timesBeyond());
  const stretches = Math.max(1, Math.floor(most / 2));
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = Math.ceil((stretch * count) / stretches);
    const to = Math.ceil(((stretch + 1) * count) / stretches);
    let [lowest, highest] = [from, from];
    for (let point = from + 1; point < to; point++) {
      if (outline.shown(point) < outline.shown(lowest)) lowest = point;
      if (outline.shown(point) > outline.shown(highest)) highest = point;
    }
    kept.add(outline.time(lowest)).add(outline.time(highest));
  }
  for (let point = Math.max(0, count - KEPT_WHOLE); point < count; point++) kept.add(outline.time(point));
  return kept;
}
