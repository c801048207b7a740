import { emptyLoadTable, type LoadTable } from './loadTable.ts';

/** Seconds between two steps of the simulation. */
export const STEP_S = 0.005;

/** What a stroke leaves behind, step by step, kept for use again by the next stroke. */
export interface Tape {
  readonly longestSteps: number;
  steps: number;
  /** In the motors' leads, always positive, by side. */
  readonly motorAmps: readonly Float64Array[];
  /** In the controller's feed of each motor, by side. */
  readonly feedAmps: readonly Float64Array[];
  /** At the controller. */
  readonly volts: Float64Array;
  /** Where each side of the room stands at the end, 0 retracted. */
  readonly endPosition: Float64Array;
  readonly endWindingC: Float64Array;
  /** Position of each side of the room at each step. */
  readonly positions: readonly Float64Array[];
  readonly tables: readonly LoadTable[];
}

export function emptyTape(sides: number, longestS: number): Tape {
  const longestSteps = Math.ceil(longestS / STEP_S);
  const bySide = () => Array.from({ length: sides }, () => new Float64Array(longestSteps));
  return {
    longestSteps,
    steps: 0,
    motorAmps: bySide(),
    feedAmps: bySide(),
    volts: new Float64Array(longestSteps),
    endPosition: new Float64Array(sides),
    endWindingC: new Float64Array(sides),
    positions: bySide(),
    tables: Array.from({ length: sides }, emptyLoadTable),
  };
}
