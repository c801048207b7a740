import { beginShiftCharts, type ShiftCharts } from '../charts/shiftMemory.ts';

/** The lag between the sides over the latest strokes, against its normal. */
export interface LagMemory extends ShiftCharts {
  /** Strokes in a row, since work that changes the mechanism, of which both sides were switched off together; counts no further than is asked. */
  together: number;
  /** Mean lag of the first of those, seconds, and of how many strokes: one side's switch may end it sooner than the other's. */
  apart: { readonly meanS: number; readonly strokes: number };
}

/** No stroke was seen yet of which both sides were switched off together. */
export const NOT_APART = { meanS: 0, strokes: 0 };

/** No stroke yet. */
export function beginLagMemory(): LagMemory {
  return { ...beginShiftCharts(), together: 0, apart: NOT_APART };
}
