import type { StrokeEvent } from '../history.ts';
import type { Doubt, StrokeAnalysis } from '../measures.ts';
import type { RoomState } from '../room/state.ts';
import type { Warning } from '../warning.ts';
import { isOverAfter, noteComing, saidAnew } from './comesBack.ts';
import { isCutOff } from './cutLevel.ts';
import { type Finding, type FindingAnswer, openOf } from './finding.ts';
import { nameAll, nameSide } from './names.ts';
import { flag, isLasting } from './recent.ts';

/** After so many strokes that nothing speaks against, a record is to be trusted again. */
const CLEAR_STROKES = 4;
/** Of the last four strokes of a side, so many must speak against its record: a single noisy one happens. */
const LEAST_STROKES = 2;

/** Changes that show over several strokes only, natural logarithm. */
export interface SensorChanges {
  /** Of each side's scale, by `scaleChange`. */
  readonly scales: ReadonlyMap<string, number>;
  /** Of each side's zero, by `zeroChange`, amperes. */
  readonly zeros: ReadonlyMap<string, number>;
  /** Sides that read the other way round, by `isTurned`. */
  readonly turned: ReadonlySet<string>;
  /** Sides whose stall reads far less than it did, by `stopFell`. */
  readonly fallen: ReadonlySet<string>;
  /** Of the logger's rate, by `rateChange`; null: none. */
  readonly rate: number | null;
}

export const NO_CHANGES: SensorChanges = {
  scales: new Map(),
  zeros: new Map(),
  turned: new Set(),
  fallen: new Set(),
  rate: null,
};

/** What is said of a stroke whose date cannot be. Its samples are as good as any: no side is held back for it. */
export const MISDATED = {
  doubt: 'clock',
  detail: 'Its date lies ahead or before 2015: it is placed by when it arrived.',
} as const;

/**
 * The record itself is not to be trusted. Works from the doubts that measuring left, unusable strokes included; sides
 * that were not recorded say nothing. A date that cannot be is beyond doubt, and said at once; so are a wrong
 * rate and a cut, which several strokes have shown already.
 */
export function sensorDoubt(
  state: RoomState,
  { analysis, placedByArrival = false }: StrokeEvent,
  { scales, zeros, turned, fallen, rate }: SensorChanges,
): FindingAnswer {
  const present: Finding[] = [];
  const gone: FindingAnswer['gone'][number][] = [];
  const doubts = analysis.doubts ?? [];
  const bothScales = sharedScale(scales, state.room.sides);
  const areAllTurned = state.room.sides.length > 1 && state.room.sides.every((side) => turned.has(side));
  const bothTurned = areAllTurned ? TURNED : undefined;
  const shared =
    doubts.find(({ doubt }) => doubt === 'clock') ??
    sharedGap(doubts, state.room.sides) ??
    wrongRate(rate) ??
    bothScales ??
    bothTurned;
  const timed = placedByArrival ? MISDATED : shared;
  const timedNeeds = placedByArrival || rate !== null ? 1 : LEAST_STROKES;
  // With one side, what speaks against the logger and what speaks against the side is one warning.
  const alone = state.room.sides.length === 1;
  for (const side of state.room.sides) {
    const isCut = cutOff(state, analysis, side, fallen.has(side));
    const ofSide = doubts.find(
      ({ side: whose, doubt }) =>
        whose === side && doubt !== 'clock' && (doubt !== 'clipped' || isCut) && shared === undefined,
    );
    const cut = isCut && shared === undefined ? CUT : undefined;
    const own =
      ofSide ??
      cut ??
      movedZero(side, zeros) ??
      turnedRound(side, turned, shared) ??
      (alone ? timed : undefined);
    const scale = bothScales === undefined ? scales.get(side) : undefined;
    const recorded = own !== undefined || (analysis.status === 'done' && analysis.sides[side] !== undefined);
    // A side without load draws so little that its record looks empty or noisy.
    const idles = openOf(state, 'dropped-load').some((dropped) => dropped.side === side);
    if (!recorded || idles) continue;
    const spoken = own !== undefined || scale !== undefined;
    const flags = flag(state.recent, `sensor-doubt ${side}`, spoken);
    const open = openOf(state, 'sensor-doubt').find((warning) => warning.side === side);
    const memory = state.doubts[side];
    noteComing(memory, spoken);
    if (open !== undefined && isOverAfter(memory, CLEAR_STROKES)) gone.push(open);
    const needed =
      own !== undefined && own === timed ? timedNeeds : own?.doubt === 'clipped' ? 1 : LEAST_STROKES;
    if (!spoken || (open === undefined && !isLasting(flags, needed, 4))) continue;
    // A zero that is read off a record which is worse than that says nothing new.
    if (open !== undefined && own?.doubt === 'offset' && isWorse(open)) {
      present.push(open);
      continue;
    }
    if (open === undefined) saidAnew(memory);
    const detail = own?.detail ?? readsScaled(scale ?? 0);
    const of = own !== undefined && own === timed ? null : side;
    present.push(finding(of, own?.doubt ?? 'scale', detail, state.room.sides));
  }
  if (alone) return { present, gone };
  const flags = flag(state.recent, 'sensor-doubt clock', timed !== undefined);
  const open = openOf(state, 'sensor-doubt').find((warning) => warning.side === null);
  noteComing(state.doubtsOfAll, timed !== undefined);
  if (open !== undefined && isOverAfter(state.doubtsOfAll, CLEAR_STROKES)) gone.push(open);
  else if (timed !== undefined && (open !== undefined || isLasting(flags, timedNeeds, 4))) {
    if (open === undefined) saidAnew(state.doubtsOfAll);
    present.push(finding(null, timed.doubt, timed.detail, state.room.sides));
  }
  return { present, gone };
}

