/** The lag between the sides over the latest strokes, against its normal. */
export interface LagMemory {
  up: number;
  upRun: number;
  down: number;
  downRun: number;
  shifts: number[];
}

export function beginLagMemory(): LagMemory {
  return { up: 0, upRun: 0, down: 0, downRun: 0, shifts: [] };
}
