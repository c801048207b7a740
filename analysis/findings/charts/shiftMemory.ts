import { DIRECTIONS, type Direction } from '../../trace.ts';

/** Tabular CUSUMs (E. S. Page, 1954) of what compares two sides against its normal, both ways; the latest moves, oldest first. */
export interface ShiftChart {
  up: number;
  upRun: number;
  down: number;
  downRun: number;
  shifts: number[];
}

/** Of all strokes, and of each direction by itself, for what only one of them feels. */
export interface ShiftCharts {
  all: ShiftChart;
  ways: Record<Direction, ShiftChart>;
}

/** Charts that have seen no stroke. */
export function beginShiftCharts(): ShiftCharts {
  const [extend, retract] = DIRECTIONS.map(beginShiftChart);
  return { all: beginShiftChart(), ways: { extend, retract } };
}

function beginShiftChart(): ShiftChart {
  return { up: 0, upRun: 0, down: 0, downRun: 0, shifts: [] };
}
