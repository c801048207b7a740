import { cusumStep } from '../statistics/cusum.ts';
import type { Direction } from '../trace.ts';
import { beginComings, type Comings } from './comesBack.ts';
import type { PartsMade } from './movementLoad.ts';
import { beginShiftCharts, type ShiftCharts } from './shiftMemory.ts';

/** One side's running current over its latest strokes, both directions together, against the baseline. */
export interface SideLoad {
  /** Tabular CUSUM of the rise, natural logarithm. */
  sum: number;
  /** Strokes in a row for which the sum stood above zero. */
  run: number;
  /** The same of each direction by itself, for what only one of them feels. */
  oneWay: Record<Direction, { sum: number; run: number }>;
  /** The latest rises, oldest first, and the direction of each. */
  rises: number[];
  ways: Direction[];
  /** The same rises with nothing taken off for weather that nobody recorded. */
  raw: number[];
  /** What a season that nobody recorded seems to add, natural logarithm. */
  season: number;
  /** Standard deviation of the latest. */
  deviation: number;
  /** At how many moments of a stroke it drew next to nothing as long as that was no trouble: its controller lets it wait. */
  waits: number;
}

/** The share of the first side against its baseline, both ways. */
export interface ShareLoad extends ShiftCharts {
  deviation: number;
}

export interface LoadMemory {
  sides: Record<string, SideLoad>;
  /** What was said of a rise. */
  risings: Comings;
  share: ShareLoad;
  /** The parts of a movement under way; null: none is. */
  made: PartsMade | null;
}

/** How many of the latest strokes are kept. */
const KEPT = 6;

export function beginLoadMemory(sides: readonly string[]): LoadMemory {
  return {
    sides: Object.fromEntries(
      sides.map((side) => [
        side,
        {
          sum: 0,
          run: 0,
          oneWay: beginOneWay(),
          rises: [],
          ways: [],
          raw: [],
          season: 0,
          deviation: 0,
          waits: 0,
        },
      ]),
    ),
    risings: beginComings(),
    share: { ...beginShiftCharts(), deviation: 0 },
    made: null,
  };
}

export function beginOneWay(): SideLoad['oneWay'] {
  return { extend: { sum: 0, run: 0 }, retract: { sum: 0, run: 0 } };
}

export function keepLatest<Value>(values: Value[], value: Value): void {
  values.push(value);
  if (values.length > KEPT) values.shift();
}

/** One step of a one-sided tabular CUSUM (E. S. Page, 1954) with the length of its run, held below three times h. */
export function step(sum: number, run: number, deviation: number, k: number, h: number): [number, number] {
  const next = Math.min(3 * h, cusumStep(sum, deviation, k));
  return [next, next > 0 ? run + 1 : 0];
}
