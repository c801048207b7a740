import type { TrendOutline } from './trendOutline.ts';

/** The newest are kept whole, for the table beside the picture. */
const KEPT_WHOLE = 200;

/**
 * When the points were made that a trend of about `most` keeps. It keeps the newest; of those before them the lowest and the
 * highest of each stretch (the earlier of equals), the stretches as many as leave room for two of each; and whatever lies beyond
 * the limits, however much that is.
 */
export function timesToKeep(outline: TrendOutline, most: number): ReadonlySet<bigint> {
  const { count } = outline;
  const kept = new Set(outline.timesBeyond());
  const whole = Math.min(count, KEPT_WHOLE, Math.floor(most / 2));
  const older = count - whole;
  const stretches = Math.max(1, Math.floor((most - whole) / 2));
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = Math.ceil((stretch * older) / stretches);
    const to = Math.ceil(((stretch + 1) * older) / stretches);
    let [lowest, highest] = [from, from];
    for (let point = from + 1; point < to; point++) {
      if (outline.shown(point) < outline.shown(lowest)) lowest = point;
      if (outline.shown(point) > outline.shown(highest)) highest = point;
    }
    kept.add(outline.time(lowest)).add(outline.time(highest));
  }
  for (let point = older; point < count; point++) kept.add(outline.time(point));
  return kept;
}
