import type { Direction, RoomDescription } from '../../../analysis/trace.ts';
import type { RecordedTrace } from '../../../ingest/stroke.ts';

export interface StrokeToMeasure {
  readonly recorded: RecordedTrace;
  readonly direction: Direction | null;
  readonly room: RoomDescription;
}

export interface ToMeasureThread {
  readonly number: number;
  readonly strokes: readonly StrokeToMeasure[];
}

/** `ready` comes once, first. */
export type FromMeasureThread =
  | 'ready'
  | {
      readonly number: number;
      /** In the order of the strokes, as JSON text; null: it could not be measured. */
      readonly analyses: readonly (string | null)[];
    };
