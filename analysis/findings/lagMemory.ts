/** The lag between the sides over the latest strokes, against its normal. */
export interface LagMemory {
  up: number;
  upRun: number;
  down: number;
  downRun: number;
  shifts: number[];
  /** Strokes in a row, since work that changes the mechanism, of which both sides were switched off together; counts no further than is asked. */
  together: number;
}

export function beginLagMemory(): LagMemory {
  return { up: 0, upRun: 0, down: 0, downRun: 0, shifts: [], together: 0 };
}
