import type { StrokeEvent } from '../../history.ts';
import type { Doubt, StrokeAnalysis } from '../../measures.ts';
import { nameAll, nameSide } from '../../names.ts';
import type { RoomState } from '../../roomState.ts';
import { offsetDetail } from '../../stroke/offsetDetail.ts';
import type { Warning } from '../../warning.ts';
import { isOverAfter, noteComing, saidAnew } from '../comesBack.ts';
import { type Finding, type FindingAnswer, NOTHING, openOf } from '../finding.ts';
import { flag, isLasting } from '../recent.ts';
import { isCutOff } from './cutLevel.ts';
import {
  CUT,
  changedScale,
  MISDATED,
  movedZero,
  type SaidOfRecord,
  sharedGap,
  sharedScale,
  TURNED,
  wrongRate,
} from './saidOfRecord.ts';

/** After so many strokes that nothing speaks against, a record is to be trusted again. */
const CLEAR_STROKES = 4;
/** Of so many of the latest strokes of a side, so many must speak against its record: a single noisy one happens. */
const LATEST_STROKES = 4;
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

/** Of a stroke that could not be measured. */
export const NO_CHANGES: SensorChanges = {
  scales: new Map(),
  zeros: new Map(),
  turned: new Set(),
  fallen: new Set(),
  rate: null,
};

/** One stroke, and what speaks against all that was recorded of it. */
interface RecordedStroke {
  readonly state: RoomState;
  readonly analysis: StrokeAnalysis;
  readonly changes: SensorChanges;
  /** undefined: nothing does. */
  readonly shared: SaidOfRecord | undefined;
}

/** What speaks against the record of a side (null: of all, or the logger's clock). */
interface SaidOfSubject {
  readonly side: string | null;
  readonly said: SaidOfRecord | undefined;
  /** Of the latest strokes so many must. */
  readonly needed: number;
  /** Whether it is told of the logger. */
  readonly isOfLogger: boolean;
}

/**
 * The record itself is not to be trusted. Works from the doubts that measuring left, unusable strokes included; sides
 * that were not recorded say nothing. A date that cannot be is beyond doubt, and said at once; so are a wrong
 * rate and a cut, which several strokes have shown already.
 */
export function sensorDoubt(
  state: RoomState,
  { analysis, placedByArrival = false }: StrokeEvent,
  changes: SensorChanges,
): FindingAnswer {
  const { sides } = state.room;
  const shared = saidOfAll(analysis, changes, sides);
  const ofLogger = placedByArrival ? MISDATED : shared;
  const loggerNeeds = placedByArrival || changes.rate !== null ? 1 : LEAST_STROKES;
  // With one side, what speaks against the logger and what speaks against the side is one warning.
  const isAlone = sides.length === 1;
  const answers = sides.map((side) => {
    const own = saidOfSide({ state, analysis, changes, shared }, side);
    const said =
      own ??
      (isAlone ? ofLogger : undefined) ??
      stillOff(analysis, side, openOn(state, side)) ??
      ownScale(changes, side, sides);
    // A side without load draws so little that its record looks empty or noisy.
    const idles = openOf(state, 'dropped-load').some((dropped) => dropped.side === side);
    if (idles || (said === undefined && !isRecorded(analysis, side))) return NOTHING;
    const isOfLogger = said !== undefined && said === ofLogger;
    const needed = isOfLogger ? loggerNeeds : said?.doubt === 'clipped' ? 1 : LEAST_STROKES;
    return keepUp(state, { side, said, needed, isOfLogger });
  });
  if (!isAlone)
    answers.push(keepUp(state, { side: null, said: ofLogger, needed: loggerNeeds, isOfLogger: true }));
  return {
    present: answers.flatMap(({ present }) => present),
    gone: answers.flatMap(({ gone }) => gone),
  };
}

function openOn(state: RoomState, side: string | null): Warning | undefined {
  return openOf(state, 'sensor-doubt').find((warning) => warning.side === side);
}

/** Takes in what one stroke says of a record, and answers whether it is doubted. */
function keepUp(state: RoomState, { side, said, needed, isOfLogger }: SaidOfSubject): FindingAnswer {
  const flags = flag(state.recent, `sensor-doubt ${side ?? 'clock'}`, said !== undefined);
  const open = openOn(state, side);
  const memory = side === null ? state.doubtsOfAll : state.doubts[side];
  noteComing(memory, said !== undefined);
  if (open !== undefined && isOverAfter(memory, CLEAR_STROKES)) return { present: [], gone: [open] };
  if (said === undefined) return NOTHING;
  if (open === undefined && !isLasting(flags, needed, LATEST_STROKES)) return NOTHING;
  // A zero that is read off a record which is worse than that says nothing new.
  if (open !== undefined && said.doubt === 'offset' && isWorse(open)) return { present: [open], gone: [] };
  if (open === undefined) saidAnew(memory);
  return { present: [finding(isOfLogger ? null : side, said, state.room.sides)], gone: [] };
}

