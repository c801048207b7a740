import type { ColumnType } from 'kysely';
import type { Json, JsonOrNull, Severity, TextOrNull, Time, TimeByDefault, TimeOrNull } from './columns.ts';

export interface MeasureTable {
  account_id: string;
  room_id: string;
  side: string;
  direction: 'extend' | 'retract';
  /** Of the stroke. */
  placed_at: Time;
  stroke_id: string;
  /** By index of MEASURES, as the next two, which are in single precision. */
  value: (number | null)[];
  expected: (number | null)[];
  adjusted: (number | null)[];
  /** Bit `i`: whether the measure with index `i` lies beyond its limits. */
  beyond: number;
}

export interface RoomProgressTable {
  account_id: string;
  room_id: string;
  dirty_from: TimeOrNull;
  /** bigint comes back as a string. */
  revision: ColumnType<string, number | string | undefined, number | string>;
  /** Names the analysis and the description of the room that its strokes are measured by; null: not known yet. */
  measured_by: TextOrNull;
  /** Strokes from this time on may have been measured by another. */
  remeasure_from: TimeOrNull;
}

/** What was last found of a room; one without was never gone through. */
export interface RoomResultsTable {
  account_id: string;
  room_id: string;
  summary: Json;
  /** Of the summary. */
  verdict: ColumnType<string, never, never>;
  limits: JsonOrNull;
}

export interface RoomCheckpointTable {
  account_id: string;
  room_id: string;
  at: Time;
  events: number;
  analysis_version: number;
  /** JSON, compressed by Brotli. */
  state: Buffer;
}

/** What a room learnt from its own strokes alone, by side and direction; stays until its borrowers know that it is gone. */
export interface LentNormalTable {
  account_id: string;
  room_id: string;
  /** Of the side in the sides of the room, from 0. */
  place: number;
  direction: 'extend' | 'retract';
  /** The same for rooms of one coach model, drive and sides. */
  peers: string;
  /** The same for those of them with the same name. */
  namesakes: string;
  /** Null, as `normal`, while it is still learnt. */
  learnt_at: ColumnType<Date | null, Date | string | null, Date | string | null>;
  /** `LentMeasure`s by index of MEASURES. */
  normal: ColumnType<object[] | null, string | null, string | null>;
}

export interface WarningTable {
  account_id: string;
  id: string;
  room_id: string;
  kind: string;
  severity: Severity;
  side: string | null;
  direction: 'extend' | 'retract' | null;
  position: number | null;
  pattern: string | null;
  opened_at: Time;
  cleared_at: TimeOrNull;
  first_stroke_id: string;
  latest_stroke_id: string;
  headline: string;
  evidence: Json;
  checks: Json;
  cautions: Json;
  acknowledged_at: TimeOrNull;
  acknowledged_by: string | null;
  acknowledgement_note: string | null;
}

/** A warning that was opened elsewhere, or nowhere, when its room was gone through anew. */
export interface FormerWarningTable {
  account_id: string;
  id: string;
  room_id: string;
  kind: string;
  side: string | null;
  direction: 'extend' | 'retract' | null;
  opened_at: Time;
  last_at: Time;
}

export interface VerdictChangeTable {
  account_id: string;
  room_id: string;
  changed_at: TimeByDefault;
  verdict_before: Verdict;
  verdict: Verdict;
}

type Verdict = 'learning' | 'clear' | 'watch' | 'service' | 'stop' | 'unknown';
