import type { ColumnType, Generated } from 'kysely';
import type { Json, JsonOrNull, Time, TimeByDefault, TimeOrNull } from './columns.ts';

export interface StrokeTable {
  account_id: string;
  id: string;
  room_id: string;
  /** The logger or person that sent it: `key` is unique for each. */
  sender_id: string;
  logger_id: string | null;
  key: string;
  direction: 'extend' | 'retract' | null;
  /** As sent, or as a person corrected it. */
  started_at: Time;
  received_at: TimeByDefault;
  /** Its place in the history of its room, whole milliseconds. */
  placed_at: Time;
  /** Whose time that is: `arrival` where the date sent cannot be. */
  placed_by: Generated<'sender' | 'arrival' | 'person'>;
  recorded_sides: string[];
  /** By recorded side, null where times were sent; null as a whole: stored before rates were kept. */
  side_rates_hz: (number | null)[] | null;
  has_supply: boolean;
  supply_rate_hz: number | null;
  ambient_c: number | null;
  excluded: Generated<boolean>;
  note: string | null;
  /** Its sender went away before the end: what had come was stored. */
  cut_short: Generated<boolean>;
  /** A `StrokeAnalysis`; null until it is made. */
  analysis: JsonOrNull;
}

export interface TraceTable {
  account_id: string;
  stroke_id: string;
  received_at: Time;
  trace: Buffer;
}

/** Keys of strokes that people removed: sent again they are answered as duplicates. */
export interface RemovedStrokeTable {
  account_id: string;
  sender_id: string;
  key: string;
  stroke_id: string;
  coach_id: string;
  /** Null: a person sent it. */
  logger_id: string | null;
  removed_at: TimeByDefault;
}

export interface LiveStrokeTable {
  account_id: string;
  /** The id that the stroke gets when it is stored. */
  id: string;
  logger_id: string;
  key: string;
  room_id: string;
  /** A `LiveHeader`. */
  header: Json;
  /** The one link that may add to it: the latest that began it. */
  link_id: string;
  next_seq: Generated<number>;
  touched_at: TimeByDefault;
  /** Null: not whole yet; else it is in `strokes`, and goes from here soon. */
  stored_at: TimeOrNull;
}

export interface LivePieceTable {
  account_id: string;
  stroke_id: string;
  seq: number;
  /** Place in the header's sides; null: the supply. */
  side: number | null;
  /** Place of the first sample in its side. */
  first_sample: number;
  /** Doubles, little-endian. */
  samples: Buffer;
}

/** What one run of the retention removed of an account's samples; bigint comes back as a string. */
export interface RetentionRunTable {
  account_id: string;
  id: string;
  ran_at: Time;
  trace_months: number;
  /** Samples that arrived before it were removed. */
  removed_before: Time;
  /** Traces of the account, counted before the removal. */
  traces_before: ColumnType<string, number | string>;
  traces_removed: ColumnType<string, number | string>;
  bytes_removed: ColumnType<string, number | string>;
  /** Counted after it. */
  traces_after: ColumnType<string, number | string>;
}
