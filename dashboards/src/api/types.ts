/** The shapes of the service's answers, inferred from the schemas that validate them there. Types only. */
export type {
  Colleague,
  Grant,
  Invited,
  NewGrant,
  ResetRequested,
  SessionPlace,
} from '../../../server/schemas/access.ts';
export type { Account, RetentionRun } from '../../../server/schemas/account.ts';
export type { Coach } from '../../../server/schemas/coach.ts';
export type { Problem } from '../../../server/schemas/common.ts';
export type { LivePush, LiveSamples } from '../../../server/schemas/live.ts';
export type { Logger } from '../../../server/schemas/logger.ts';
export type { CoachOverview, OverviewSummary } from '../../../server/schemas/overview.ts';
export type { NewPersonalToken, PersonalToken } from '../../../server/schemas/personalToken.ts';
export type { StrokesPreview } from '../../../server/schemas/preview.ts';
export type { RecordedAct } from '../../../server/schemas/record.ts';
export type {
  Comparison,
  RoomStatus,
  Trend,
  Warning,
} from '../../../server/schemas/results.ts';
export type { Room } from '../../../server/schemas/room.ts';
export type { Service, ServiceBody, ServiceSeen } from '../../../server/schemas/service.ts';
export type { Person, Role } from '../../../server/schemas/session.ts';
export type {
  Look,
  NoticeSettings,
  NoticeSettingsPatch,
  Settings,
} from '../../../server/schemas/settings.ts';
export type { Stroke, StrokePatch, Trace } from '../../../server/schemas/stroke.ts';
export type { Normal, NormalSide, TravelTrace } from '../../../server/schemas/travel.ts';
export type { NewWebhook, Webhook, WebhookDelivery } from '../../../server/schemas/webhook.ts';

import type { Logger } from '../../../server/schemas/logger.ts';
import type { CoachOverview } from '../../../server/schemas/overview.ts';
import type { StrokesPreview } from '../../../server/schemas/preview.ts';
import type { Comparison, RoomStatus, Trend, Warning } from '../../../server/schemas/results.ts';
import type { Service } from '../../../server/schemas/service.ts';
import type { Person } from '../../../server/schemas/session.ts';
import type { Stroke, StrokeOutcomes } from '../../../server/schemas/stroke.ts';
import type { TravelTrace } from '../../../server/schemas/travel.ts';

/** The token that comes along is for machines: a page goes by its cookie. */
export interface SignedIn {
  readonly person: Person;
}

/** What adding a logger answers, this once. */
export interface LoggerWithToken extends Logger {
  readonly token: string;
}

export type Verdict = RoomStatus['verdict'];
export type Severity = Warning['severity'];
export type WarningKind = Warning['kind'];
export type ServiceKind = Service['kind'];
export type Direction = NonNullable<Stroke['direction']>;
export type ComparedGroup = Comparison['groups'][number];
export type ComparedShift = ComparedGroup['shifts'][number];
export type TrendPoint = Trend['points'][number];
export type OverviewRoom = CoachOverview['rooms'][number];
export type DoneAnalysis = Extract<NonNullable<Stroke['analysis']>, { status: 'done' }>;
export type SideMeasures = DoneAnalysis['sides'][string];
export type PreviewedColumn = StrokesPreview['columns'][number];
export type StrokeOutcome = StrokeOutcomes['results'][number];
export type SideTravel = TravelTrace['sides'][number];
export type Spike = SideMeasures['spikes'][number];
export interface MeasureTitle {
  readonly name: string;
  readonly unit: string;
  readonly title: string;
}

export interface Page<Item> {
  readonly items: readonly Item[];
  readonly next: string | null;
}
