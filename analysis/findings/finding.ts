import type { Conditions } from '../baseline/conditions.ts';
import type { Residual } from '../baseline/judge.ts';
import type { Evidence } from '../evidence.ts';
import type { StrokeEvent } from '../history.ts';
import type { DoneAnalysis, Doubt, MeasureName } from '../measures.ts';
import type { RoomState } from '../roomState.ts';
import type { Direction } from '../trace.ts';
import type { Severity, SpikePattern, Warning, WarningKind } from '../warning.ts';

/** What a detector looks at: one usable stroke in its room. */
export interface FindingContext {
  readonly state: RoomState;
  readonly event: StrokeEvent;
  readonly analysis: DoneAnalysis;
  readonly direction: Direction;
  readonly conditions: Conditions;
  /** The same with what one side's copper reads. */
  sideConditions(side: string): Conditions;
  /** Sides whose record of this stroke is not to be trusted: nothing is concluded from their current. */
  readonly doubtful: ReadonlySet<string>;
  /** Null while learning, or where the stroke has no such measure. */
  residual(side: string, measure: MeasureName): Residual | null;
}

/**
 * A trouble as it stands after this stroke; words, checks and cautions are added by the advice. What is missing, the warning has
 * as null.
 */
export interface Finding {
  readonly kind: WarningKind;
  readonly side: string | null;
  readonly direction?: Direction | null;
  readonly position?: number | null;
  readonly pattern?: SpikePattern | null;
  readonly severity: Severity;
  readonly headline: string;
  readonly evidence: Evidence;
}

/**
 * What a detector answers: `present` troubles, kinds that are `gone`, and anything else that was open goes on as it
 * was (not told by this stroke).
 */
export interface FindingAnswer {
  readonly present: readonly Finding[];
  /** Open warnings that end here. */
  readonly gone: readonly Warning[];
}

/** Nothing is found, and whatever is open goes on as it was. */
export const NOTHING: FindingAnswer = { present: [], gone: [] };

/** The open warnings of a kind. */
export function openOf({ open }: Pick<RoomState, 'open'>, kind: WarningKind): Warning[] {
  return open.filter((warning) => warning.kind === kind);
}

/** Whether a kind is said of whatever side. */
export function isOpen(state: Pick<RoomState, 'open'>, kind: WarningKind): boolean {
  return openOf(state, kind).length > 0;
}

/** The open warning of a kind and of one side (null: of all). */
export function openOn(
  state: Pick<RoomState, 'open'>,
  kind: WarningKind,
  side: string | null,
): Warning | undefined {
  return openOf(state, kind).find((warning) => warning.side === side);
}

/** Whether a side's record is doubted for this. */
export function isDoubted(state: Pick<RoomState, 'open'>, side: string, doubt: Doubt): boolean {
  return openOn(state, 'sensor-doubt', side)?.evidence.doubt === doubt;
}
