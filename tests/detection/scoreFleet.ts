import { type BeyondCounts, countBeyond } from './beyondRates.ts';
import type { FleetRoom } from './fleets.ts';
import { type PlayedStroke, type PlayedWarning, playHistory } from './playFleet.ts';

/** How one simulated room was judged. */
export interface RoomScore {
  readonly seed: number;
  /** null: a healthy room. */
  readonly fault: string | null;
  readonly found: boolean;
  readonly rightKind: boolean;
  readonly rightSide: boolean;
  readonly rightPattern: boolean;
  /** Distance from the true place, as a part of the travel; null: the fault has no place, or it was not found. */
  readonly placeError: number | null;
  /** Strokes from the onset to the warning, the first faulty stroke counting as one. */
  readonly strokesToFind: number | null;
  /** How far a drift had come when it was said, natural logarithm. */
  readonly driftWhenFound: number | null;
  /** Found, yet nothing that fits the fault is open at the end, whatever became of it: some faults come and go. */
  readonly isOver: boolean;
  /** Warnings in strokes without any fault, and the strokes that they could have come in. */
  readonly falseWarnings: readonly string[];
  readonly healthyStrokes: number;
  /** Further warnings that the fault does not explain. */
  readonly besides: readonly string[];
  /** Healthy strokes by measure: how many were judged, and how many lay beyond their limits. */
  readonly beyond: BeyondCounts;
}

/** Drifts of the whole room; a drift of one side may be said by its share. */
const DRIFTS: ReadonlySet<string | null> = new Set(['friction-drift', 'drift']);

export function isDrift(fault: string | null): boolean {
  return DRIFTS.has(fault);
}

/** Plays and scores one room. A fault in the supply of a room whose supply nobody records cannot be seen: null. */
export function scoreRoom(member: FleetRoom): RoomScore | null {
  const { fault } = member;
  if (fault?.label.kind === 'weak-supply' && !member.recordsSupply) return null;
  const { warnings, strokes } = playHistory(member.room, member.events());
  return scoreStory(member, warnings, strokes);
}

/** Scores what was said of one room against the truth. */
function scoreStory(
  { fault, room, seed, strokes: length }: Pick<FleetRoom, 'fault' | 'room' | 'seed' | 'strokes'>,
  played: readonly PlayedWarning[],
  strokes: readonly PlayedStroke[],
): RoomScore {
  const startsStroke = fault?.startsStroke ?? length;
  const warnings = played.filter(
    (each) => fault?.label.kind === 'weak-supply' || !isWeakByRecord(each, strokes, room.nominalVolts),
  );
  const before = warnings.filter((warning) => warning.openedAt < startsStroke);
  const healthy = {
    falseWarnings: before.map(nameOf),
    healthyStrokes: Math.min(length, startsStroke),
    beyond: countBeyond(strokes.filter(({ index }) => index < startsStroke)),
  };
  if (fault === null) {
    const nothing = {
      placeError: null,
      strokesToFind: null,
      driftWhenFound: null,
      isOver: false,
      besides: [],
    };
    return {
      seed,
      fault: null,
      found: false,
      rightKind: false,
      rightSide: false,
      rightPattern: false,
      ...nothing,
      ...healthy,
    };
  }
  const { label } = fault;
  const after = warnings.filter((warning) => warning.openedAt >= startsStroke);
  const fits = (played: PlayedWarning) => [label.kind, ...label.alsoFits].includes(played.warning.kind);
  const hit = after.find((played) => played.warning.kind === label.kind) ?? after.find(fits);
  const position = hit?.warning.position ?? null;
  return {
    seed,
    fault: fault.name,
    found: hit !== undefined,
    rightKind: hit?.warning.kind === label.kind,
    rightSide: hit !== undefined && hit.warning.side === label.side && directionFits(hit, label.direction),
    rightPattern: label.pattern === null || hit?.warning.pattern === label.pattern,
    placeError: label.position === null || position === null ? null : Math.abs(position - label.position),
    strokesToFind: hit === undefined ? null : hit.openedAt - label.onsetStroke + 1,
    driftWhenFound:
      hit === undefined || !isDrift(fault.name)
        ? null
        : label.severity * (hit.openedAt - label.onsetStroke + 1),
    isOver: hit !== undefined && !after.some((played) => fits(played) && played.clearedAt === null),
    besides: after.filter((played) => !fits(played)).map(nameOf),
    ...healthy,
  };
}

/** Of the contract, section 6: below seven eighths of nominal in two strokes or more. */
const WEAK_PART = 7 / 8;
const WEAK_STROKES = 2;
/** The supply of a few strokes before may have raised it. */
const LATEST = 6;

/**
 * Whether a weak supply was said that the records themselves show: then it is true, whatever drew the supply down, a cold
 * snap on a tired battery or an overloaded motor.
 */
function isWeakByRecord(
  { warning, openedAt }: PlayedWarning,
  strokes: readonly PlayedStroke[],
  nominalVolts: number,
): boolean {
  if (warning.kind !== 'weak-supply') return false;
  const weak = strokes.filter(({ index, event: { analysis } }) => {
    const volts = analysis.status === 'done' ? analysis.supplyVolts : null;
    return (
      index > openedAt - LATEST && index <= openedAt && volts !== null && volts < WEAK_PART * nominalVolts
    );
  });
  return weak.length >= WEAK_STROKES;
}

function directionFits(hit: PlayedWarning, direction: string | null): boolean {
  return direction === null || hit.warning.direction === direction;
}

function nameOf({ warning, openedAt }: PlayedWarning): string {
  return `${warning.kind}${warning.pattern === null ? '' : ` ${warning.pattern}`} at stroke ${openedAt}`;
}
