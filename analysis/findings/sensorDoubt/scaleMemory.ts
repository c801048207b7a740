import type { Direction } from '../../trace.ts';

/** By how much the currents at both ends of one stroke rose, natural logarithm. */
export interface EndsOfStroke {
  readonly start: number;
  readonly stop: number;
}

/** Rises of one side's running current and stall currents over the latest strokes, natural logarithm. */
export interface ScaleMemory {
  running: number[];
  /** The direction of each of these. */
  ways: Direction[];
  inrush: number[];
  endStop: number[];
  /**
   * How much start and stop rose, by direction, over some more of the latest strokes: those on which both were read.
   */
  ends: Record<Direction, EndsOfStroke[]>;
  /** Standard deviation of the latest start; null: none was judged. */
  startDeviation: number | null;
  /** How much longer they took than expected. */
  duration: number[];
}

/** How many of the latest strokes are kept. */
export const SCALE_STROKES = 3;
/** How many starts and stops are kept for each direction: more, because a start is read far worse than a stop. */
export const ENDS_STROKES = 8;

/** No stroke yet. */
export function beginScaleMemory(): ScaleMemory {
  return {
    running: [],
    ways: [],
    inrush: [],
    endStop: [],
    ends: { extend: [], retract: [] },
    startDeviation: null,
    duration: [],
  };
}
