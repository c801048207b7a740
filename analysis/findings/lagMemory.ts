import { DIRECTIONS, type Direction } from '../trace.ts';

/** Tabular CUSUMs of the lag between the sides against its normal, both ways, and the latest shifts, oldest first. */
export interface LagChart {
  up: number;
  upRun: number;
  down: number;
  downRun: number;
  shifts: number[];
}

export interface LagMemory {
  /** Of all strokes, and of each direction by itself, for what only one of them feels. */
  all: LagChart;
  ways: Record<Direction, LagChart>;
  /** Strokes in a row, since work that changes the mechanism, of which both sides were switched off together; counts no further than is asked. */
  together: number;
}

export function beginLagMemory(): LagMemory {
  const [extend, retract] = DIRECTIONS.map(beginLagChart);
  return { all: beginLagChart(), ways: { extend, retract }, together: 0 };
}

function beginLagChart(): LagChart {
  return { up: 0, upRun: 0, down: 0, downRun: 0, shifts: [] };
}