/** What speaks against the record of all sides at once, whatever the date says. */
function saidOfAll(
  { doubts = [] }: StrokeAnalysis,
  { scales, turned, rate }: SensorChanges,
  sides: readonly string[],
): SaidOfRecord | undefined {
  const areAllTurned = sides.length > 1 && sides.every((side) => turned.has(side));
  return (
    doubts.find(({ doubt }) => doubt === 'clock') ??
    sharedGap(doubts, sides) ??
    (rate === null ? undefined : wrongRate(rate)) ??
    sharedScale(scales, sides) ??
    (areAllTurned ? TURNED : undefined)
  );
}

/** What speaks against the record of one side, but for its scale; the memory of its cuts takes the stroke in. */
function saidOfSide(
  { state, analysis, changes, shared }: RecordedStroke,
  side: string,
): SaidOfRecord | undefined {
  const isCut = cutOff(state, analysis, side, changes.fallen.has(side));
  const left = (analysis.doubts ?? []).find(
    ({ side: whose, doubt }) =>
      whose === side && doubt !== 'clock' && (doubt !== 'clipped' || isCut) && shared === undefined,
  );
  const zero = changes.zeros.get(side);
  return (
    (left?.doubt === 'offset' ? { ...left, restAmps: restOf(analysis, side) } : left) ??
    (isCut && shared === undefined ? CUT : undefined) ??
    (zero === undefined ? undefined : movedZero(zero)) ??
    (changes.turned.has(side) && shared !== TURNED ? TURNED : undefined)
  );
}

/** A scale that this side alone changed. */
function ownScale(
  { scales }: SensorChanges,
  side: string,
  sides: readonly string[],
): SaidOfRecord | undefined {
  const scale = scales.get(side);
  return scale === undefined || sharedScale(scales, sides) !== undefined ? undefined : changedScale(scale);
}

function isRecorded(analysis: StrokeAnalysis, side: string): boolean {
  return analysis.status === 'done' && analysis.sides[side] !== undefined;
}

/** Whether several strokes have shown already that a side's record is cut off. */
function cutOff(state: RoomState, analysis: StrokeAnalysis, side: string, fell: boolean): boolean {
  const measured = analysis.status === 'done' ? analysis.sides[side] : undefined;
  if (analysis.status !== 'done' || measured === undefined) return false;
  const isCut = (analysis.doubts ?? []).some((doubt) => doubt.side === side && doubt.doubt === 'clipped');
  return isCutOff(state.cut[side], measured, analysis.direction, isCut, fell);
}

/** A zero that was said to be off is off while the sensor at rest reads so much of that still. A guess, no source. */
const STILL_OFF_PART = 0.6;

/**
 * The limit that a reading at rest must pass to be said goes with the running current, and the reading lies now above and
 * now below it: what was said lasts until the zero is back.
 */
function stillOff(
  analysis: StrokeAnalysis,
  side: string,
  open: Warning | undefined,
): SaidOfRecord | undefined {
  const now = restOf(analysis, side);
  const said = open?.evidence.doubt === 'offset' ? open.evidence.restAmps : undefined;
  if (said === undefined || now === undefined || now / said < STILL_OFF_PART) return undefined;
  return { doubt: 'offset', detail: offsetDetail(now), restAmps: said };
}

function restOf(analysis: StrokeAnalysis, side: string): number | undefined {
  const amps = analysis.status === 'done' ? (analysis.sides[side]?.offsetAmps ?? null) : null;
  return amps === null ? undefined : Math.round(100 * amps) / 100;
}

const HARMS_LITTLE: ReadonlySet<Doubt | undefined> = new Set(['offset', 'scale', 'reversed']);

/** Whether more is wrong with a record than its zero. */
export function isWorse({ evidence }: Warning): boolean {
  return !HARMS_LITTLE.has(evidence.doubt);
}

/** `side`: null for the logger, or all sides. */
function finding(side: string | null, said: SaidOfRecord, sides: readonly string[]): Finding {
  const { doubt, detail, restAmps } = said;
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
    headline: `${whose} cannot be trusted. ${detail}`,
    evidence: { doubt, detail, ...(restAmps === undefined ? {} : { restAmps }) },
  };
}
