import type { MeasureName, StrokeAnalysis } from './measures.ts';
import type { Direction, ServiceKind } from './trace.ts';
import type { Verdict, Warning } from './warning.ts';

/** Milliseconds of a day: instants are milliseconds since 1970. */
export const DAY_MS = 86_400_000;

/** A measured stroke in its place in the room's history. */
export interface StrokeEvent {
  readonly type: 'stroke';
  readonly strokeId: string;
  /** Milliseconds since 1970. */
  readonly atMs: number;
  /** The date that was sent cannot be: `atMs` is when the stroke arrived. */
  readonly placedByArrival?: boolean;
  readonly direction: Direction | null;
  readonly ambientC: number | null;
  /** Set aside by a person: kept out of baselines and findings. */
  readonly excluded: boolean;
  readonly analysis: StrokeAnalysis;
}

/** Work done on the room. */
export interface ServiceEvent {
  readonly type: 'service';
  readonly serviceId: string;
  readonly atMs: number;
  readonly kind: ServiceKind;
  readonly side: string | null;
}

/** History is folded in order of `atMs`, then services before strokes, then id. */
export type RoomEvent = StrokeEvent | ServiceEvent;

/** What the baseline says of one measure of one side of one stroke. All on the measure's own unit. */
export interface Expectation {
  readonly side: string;
  readonly measure: MeasureName;
  readonly value: number;
  /** What the baseline predicts at this stroke's supply and temperature; null while learning. */
  readonly expected: number | null;
  /** The value brought to 12.6 V and 20 °C: by the room's own slopes, while learning by what is usual. */
  readonly adjusted: number;
  /** Outside the single-stroke limits; null while learning. */
  readonly beyond: boolean | null;
}

/** What the fold answers for one event. */
export interface Judgement {
  readonly expectations: readonly Expectation[];
  /** Warnings that opened, changed or cleared by this event, in full. */
  readonly warnings: readonly Warning[];
}

/** Limits of one measure on the adjusted scale (12.6 V, 20 °C). */
export interface Limits {
  readonly lower: number;
  readonly centre: number;
  readonly upper: number;
}

/** How much of the room's normal is that of other rooms of the same coach model. */
export interface Borrowed {
  /** Their weight in the level of the running current, 0 to 1: the mean of the sides and directions that moved. */
  readonly share: number;
  /** How many rooms lend. */
  readonly rooms: number;
}

/** What stands at the end of the history. */
export interface RoomSummary {
  readonly verdict: Verdict;
  readonly headline: string;
  /** Strokes that were usable and not excluded, each direction. */
  readonly usableStrokes: Readonly<Record<Direction, number>>;
  readonly openWarnings: readonly Warning[];
  readonly borrowed: Borrowed | null;
}
