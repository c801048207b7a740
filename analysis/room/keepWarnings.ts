import { cautionsFor } from '../advice/cautions.ts';
import { checksAtRest, checksFor } from '../advice/checks.ts';
import type { Finding, FindingAnswer } from '../findings/finding.ts';
import type { StrokeEvent } from '../history.ts';
import type { RoomState } from '../roomState.ts';
import { SEVERITIES, type Severity, type Warning, type WarningKind } from '../warning.ts';
import { asTold, BY_SIDE, sameOnOtherSide } from './bothSides.ts';
import { warningId } from './warningId.ts';

/** A finding with nothing left out. */
type Whole = Required<Finding>;

const NOWHERE = { direction: null, position: null, pattern: null } as const;

/** One trouble is one warning while it lasts: of a kind, and for some of a side or a direction. */
function isSame(open: Warning, finding: Whole): boolean {
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
    delete state.calmer[gone.id];
  }
  for (const found of answer.present) {
    const finding: Whole = { ...NOWHERE, ...found };
    const open = state.open.find((warning) => isSame(warning, finding));
    const warning =
      open === undefined
        ? opened(state, event, finding)
        : { ...open, ...told(state, event, { ...finding, severity: severityOf(state, open, finding) }) };
    state.open = [...state.open.filter((other) => other !== open), warning];
    changed.set(warning.id, warning);
  }
  // What is over on one side may last on the other.
  const lasting = state.open.filter(({ id }) => changed.has(id));
  for (const warning of asTold(lasting, state.room.sides)) changed.set(warning.id, warning);
  return [...changed.values()];
}

function opened(state: RoomState, event: StrokeEvent, finding: Whole): Warning {
  const { kind, side, direction } = finding;
  const { id, openedAtMs, firstStrokeId } = sameOnOtherSide(state, finding) ?? {
    id: warningId(event.atMs, [state.roomId, kind, side, direction, event.strokeId]),
    openedAtMs: event.atMs,
    firstStrokeId: event.strokeId,
  };
  return { id, openedAtMs, clearedAtMs: null, firstStrokeId, ...told(state, event, finding) };
}

/**
 * So many strokes in a row must find less before it is told as less: one calm stroke is no relief. Each time that
 * it fell, four times as many: what lies about a threshold is not told now as the one and now as the other.
 */
const CALMER_STROKES = 8;
const TIMES_EACH_FALL = 4;

/** A room that stood still and moves again is better for it at once. */
const SEES_RELIEF: ReadonlySet<WarningKind> = new Set(['short-travel']);

/** A severity that rises at once, and falls only once several strokes agree. */
function severityOf(state: RoomState, open: Warning, { kind, severity }: Finding): Severity {
  const change = SEVERITIES.indexOf(severity) - SEVERITIES.indexOf(open.severity);
  const { strokes, falls } = state.calmer[open.id] ?? { strokes: 0, falls: 0 };
  if (change >= 0 || (open.severity === 'stop' && SEES_RELIEF.has(kind))) {
    state.calmer[open.id] = { strokes: 0, falls };
    return severity;
  }
  const falling = strokes + 1 >= CALMER_STROKES * TIMES_EACH_FALL ** falls;
  state.calmer[open.id] = falling ? { strokes: 0, falls: falls + 1 } : { strokes: strokes + 1, falls };
  return falling ? severity : open.severity;
}

function told(state: RoomState, event: StrokeEvent, finding: Whole) {
  const { kind, side, direction, position, pattern, severity, headline, evidence } = finding;
  const checks = checksFor(kind, state.room.drive, pattern, evidence.doubt ?? null);
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
    // Who is told to leave a room where it is is not asked to run it.
    checks: severity === 'stop' ? checksAtRest(checks) : checks,
    cautions: cautionsFor(kind),
  };
}
