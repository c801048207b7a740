import type { MeasureName } from '../measures.ts';
import type { Conditions } from './conditions.ts';

/** One measure of a stroke, to be compared with a baseline. */
export interface Reading {
  readonly measure: MeasureName;
  /** On the measure's scale. */
  readonly value: number;
  readonly conditions: Conditions;
  /** When the stroke was made, milliseconds since 1970. */
  readonly atMs: number;
  /**
   * What a zero that was not seen at rest may add, and the steps of a coarse sensor: a standard deviation on the same
   * scale.
   */
  readonly zero: number;
}
