import { MEASURES, type MeasureName } from '../measures.ts';

const RATIOS: ReadonlySet<MeasureName> = new Set(
  MEASURES.filter((measure) => measure.scale === 'ratio').map((measure) => measure.name),
);

/** A ratio measure counts as no less than this, or its logarithm would run away. */
const SMALLEST = 1e-6;

/** A measure on the scale of its baseline: the natural logarithm of a ratio measure, a difference as it is. */
export function toScale(measure: MeasureName, value: number): number {
  return RATIOS.has(measure) ? Math.log(Math.max(SMALLEST, value)) : value;
}

/** The inverse of `toScale`. */
export function fromScale(measure: MeasureName, scaled: number): number {
  return RATIOS.has(measure) ? Math.exp(scaled) : scaled;
}
