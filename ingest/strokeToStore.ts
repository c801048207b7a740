import type { IncomingStroke } from './stroke.ts';

/** One stroke on its way into the database. */
export interface StrokeToStore {
  readonly row: StrokeInput;
  readonly trace: Buffer;
  /** What the trace was packed from. */
  readonly recorded: IncomingStroke;
  /** Null: it comes without an analysis, and nothing is known of its room. */
  readonly brought: BroughtAnalysis | null;
}

/** What a stroke brings that was measured before it is stored. */
export interface BroughtAnalysis {
  /** Names what is known of its room, `room_progress.measured_by` of then. */
  readonly measuredBy: string;
  /** A `StrokeAnalysis` as JSON text; null: it was not measured. */
  readonly analysis: string | null;
}

interface StrokeInput {
  readonly account_id: string;
  readonly id: string;
  readonly room_id: string | null;
  readonly coach_id: string | null;
  readonly sender_id: string;
  readonly logger_id: string | null;
  readonly key: string;
  readonly direction: string | null;
  readonly started_at: string;
  readonly recorded_sides: readonly string[];
  readonly side_rates_hz: readonly (number | null)[];
  readonly has_supply: boolean;
  readonly supply_rate_hz: number | null;
  readonly ambient_c: number | null;
}
