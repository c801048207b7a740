import { cautionsFor } from '../advice/cautions.ts';
import { checksFor } from '../advice/checks.ts';
import type { Finding, FindingAnswer } from '../findings/finding.ts';
import type { StrokeEvent } from '../history.ts';
import type { Doubt } from '../measures.ts';
import type { Warning } from '../warning.ts';
import { asTold, BY_SIDE, sameOnOtherSide } from './bothSides.ts';
import type { RoomState } from './state.ts';
import { warningId } from './warningId.ts';

/** One trouble is one warning while it lasts: of a kind, and for some of a side or a direction. */
function isSame(open: Warning, finding: Finding): boolean {
  if (open.kind !== finding.kind) return false;
  if (finding.kind === 'short-travel') return open.direction === finding.direction;
  return !BY_SIDE.has(finding.kind) || open.side === finding.side;
}

/** Opens, updates and clears the state's warnings by what a detector found; answers those that changed, as they are told. */
export function keepWarnings(state: RoomState, event: StrokeEvent, answer: FindingAnswer): Warning[] {
  const changed = new Map<string, Warning>();
  const isGone = (open: Warning) => answer.gone.some(({ id, side }) => id === open.id && side === open.side);
  state.open = state.open.filter((open) => !isGone(open));
  for (const gone of asTold(answer.gone, state.room.sides)) {
    changed.set(gone.id, { ...gone, clearedAtMs: event.atMs });
  }
  for (const finding of answer.present) {
    const open = state.open.find((warning) => isSame(warning, finding));
    const warning =
      open === undefined ? opened(state, event, finding) : { ...open, ...told(state, event, finding) };
    state.open = [...state.open.filter((other) => other !== open), warning];
    changed.set(warning.id, warning);
  }
  // What is over on one side may last on the other.
  const lasting = state.open.filter(({ id }) => changed.has(id));
  for (const warning of asTold(lasting, state.room.sides)) changed.set(warning.id, warning);
  return [...changed.values()];
}

function opened(state: RoomState, event: StrokeEvent, finding: Finding): Warning {
  const { kind, side, direction } = finding;
  const { id, openedAtMs, firstStrokeId } = sameOnOtherSide(state, finding) ?? {
    id: warningId(event.atMs, [state.roomId, kind, side, direction, event.strokeId]),
    openedAtMs: event.atMs,
    firstStrokeId: event.strokeId,
  };
  return { id, openedAtMs, clearedAtMs: null, firstStrokeId, ...told(state, event, finding) };
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