const CUT = { doubt: 'clipped', detail: 'The highest readings are all the same: cut off.' } as const;

/** Whether several strokes have shown already that a side's record is cut off. */
function cutOff(state: RoomState, analysis: StrokeAnalysis, side: string, fell: boolean): boolean {
  const measured = analysis.status === 'done' ? analysis.sides[side] : undefined;
  if (analysis.status !== 'done' || measured === undefined) return false;
  const isCut = (analysis.doubts ?? []).some((doubt) => doubt.side === side && doubt.doubt === 'clipped');
  return isCutOff(state.cut[side], measured, analysis.direction, isCut, fell);
}

const HARMS_LITTLE: ReadonlySet<Doubt | undefined> = new Set(['offset', 'scale', 'reversed']);

/** Whether more is wrong with a record than its zero. */
export function isWorse({ evidence }: Warning): boolean {
  return !HARMS_LITTLE.has(evidence.doubt);
}

const TURNED = {
  doubt: 'reversed',
  detail:
    'It reads the other way round than it did, both ways: the clamp was put on the other way, or its wires were swapped.',
} as const;

/** A side that was turned by itself. */
function turnedRound(
  side: string,
  turned: SensorChanges['turned'],
  shared: { readonly doubt: Doubt; readonly detail: string } | undefined,
): typeof TURNED | undefined {
  return turned.has(side) && shared !== TURNED ? TURNED : undefined;
}

function movedZero(
  side: string,
  zeros: SensorChanges['zeros'],
): { readonly doubt: Doubt; readonly detail: string } | undefined {
  const amps = zeros.get(side);
  if (amps === undefined) return undefined;
  const reads = `${Math.abs(amps).toFixed(1)} A`;
  return {
    doubt: 'offset',
    detail: `Its zero moved by ${reads}: whatever the current, it reads wrong by that much.`,
  };
}

/** Sides whose scale changed by factors no further apart than this changed together, natural logarithm. */
const ONE_SCALE = 0.2;

/** The scale of all sides at once is the logger's: its range was switched, or its unit. */
function sharedScale(
  scales: SensorChanges['scales'],
  sides: readonly string[],
): { readonly doubt: Doubt; readonly detail: string } | undefined {
  const changes = [...scales.values()];
  const [least, most] = [Math.min(...changes), Math.max(...changes)];
  if (sides.length < 2 || changes.length < sides.length || most - least > ONE_SCALE) return undefined;
  return { doubt: 'scale', detail: readsScaled((least + most) / 2) };
}

function readsScaled(scale: number): string {
  const percent = Math.round(100 * Math.expm1(scale));
  const as = percent > 0 ? 'higher' : 'lower';
  return `All its currents read ${Math.abs(percent)} % ${as} than they did, also where the motor stands.`;
}

/** A rate that was told wrongly stretches every stroke alike; it was seen in several before it is said at all. */
function wrongRate(rate: number | null): { readonly doubt: Doubt; readonly detail: string } | undefined {
  if (rate === null) return undefined;
  const percent = Math.round(100 * Math.abs(Math.expm1(rate)));
  const as = rate > 0 ? 'longer' : 'shorter';
  return {
    doubt: 'clock',
    detail: `Every stroke seems to take ${percent} % ${as} than it did, at an unchanged current.`,
  };
}

/** Samples missing from every side at once speak of the logger, not of a sensor. */
function sharedGap(
  doubts: NonNullable<StrokeAnalysis['doubts']>,
  sides: readonly string[],
): NonNullable<StrokeAnalysis['doubts']>[number] | undefined {
  const gaps = doubts.filter(({ doubt }) => doubt === 'gaps');
  return sides.length > 1 && gaps.length === sides.length ? gaps[0] : undefined;
}

function finding(side: string | null, doubt: Doubt, detail: string, sides: readonly string[]): Finding {
  const named = side === null ? nameAll(sides) : nameSide(side, sides);
  const itsClock = detail === MISDATED.detail ? 'The date of a stroke' : "The logger's clock";
  const whose = side === null && doubt === 'clock' ? itsClock : `The record of ${named}`;
  return {
    kind: 'sensor-doubt',
    side: side === null && sides.length === 1 ? sides[0] : side,
    direction: null,
    position: null,
    pattern: null,
    severity: 'watch',
    headline: `${whose} is not to be trusted: ${detail}`,
    evidence: { doubt, detail },
  };
}
