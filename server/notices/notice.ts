import type { Direction } from '../../analysis/trace.ts';
import type { WarningKind } from '../../analysis/warning.ts';
import type { Severity } from '../../migrations/columns.ts';
import type { WarningEvent } from '../schemas/webhook.ts';

/** The coach that something is told of, and whose it is. */
export interface OfCoach {
  readonly accountId: string;
  readonly coachId: string;
  readonly coach: string;
}

/** A warning as it stood when it was told. */
export interface WarningNotice extends OfCoach {
  readonly event: WarningEvent;
  readonly at: string;
  readonly roomId: string;
  readonly room: string;
  readonly warningId: string;
  readonly kind: WarningKind;
  /** The highest that was told of it. */
  readonly severity: Severity;
  readonly side: string | null;
  readonly direction: Direction | null;
  readonly headline: string;
  readonly openedAt: string;
  readonly clearedAt: string | null;
  readonly checks: readonly string[];
  readonly cautions: readonly string[];
}

export interface SilentNotice extends OfCoach {
  readonly event: 'logger.silent';
  readonly at: string;
  readonly loggerId: string;
  readonly logger: string;
  /** Null: never. */
  readonly lastHeardAt: string | null;
  readonly days: number;
}

/** A dealer's week, as it stood on its Monday. */
export interface DigestNotice {
  readonly event: 'digest';
  readonly at: string;
  /** Of rooms by verdict. */
  readonly rooms: Readonly<Record<string, number>>;
  readonly changes: { readonly worse: number; readonly better: number; readonly cleared: number };
  readonly silentLoggers: number;
  /** Those that need work most, the most worrying first. */
  readonly worst: readonly {
    readonly roomId: string;
    readonly room: string;
    readonly coach: string;
    readonly verdict: 'stop' | 'service';
    readonly headline: string;
  }[];
  /** Addresses of webhooks that were switched off or do not answer well. */
  readonly troubledWebhooks: readonly string[];
  /** Colleagues whose mailboxes were refused: they are told nothing until they go on. */
  readonly paused: readonly string[];
}

export type Notice = WarningNotice | SilentNotice | DigestNotice;
