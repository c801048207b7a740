import type { SpanComparison } from '../../../analysis/compare/compareSpans.ts';
import type { StrokeEvent } from '../../../analysis/history.ts';
import type { RoomDescription } from '../../../analysis/trace.ts';

export interface ToCompareThread {
  readonly before: readonly StrokeEvent[];
  readonly after: readonly StrokeEvent[];
  readonly room: RoomDescription;
}

/** In the order of what was asked. */
export type FromCompareThread = { readonly comparison: SpanComparison } | { readonly failure: unknown };
