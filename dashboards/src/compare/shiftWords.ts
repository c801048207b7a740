import type { ComparedShift } from '../api/types.ts';
import { roughly } from '../format.ts';
import { words } from '../words.ts';

/** Two digits: an interval is no surer than that. */
const size = (value: number, unit: string): string =>
  unit === '1'
    ? words.compare.points(roughly(Math.abs(value) * 100))
    : `${roughly(Math.abs(value))}\u00a0${unit}`;

const way = (value: number): string => (value < 0 ? words.compare.less : words.compare.more);

/** One measure's shift with its interval, in words; null where there were too few strokes to tell. */
export function shiftWords({ shift, lower, upper, unit, excludesZero }: ComparedShift): string | null {
  if (shift === null || lower === null || upper === null) return null;
  const say = words.compare;
  if (!excludesZero)
    return say.unsure(`${size(lower, unit)} ${way(lower)}`, `${size(upper, unit)} ${way(upper)}`);
  const [near, far] = [lower, upper].sort((a, b) => Math.abs(a) - Math.abs(b));
  return say.sure(`${size(shift, unit)} ${way(shift)}`, size(near, unit), size(far, unit));
}
