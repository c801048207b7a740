import { cautionsFor } from '../advice/cautions.ts';
import { checksFor } from '../advice/checks.ts';
import type { Finding, FindingAnswer } from '../findings/finding.ts';
import type { StrokeEvent } from '../history.ts';
import type { Doubt } from '../measures.ts';
import type { Warning, WarningKind } from '../warning.ts';
import type { RoomState } from './state.ts';
import { warningId } from './warningId.ts';

/** Kinds that can stand on each side by itself. */
const BY_SIDE: ReadonlySet<WarningKind> = new Set(['stall-spike', 'sensor-doubt', 'dropped-load']);

/** One trouble is one warning while it lasts: of a kind, and for some of a side or a direction. */
function isSame(open: Warning, finding: Finding): boolean {
  if (open.kind !== finding.kind) return false;
  if (finding.kind === 'short-travel') return open.direction === finding.direction;
  return !BY_SIDE.has(finding.kind) || open.side === finding.side;
}

/** Opens, updates and clears the state's warnings by what a detector found; answers those that changed. */
export function keepWarnings(state: RoomState, event: StrokeEvent, answer: FindingAnswer): Warning[] {
  const changed: Warning[] = [];
  for (const gone of answer.gone) {
    state.open = state.open.filter((open) => open.id !== gone.id);
    changed.push({ ...gone, clearedAtMs: event.atMs });
  }
  for (const finding of answer.present) {
    const open = state.open.find((warning) => isSame(warning, finding));
    const warning =
      open === undefined ? opened(state, event, finding) : { ...open, ...told(state, event, finding) };
    state.open = [...state.open.filter((other) => other.id !== warning.id), warning];
    changed.push(warning);
  }
  return changed;
}

function opened(state: RoomState, event: StrokeEvent, finding: Finding): Warning {
  return {
    id: warningId(event.atMs, [state.roomId, finding.kind, finding.side, finding.direction, event.strokeId]),
    openedAtMs: event.atMs,
    clearedAtMs: null,
    firstStrokeId: event.strokeId,
    ...told(state, event, finding),
  };
}

function told(state: RoomState, event: StrokeEvent, finding: Finding) {
  const { kind, side, direction, position, pattern, severity, headline, evidence } = finding;
  return {
    kind,
    side,
    direction,
    position,
    pattern,
    severity,
    headline,
    evidence,
    latestStrokeId: event.strokeId,
    checks: checksFor(kind, state.room.drive, pattern, doubtOf(finding)),
    cautions: cautionsFor(kind),
  };
}

/** What a sensor-doubt doubts; null: something else was found. */
function doubtOf({ kind, evidence }: Finding): Doubt | null {
  // Written by `sensorDoubt` and nobody else.
  return kind === 'sensor-doubt' ? (evidence.doubt as Doubt) : null;
}
