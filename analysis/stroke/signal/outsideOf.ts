import { firstAtOrAfter, type Interval } from './interval.ts';

/** The values from `fromS` up to `toS` whose times lie in none of the `intervals`, which come in order and do not overlap. */
export function outsideOf(
  timesS: Float64Array,
  values: Float64Array,
  { fromS, toS }: Interval,
  intervals: readonly Interval[],
): Float64Array {
  const first = firstAtOrAfter(timesS, fromS);
  const end = firstAtOrAfter(timesS, toS);
  if (intervals.length === 0) return values.subarray(first, end);
  const kept = new Float64Array(Math.max(0, end - first));
  let count = 0;
  let from = first;
  for (const interval of [...intervals, { fromS: toS, toS }]) {
    const part = values.subarray(from, Math.min(end, firstAtOrAfter(timesS, interval.fromS)));
    kept.set(part, count);
    count += part.length;
    from = Math.max(from, firstAtOrAfter(timesS, interval.toS));
  }
  return kept.subarray(0, count);
}
