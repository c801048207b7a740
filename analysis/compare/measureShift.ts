import { PRIORS } from '../baseline/priors.ts';
import { fromScale, toScale } from '../baseline/scale.ts';
import type { MEASURES } from '../measures.ts';
import { hodgesLehmann } from '../statistics/hodgesLehmann.ts';
import { median } from '../statistics/median.ts';
import { normalUpperQuantile } from '../statistics/normalQuantile.ts';
import { studentTUpperQuantile } from '../statistics/studentT.ts';
import type { AtReference } from './atReference.ts';
import type { MeasureShift } from './compared.ts';

const CONFIDENCE = 0.95;
type Measure = (typeof MEASURES)[number];

/**
 * Shift of one measure. Median of all differences (Hodges and Lehmann, 1963) on the measure's scale; its exact rank
 * interval where it reaches 95 %, else Student's t about it with the pooled spread shrunk towards the spread usual
 * for such rooms (as many observations' worth as the prior says), so that two strokes cannot pretend to be sure. What
 * is not known of how the room follows weather and supply widens it as far as the spans differ in them. Nulls where
 * there are not strokes enough, altogether or on either side of this shift.
 */
export function shiftOf(
  measure: Measure,
  { before: earlier, after: later, unsure }: AtReference,
  isEnough: boolean,
): MeasureShift {
  const { name, unit } = measure;
  const levels = {
    before: earlier.length > 0 ? fromScale(name, median(earlier)) : null,
    after: later.length > 0 ? fromScale(name, median(later)) : null,
  };
  const ranked = hodgesLehmann(later, earlier, CONFIDENCE);
  if (ranked === null || !isEnough || levels.before === null) {
    return { measure: name, unit, ...levels, shift: null, lower: null, upper: null, excludesZero: false };
  }
  const half = studentHalfWidth(name, earlier, later);
  const exact = ranked.confidence >= CONFIDENCE;
  const open = normalUpperQuantile((1 - CONFIDENCE) / 2) * unsure;
  const lower = ranked.shift - Math.hypot(exact ? ranked.shift - ranked.lower : half, open);
  const upper = ranked.shift + Math.hypot(exact ? ranked.upper - ranked.shift : half, open);
  const base = toScale(name, levels.before);
  const inUnit = (shift: number) => fromScale(name, base + shift) - fromScale(name, base);
  return {
    measure: name,
    unit,
    ...levels,
    shift: inUnit(ranked.shift),
    lower: inUnit(lower),
    upper: inUnit(upper),
    excludesZero: lower > 0 || upper < 0,
  };
}

function studentHalfWidth(name: Measure['name'], x: readonly number[], y: readonly number[]): number {
  const { scale, scaleWeight } = PRIORS[name];
  const squares = squaresAboutMean(x) + squaresAboutMean(y);
  const degreesOfFreedom = scaleWeight + x.length + y.length - 2;
  const spread = Math.sqrt((scaleWeight * scale ** 2 + squares) / degreesOfFreedom);
  const quantile = studentTUpperQuantile((1 - CONFIDENCE) / 2, degreesOfFreedom);
  return quantile * spread * Math.sqrt(1 / x.length + 1 / y.length);
}

function squaresAboutMean(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}
