import type { StrokeAnalysis } from '../../measures.ts';
import type { RoomState } from '../../roomState.ts';
import { mostNoise, noiseDetail } from '../../stroke/noise.ts';
import { offsetDetail } from '../../stroke/offsetDetail.ts';
import type { Warning } from '../../warning.ts';
import { isCutOff } from './cutLevel.ts';
import {
  CUT,
  changedScale,
  movedZero,
  type SaidOfRecord,
  sharedScale,
  TURNED,
  wrongRate,
} from './saidOfRecord.ts';

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
  /** Of each side's rest, by `restChange`. */
  readonly rests: ReadonlyMap<string, 'offset' | 'noise'>;
  /** Of the logger's rate, by `rateChange`; null: none. */
  readonly rate: number | null;
}

/** No change at all: of a stroke that could not be measured. */
export const NO_CHANGES: SensorChanges = {
  scales: new Map(),
  zeros: new Map(),
  turned: new Set(),
  fallen: new Set(),
  rests: new Map(),
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

/** What speaks against the record of all sides at once, whatever the date says. */
export function saidOfAll(
  { doubts = [] }: StrokeAnalysis,
  { scales, rate }: SensorChanges,
  sides: readonly string[],
): SaidOfRecord | undefined {
  return (
    doubts.find(({ doubt }) => doubt === 'clock') ??
    (rate === null ? undefined : wrongRate(rate)) ??
    sharedScale(scales, sides)
  );
}

/** What speaks against the record of one side, but for its scale; the memory of its cuts takes the stroke in. */
export function saidOfSide(
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
    (changes.turned.has(side) ? TURNED : undefined) ??
    otherRest(analysis, side, changes.rests.get(side))
  );
}

/** A rest that is no longer what it was, by its level or its noise. */
function otherRest(
  analysis: StrokeAnalysis,
  side: string,
  change: 'offset' | 'noise' | undefined,
): SaidOfRecord | undefined {
  const measured = analysis.status === 'done' ? analysis.sides[side] : undefined;
  if (measured === undefined || change === undefined) return undefined;
  if (change === 'noise') return { doubt: 'noise', detail: noiseDetail(measured.noiseAmps) };
  return {
    doubt: 'offset',
    detail: offsetDetail(measured.offsetAmps ?? 0),
    restAmps: restOf(analysis, side),
  };
}

/** A scale that this side alone changed. */
export function ownScale(
  { scales }: SensorChanges,
  side: string,
  sides: readonly string[],
): SaidOfRecord | undefined {
  const scale = scales.get(side);
  return scale === undefined || sharedScale(scales, sides) !== undefined ? undefined : changedScale(scale);
}

/** Whether several strokes have shown already that a side's record is cut off. */
function cutOff(state: RoomState, analysis: StrokeAnalysis, side: string, fell: boolean): boolean {
  const measured = analysis.status === 'done' ? analysis.sides[side] : undefined;
  if (analysis.status !== 'done' || measured === undefined) return false;
  const isCut = (analysis.doubts ?? []).some((doubt) => doubt.side === side && doubt.doubt === 'clipped');
  return isCutOff(state.cut[side], measured, analysis.direction, isCut, fell);
}

/** A zero that was said to be off is off while the sensor at rest reads so much of that still, driven either way. A guess, no source. */
const STILL_OFF_PART = 0.6;

/**
 * The limit that a reading at rest must pass to be said goes with the running current, and the reading lies now above and
 * now below it: what was said lasts until the zero is back.
 */
export function stillOff(
  analysis: StrokeAnalysis,
  side: string,
  open: Warning | undefined,
): SaidOfRecord | undefined {
  const now = restOf(analysis, side);
  const said = open?.evidence.doubt === 'offset' ? open.evidence.restAmps : undefined;
  if (said === undefined || now === undefined || Math.abs(now / said) < STILL_OFF_PART) return undefined;
  return { doubt: 'offset', detail: offsetDetail(now), restAmps: said };
}

/** Noise that was said lasts while it is so much of what is said. A guess, no source. */
const STILL_NOISY_PART = 0.6;

/** The limit of noise goes with the running current as well, and the noise lies now above and now below it. */
export function stillNoisy(
  analysis: StrokeAnalysis,
  side: string,
  open: Warning | undefined,
): SaidOfRecord | undefined {
  const measured = analysis.status === 'done' ? analysis.sides[side] : undefined;
  if (open?.evidence.doubt !== 'noise' || measured === undefined) return undefined;
  return measured.noiseAmps < STILL_NOISY_PART * mostNoise(measured)
    ? undefined
    : { doubt: 'noise', detail: noiseDetail(measured.noiseAmps) };
}

function restOf(analysis: StrokeAnalysis, side: string): number | undefined {
  const amps = analysis.status === 'done' ? (analysis.sides[side]?.offsetAmps ?? null) : null;
  return amps === null ? undefined : Math.round(100 * amps) / 100;
}
