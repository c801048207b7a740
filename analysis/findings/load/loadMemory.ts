import { median } from '../../statistics/median.ts';
import type { Direction } from '../../trace.ts';
import { restShifts } from '../charts/shiftChart.ts';
import { beginShiftCharts, type ShiftCharts } from '../charts/shiftMemory.ts';
import { beginComings, type Comings } from '../comesBack.ts';
import { beginLastingRise, type LastingRise } from './lastingRise.ts';

/** One side's running current over its latest strokes, both directions together, against the baseline. */
export interface SideLoad {
  /** Tabular CUSUM of the rise, natural logarithm. */
  sum: number;
  /** Strokes in a row for which the sum stood above zero. */
  run: number;
  /** The same for each direction by itself, for a rise that shows in one of them only. */
  oneWay: Record<Direction, { sum: number; run: number }>;
  /** The latest rises, oldest first, and the direction of each. */
  rises: number[];
  ways: Direction[];
  /** The same rises with nothing taken off for weather that nobody recorded. */
  raw: number[];
  /** Their sum over the strokes since the share began to move, the latest of `LoadMemory.moving`. */
  sinceMoving: number;
  /** The mean rise over many strokes whose weather nobody recorded. */
  lasting: LastingRise;
  /** What a season that nobody recorded seems to add, natural logarithm. */
  season: number;
  /** Standard deviation of the latest rise. */
  deviation: number;
  /** How many times a stroke it usually draws next to nothing for a moment, because its controller makes it wait. */
  waits: number;
}

/** The share of the first side against its baseline, in both directions. */
export interface ShareLoad extends ShiftCharts {
  deviation: number;
}

/** The parts of one movement so far, and how much more than its normal each side drew on them. */
export interface PartsMade {
  readonly direction: Direction;
  /** Of the latest part, milliseconds since 1970. */
  readonly atMs: number;
  /** Their lengths together, in parts of the usual time of a whole movement. */
  readonly length: number;
  /** By side: the sum over the parts of rise, natural logarithm, times length. */
  readonly rises: Readonly<Record<string, number>>;
}

/** What is remembered of how the load stands. */
export interface LoadMemory {
  sides: Record<string, SideLoad>;
  /** How a `rising-draw` warning has come and gone. */
  risings: Comings;
  share: ShareLoad;
  /** Strokes with both sides since the share began to move; 0: it has not moved. */
  moving: number;
  /** The parts of a movement under way; null: none is. */
  made: PartsMade | null;
}

/** No stroke yet; `sides`: of the room. */
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
          sinceMoving: 0,
          lasting: beginLastingRise(),
          season: 0,
          deviation: 0,
          waits: 0,
        },
      ]),
    ),
    risings: beginComings(),
    share: { ...beginShiftCharts(), deviation: 0 },
    moving: 0,
    made: null,
  };
}

/** No rise of either direction by itself. */
function beginOneWay(): SideLoad['oneWay'] {
  return { extend: { sum: 0, run: 0 }, retract: { sum: 0, run: 0 } };
}

/** The latest rises of one direction, oldest first. */
export function latestOf(load: SideLoad, direction: Direction): number[] {
  return load.rises.filter((_, i) => load.ways[i] === direction);
}

/** Median of the latest rises of one direction, natural logarithm; null: there are none. */
export function latestOneWay(load: SideLoad, direction: Direction): number | null {
  const latest = latestOf(load, direction);
  return latest.length === 0 ? null : median(latest);
}

/** Forgets the sums, as after a service or when a warning is cleared. */
export function restLoad(memory: LoadMemory): void {
  for (const load of Object.values(memory.sides)) {
    load.sum = 0;
    load.run = 0;
    load.oneWay = beginOneWay();
    load.rises = [];
    load.ways = [];
    load.raw = [];
    load.lasting = beginLastingRise();
  }
  memory.moving = 0;
  restShifts(memory.share);
}
