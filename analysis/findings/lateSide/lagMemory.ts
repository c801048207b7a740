import { beginShiftCharts, type ShiftCharts } from '../charts/shiftMemory.ts';

/** The lag between the sides over the latest strokes, against its normal. */
export interface LagMemory extends ShiftCharts {
  /**
   * Strokes on which both sides were switched off together, since the last work on the mechanism; counted only as far
   * as is asked for.
   */
  together: number;
  /**
   * Mean lag of the first of those strokes, seconds, and their number: one side's switch may open a little sooner than
   * the other's.
   */
  apart: { readonly meanS: number; readonly strokes: number };
}

/** Before the first stroke on which both sides were switched off together. */
export const NOT_APART = { meanS: 0, strokes: 0 };

/** No stroke yet. */
export function beginLagMemory(): LagMemory {
  return { ...beginShiftCharts(), together: 0, apart: NOT_APART };
}
