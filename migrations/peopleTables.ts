import type { ColumnType, Generated } from 'kysely';
import type { Severity, TextOrNull, Time, TimeByDefault, TimeOrNull } from './columns.ts';

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
  time_zone: TextOrNull;
  locale: TextOrNull;
  looked_at: TimeOrNull;
  looked_before_at: TimeOrNull;
  /** The least severity of warnings that it is mailed; null: none. */
  notices_from: ColumnType<Severity | null, Severity | null | undefined, Severity | null>;
  notices_cleared: Generated<boolean>;
  /** Nothing is mailed from then to `quiet_to`, in its time zone: `22:00:00`. */
  quiet_from: TextOrNull;
  quiet_to: TextOrNull;
  digest: Generated<boolean>;
  /** Mailed of loggers not heard for so long; null: of none. */
  silent_after_days: ColumnType<number | null, number | null | undefined, number | null>;
  /** Its mailbox was refused for good then: nothing is mailed until it says so. */
  mail_paused_at: TimeOrNull;
  mail_paused_because: TextOrNull;
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
  until: TimeOrNull;
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
  last_seen_at: TimeOrNull;
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
