import type { Direction } from '../../trace.ts';

/** Rises of one side's running current and stall currents over the latest strokes, natural logarithm. */
export interface ScaleMemory {
  running: number[];
  /** Which way each of these went. */
  ways: Direction[];
  inrush: number[];
  endStop: number[];
  /** How much longer they took than expected. */
  duration: number[];
}

/** How many of the latest strokes are kept. */
export const SCALE_STROKES = 3;

export function beginScaleMemory(): ScaleMemory {
  return { running: [], ways: [], inrush: [], endStop: [], duration: [] };
}
