import { measureStroke } from '../../../../analysis/measureStroke.ts';
import type { DoneAnalysis, SideMeasures } from '../../../../analysis/measures.ts';
import type { Direction, RoomDescription, SupplyTrace } from '../../../../analysis/trace.ts';
import { ONE_MOTOR, type Shape, sideOf, traceOf } from './handMade.ts';

export function done(analysis: ReturnType<typeof measureStroke>): DoneAnalysis {
  if (analysis.status !== 'done') throw new Error(`Not measured: ${analysis.reason}`);
  return analysis;
}

/** Measures one hand-made side of a room with one motor. */
export function measureShape(
  changes: Partial<Shape> = {},
  {
    direction = 'extend',
    supply = null,
    room = ONE_MOTOR,
    times,
  }: {
    readonly direction?: Direction;
    readonly supply?: SupplyTrace | null;
    readonly room?: RoomDescription;
    readonly times?: Float64Array;
  } = {},
): SideMeasures {
  const trace = traceOf([sideOf('main', changes, times)], direction, supply);
  return done(measureStroke(trace, room)).sides.main;
}

/** The numbers in a value, wherever they stand, that are no finite ones. */
export function endlessIn(value: unknown): number[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(endlessIn);
}
