import type { ColumnType, Generated, Insertable, Selectable } from 'kysely';
import type { Json, JsonOrNull, Severity, Time, TimeByDefault, TimeOrNull } from './columns.ts';
import type {
  MailNoticeTable,
  RoomToTellTable,
  ToldWarningTable,
  WebhookDeliveryTable,
  WebhookTable,
} from './noticeTables.ts';

/** Row types of the schema as it stands after every migration, for Kysely. Times come back as `Date`. */
export interface Tables {
  accounts: AccountTable;
  people: PersonTable;
  directory: DirectoryTable;
  sign_in_failures: SignInFailureTable;
  sessions: SessionTable;
  grants: GrantTable;
  invitations: InvitationTable;
  coaches: CoachTable;
  rooms: RoomTable;
  loggers: LoggerTable;
  services: ServiceTable;
  strokes: StrokeTable;
  traces: TraceTable;
  removed_strokes: RemovedStrokeTable;
  live_strokes: LiveStrokeTable;
  live_pieces: LivePieceTable;
  measures: MeasureTable;
  room_progress: RoomProgressTable;
  room_results: RoomResultsTable;
  room_checkpoints: RoomCheckpointTable;
  lent_normals: LentNormalTable;
  warnings: WarningTable;
  verdict_changes: VerdictChangeTable;
  idempotency_keys: IdempotencyKeyTable;
  personal_tokens: PersonalTokenTable;
  password_resets: PasswordResetTable;
  record: RecordTable;
  retention_runs: RetentionRunTable;
  told_warnings: ToldWarningTable;
  rooms_to_tell: RoomToTellTable;
  mail_notices: MailNoticeTable;
  webhooks: WebhookTable;
  webhook_deliveries: WebhookDeliveryTable;
}

export interface AccountTable {
  id: string;
  name: string;
  /** Samples are kept for so many months after their arrival; null: for ever. */
  trace_months: number | null;
  created_at: TimeByDefault;
}

export interface PersonTable {
  account_id: string;
  id: string;
  email: string;
  name: string;
  role: 'dealer' | 'technician' | 'owner';
  password_hash: string | null;
  units: ColumnType<'metric' | 'us' | null, 'metric' | 'us' | null | undefined, 'metric' | 'us' | null>;
  time_zone: ColumnType<string | null, string | null | undefined, string | null>;
  locale: ColumnType<string | null, string | null | undefined, string | null>;
  looked_at: TimeOrNull;
  looked_before_at: TimeOrNull;
  /** The least severity of warnings that it is mailed; null: none. */
  notices_from: ColumnType<Severity | null, Severity | null | undefined, Severity | null>;
  notices_cleared: Generated<boolean>;
  /** Nothing is mailed from then to `quiet_to`, in its time zone: `22:00:00`. */
  quiet_from: ColumnType<string | null, string | null | undefined, string | null>;
  quiet_to: ColumnType<string | null, string | null | undefined, string | null>;
  digest: Generated<boolean>;
  /** Mailed of loggers not heard for so long; null: of none. */
  silent_after_days: ColumnType<number | null, number | null | undefined, number | null>;
  /** Its mailbox was refused for good then: nothing is mailed until it says so. */
  mail_paused_at: TimeOrNull;
  mail_paused_because: ColumnType<string | null, string | null | undefined, string | null>;
  /** Signs the links by which its mails end. */
  unsubscribe_key: Generated<Buffer>;
  created_at: TimeByDefault;
}

export interface DirectoryTable {
  /** Lower case. */
  email: string;
  account_id: string;
  person_id: string;
}

export interface SignInFailureTable {
  email: string;
  failed_at: TimeByDefault;
}

export interface SessionTable {
  account_id: string;
  id: Generated<string>;
  token_hash: Buffer;
  person_id: string;
  created_at: TimeByDefault;
  last_seen_at: TimeByDefault;
  expires_at: Time;
}

export interface GrantTable {
  /** Of the coach. */
  account_id: string;
  id: string;
  coach_id: string;
  /** Lower case. */
  email: string;
  role: 'owner' | 'technician';
  until: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
  /** Of another account; null until the invitation is accepted. */
  person_id: string | null;
  created_at: TimeByDefault;
}

/** Names the person that was added to the account, or the grant that it brings; it is removed when it is used. */
export interface InvitationTable {
  account_id: string;
  token_hash: Buffer;
  person_id: string | null;
  grant_id: string | null;
  expires_at: Time;
  created_at: TimeByDefault;
}

