import type {
  MailNoticeTable,
  RoomToTellTable,
  ToldWarningTable,
  WebhookDeliveryTable,
  WebhookTable,
} from './noticeTables.ts';
import type {
  AccountTable,
  DirectoryTable,
  GrantTable,
  IdempotencyKeyTable,
  InvitationTable,
  PasswordResetTable,
  PersonalTokenTable,
  PersonTable,
  RecordTable,
  SessionTable,
  SignInFailureTable,
} from './peopleTables.ts';
import type {
  FormerWarningTable,
  LentNormalTable,
  MeasureTable,
  RoomCheckpointTable,
  RoomProgressTable,
  RoomResultsTable,
  VerdictChangeTable,
  WarningTable,
} from './resultTables.ts';
import type {
  LivePieceTable,
  LiveStrokeTable,
  RemovedStrokeTable,
  RetentionRunTable,
  StrokeTable,
  TraceTable,
} from './strokeTables.ts';
import type { CoachTable, LoggerTable, RoomTable, ServiceTable } from './thingTables.ts';

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
  former_warnings: FormerWarningTable;
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
