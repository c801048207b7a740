import type { StrokeEvent } from '../history.ts';
import type { DoneAnalysis } from '../measures.ts';
import type { Direction } from '../trace.ts';
import type { ChangedRange, ProfileBand } from './changedRanges.ts';
import type { MeasureShift } from './measureShift.ts';

/** A stroke that counts on either side of the work. */
export interface ComparedStroke {
  readonly event: StrokeEvent;
  readonly analysis: DoneAnalysis;
}

/** One side in one direction, before against after. */
export interface ComparedGroup {
  readonly side: string;
  readonly direction: Direction;
  readonly strokesBefore: number;
  readonly strokesAfter: number;
  readonly shifts: MeasureShift[];
  readonly changedBins: ChangedRange[];
  readonly profileBefore: (number | null)[];
  readonly profileAfter: (number | null)[];
  /** Between which the strokes lie. */
  readonly bandBefore: ProfileBand;
  readonly bandAfter: ProfileBand;
}
