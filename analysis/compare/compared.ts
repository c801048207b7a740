import type { StrokeEvent } from '../history.ts';
import type { DoneAnalysis } from '../measures.ts';
import type { Direction } from '../trace.ts';
import type { ProfileBand } from './profileBand.ts';

/** A stroke that counts on either side of the work. */
export interface ComparedStroke {
  readonly event: StrokeEvent;
  readonly analysis: DoneAnalysis;
}

/** After less before in the measure's unit, with a 95 % interval; nulls where there are too few strokes for an answer. */
export interface MeasureShift {
  readonly measure: string;
  readonly unit: string;
  readonly before: number | null;
  readonly after: number | null;
  readonly shift: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly excludesZero: boolean;
}

/** A stretch of travel, 0 to 1, whose current changed, and by how much on average (after less before, amperes). */
export interface ChangedRange {
  readonly from: number;
  readonly to: number;
  readonly shiftAmps: number;
}

/** One side in one direction, before against after. */
export interface ComparedGroup {
  readonly side: string;
  readonly direction: Direction;
  readonly strokesBefore: number;
  readonly strokesAfter: number;
  readonly shifts: MeasureShift[];
  /** The running current's shift is no chance among all sides and directions of the room; `excludesZero` is of each by itself. */
  readonly levelIsSure: boolean;
  readonly changedBins: ChangedRange[];
  readonly profileBefore: (number | null)[];
  readonly profileAfter: (number | null)[];
  /** Between which the strokes lie. */
  readonly bandBefore: ProfileBand;
  readonly bandAfter: ProfileBand;
}
