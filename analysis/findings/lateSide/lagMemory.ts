import { beginShiftCharts, type ShiftCharts } from '../charts/shiftMemory.ts';

/** The lag between the sides over the latest strokes, against its normal. */
export interface LagMemory extends ShiftCharts {
  /** Strokes in a row, since work that changes the mechanism, of which both sides were switched off together; counts no further than is asked. */
  together: number;
}

export function beginLagMemory(): LagMemory {
  return { ...beginShiftCharts(), together: 0 };
}
