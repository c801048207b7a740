import { fromScale, toScale } from '../baseline/scale.ts';
import type { MEASURES } from '../measures.ts';
import { median } from '../statistics/median.ts';
import type { AtReference } from './atReference.ts';
import type { MeasureShift } from './compared.ts';
import { CONFIDENCE, type StrokeSpread, shiftInterval } from './shiftInterval.ts';

type Measure = (typeof MEASURES)[number];

/**
 * Shift of one measure in its unit, with its 95 % interval. Nulls where there are not strokes enough, altogether or on
 * either side of this shift.
 */
export function shiftOf(
  measure: Measure,
  values: AtReference,
  spread: StrokeSpread,
  isEnough: boolean,
): MeasureShift {
  const { name, unit } = measure;
  const { before, after } = values;
  const levels = {
    before: before.length > 0 ? fromScale(name, median(before)) : null,
    after: after.length > 0 ? fromScale(name, median(after)) : null,
  };
  const interval = shiftInterval(values, spread, CONFIDENCE);
  if (interval === null || !isEnough || levels.before === null) {
    return { measure: name, unit, ...levels, shift: null, lower: null, upper: null, excludesZero: false };
  }
  const { shift, lower, upper } = interval;
  const base = toScale(name, levels.before);
  const inUnit = (scaled: number) => fromScale(name, base + scaled) - fromScale(name, base);
  return {
    measure: name,
    unit,
    ...levels,
    shift: inUnit(shift),
    lower: inUnit(lower),
    upper: inUnit(upper),
    excludesZero: lower > 0 || upper < 0,
  };
}
