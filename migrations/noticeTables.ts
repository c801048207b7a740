import type { ColumnType, Generated } from 'kysely';
import type { Json, Severity, TextOrNull, Time, TimeByDefault, TimeOrNull } from './columns.ts';

/** What was told of a warning, to whoever wanted it. */
export interface ToldWarningTable {
  account_id: string;
  room_id: string;
  warning_id: string;
  kind: string;
  side: string | null;
  direction: 'extend' | 'retract' | null;
  opened_at: Time;
  cleared_at: TimeOrNull;
  /** The highest that was told. */
  severity: Severity;
  open: boolean;
  /** How often something was told of it. */
  revision: Generated<number>;
  /** Since then it does not follow from the history any more. */
  missing_since: TimeOrNull;
}

/** Rooms whose warnings are to be compared with what was told. */
export interface RoomToTellTable {
  account_id: string;
  room_id: string;
  marked_at: TimeByDefault;
  due_at: Time;
}

type DeliveryState = 'waiting' | 'sent' | 'dropped' | 'failed';

export interface MailNoticeTable {
  /** Of the person who is told. */
  account_id: string;
  person_id: string;
  /** Names the thing that is told: one row, one telling. */
  key: string;
  /** A `Notice`. */
  notice: Json;
  state: ColumnType<DeliveryState, DeliveryState | undefined, DeliveryState>;
  /** That it goes in: the same one each time it is tried. */
  message: string | null;
  reason: string | null;
  attempts: Generated<number>;
  made_at: TimeByDefault;
  due_at: TimeByDefault;
  ended_at: TimeOrNull;
}

export interface WebhookTable {
  account_id: string;
  id: string;
  url: string;
  events: string[];
  severity: Severity;
  enabled: Generated<boolean>;
  disabled_because: TextOrNull;
  secret: Buffer;
  /** How often it did not answer well in a row. */
  failures: Generated<number>;
  /** Nothing is sent to it before. */
  try_at: TimeByDefault;
  created_at: TimeByDefault;
  updated_at: TimeByDefault;
}

export interface WebhookDeliveryTable {
  account_id: string;
  webhook_id: string;
  id: string;
  key: string;
  event: string;
  /** The very text that is signed. */
  body: string;
  state: ColumnType<DeliveryState, DeliveryState | undefined, DeliveryState>;
  /** Of the last answer; null: there was none. */
  status: number | null;
  error: string | null;
  attempts: Generated<number>;
  made_at: TimeByDefault;
  due_at: TimeByDefault;
  ended_at: TimeOrNull;
}
