import type { Evidence } from './evidence.ts';
import type { Direction } from './trace.ts';

/** The troubles that can be found, one detector each in `findings/`. */
export const WARNING_KINDS = [
  'rising-draw',
  'uneven-sides',
  'stall-spike',
  'dropped-load',
  'late-side',
  'heavy-room',
  'short-travel',
  'weak-supply',
  'draw-rebound',
  'sensor-doubt',
] as const;
/** One of `WARNING_KINDS`. */
export type WarningKind = (typeof WARNING_KINDS)[number];

/** How grave, rising: a room's verdict is that of its gravest open warning. */
export const SEVERITIES = ['watch', 'service', 'stop'] as const;
/** One of `SEVERITIES`. */
export type Severity = (typeof SEVERITIES)[number];

/** Where the peaks of several strokes fall. */
export const SPIKE_PATTERNS = ['same-place', 'once-per-turn', 'scattered'] as const;
/** One of `SPIKE_PATTERNS`. */
export type SpikePattern = (typeof SPIKE_PATTERNS)[number];

/** A room's state in a word: of its gravest open warning, where it has one. */
export const VERDICTS = ['learning', 'clear', 'watch', 'service', 'stop', 'unknown'] as const;
/** One of `VERDICTS`. */
export type Verdict = (typeof VERDICTS)[number];

/**
 * One trouble of one room while it lasts: opened by a stroke, updated by later ones, cleared when its cause is
 * gone. `id` is a UUID version 7 that follows from the room, the kind, the side, the direction and the opening
 * stroke, so that the same history always gives the same warnings.
 */
export interface Warning {
  readonly id: string;
  readonly kind: WarningKind;
  readonly severity: Severity;
  readonly side: string | null;
  readonly direction: Direction | null;
  readonly position: number | null;
  readonly pattern: SpikePattern | null;
  /** The `startedAt` of the stroke that raised it, milliseconds since 1970. */
  readonly openedAtMs: number;
  readonly clearedAtMs: number | null;
  readonly firstStrokeId: string;
  readonly latestStrokeId: string;
  readonly headline: string;
  readonly evidence: Evidence;
  readonly checks: readonly string[];
  readonly cautions: readonly string[];
}