export interface CoachTable {
  account_id: string;
  id: string;
  name: string;
  model: string | null;
  year: number | null;
  notes: string | null;
  /** The place of its most worrying room in the order of concern, kept by triggers. */
  concern: ColumnType<number, never, never>;
  created_at: TimeByDefault;
  updated_at: TimeByDefault;
  /** Not null: out of everybody's sight, and to be restored or removed. */
  deleted_at: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
}

export interface RoomTable {
  account_id: string;
  id: string;
  coach_id: string;
  name: string;
  drive: 'in-wall' | 'through-frame' | 'cable' | 'other';
  sides: string[];
  travel_metres: number | null;
  gear_teeth: number | null;
  rack_pitch_mm: number | null;
  rated_amps: number | null;
  nominal_volts: Generated<number>;
  positive_direction: Generated<'extend' | 'retract'>;
  created_at: TimeByDefault;
  updated_at: TimeByDefault;
  /** Not null: out of everybody's sight, and to be restored or removed. */
  deleted_at: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
}

export interface LoggerTable {
  account_id: string;
  id: string;
  coach_id: string;
  name: string;
  sensor: 'clamp' | 'shunt';
  token_hash: Buffer;
  /** Seconds to add to what its clock says. */
  clock_offset_s: Generated<number>;
  last_seen_at: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
  created_at: TimeByDefault;
  updated_at: TimeByDefault;
}

export interface ServiceTable {
  account_id: string;
  id: string;
  room_id: string;
  kind: string;
  at: Time;
  side: string | null;
  notes: string | null;
  recorded_by: string | null;
  created_at: TimeByDefault;
  updated_at: TimeByDefault;
}

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
  stored_at: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
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

export interface MeasureTable {
  account_id: string;
  room_id: string;
  side: string;
  direction: 'extend' | 'retract';
  /** Of the stroke. */
  placed_at: Time;
  stroke_id: string;
  /** By index of MEASURES. */
  value: (number | null)[];
  expected: (number | null)[];
  adjusted: (number | null)[];
  beyond: (boolean | null)[];
}

export interface RoomProgressTable {
  account_id: string;
  room_id: string;
  dirty_from: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
  /** bigint comes back as a string. */
  revision: ColumnType<string, number | string | undefined, number | string>;
  /** Names the analysis and the description of the room that its strokes are measured by; null: not known yet. */
  measured_by: ColumnType<string | null, string | null | undefined, string | null>;
  /** Strokes from this time on may have been measured by another. */
  remeasure_from: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
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
  cleared_at: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
  first_stroke_id: string;
  latest_stroke_id: string;
  headline: string;
  evidence: Json;
  checks: Json;
  cautions: Json;
  acknowledged_at: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
  acknowledged_by: string | null;
  acknowledgement_note: string | null;
}

export interface VerdictChangeTable {
  account_id: string;
  room_id: string;
  changed_at: TimeByDefault;
  verdict_before: Verdict;
  verdict: Verdict;
}

type Verdict = 'learning' | 'clear' | 'watch' | 'service' | 'stop' | 'unknown';

export interface PersonalTokenTable {
  account_id: string;
  id: string;
  person_id: string;
  name: string;
  token_hash: Buffer;
  /** False: it may only read. */
  may_change: boolean;
  until: Time;
  created_at: TimeByDefault;
  last_seen_at: ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
}

/** Removed when it is used. */
export interface PasswordResetTable {
  account_id: string;
  token_hash: Buffer;
  person_id: string;
  expires_at: Time;
  created_at: TimeByDefault;
}

/** Who did what. Rows are only ever added, by triggers. */
export interface RecordTable {
  account_id: string;
  at: TimeByDefault;
  id: Generated<string>;
  /** Null: nobody who was signed in. */
  person_id: string | null;
  /** As it was then. */
  person_name: string | null;
  act: string;
  /** The table that the thing is in, and its id there. */
  thing: string;
  thing_id: string | null;
  coach_id: string | null;
  details: ColumnType<Record<string, unknown>, string | undefined, never>;
}

export interface IdempotencyKeyTable {
  account_id: string;
  caller_id: string;
  key_hash: Buffer;
  request_hash: Buffer;
  /** Sealed with the key, as it may hold a token; null only while the first request is under way. */
  answer: Buffer | null;
  created_at: TimeByDefault;
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

export type StrokeRow = Selectable<StrokeTable>;
export type NewStroke = Insertable<StrokeTable>;
