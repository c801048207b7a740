import type { StrokeAnalysis } from '../../measures.ts';
import type { RoomState } from '../../roomState.ts';
import { mostNoise, noiseDetail } from '../../stroke/doubts/noise.ts';
import { offsetDetail } from '../../stroke/rest/offset.ts';
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

/**
 * What several strokes show to have changed in the record itself. Changes are natural logarithms unless said otherwise.
 */
export interface SensorChanges {
  /** Of each side's scale, by `scaleChange`. */
  readonly scales: ReadonlyMap<string, number>;
  /** Of each side's zero, amperes, by `zeroChange`: only where no rest was recorded to tell it. */
  readonly zeros: ReadonlyMap<string, number>;
  /** Sides whose sensor was turned round, by `isTurned`: their current is as good as ever but for its sign. */
  readonly turned: ReadonlySet<string>;
  /** Sides whose stall reads far less than it did, by `stopFell`. */
  readonly fallen: ReadonlySet<string>;
  /** Of each side's rest, by `restChange`. */
  readonly rests: ReadonlyMap<string, 'offset' | 'noise'>;
  /** Of the logger's rate, by `rateChange`: the factor by which all strokes seem to take longer; null: none. */
  readonly rate: number | null;
}

/** No change at all, as for a stroke that could not be measured. */
export const NO_CHANGES: SensorChanges = {
  scales: new Map(),
  zeros: new Map(),
  turned: new Set(),
  fallen: new Set(),
  rests: new Map(),
  rate: null,
};

/** One stroke, and what speaks against the record of all its sides. */
interface RecordedStroke {
  readonly state: RoomState;
  readonly analysis: StrokeAnalysis;
  readonly changes: SensorChanges;
  /** What speaks against all sides; undefined: nothing. */
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

/** What speaks against the record of one side, its scale left out. Takes the stroke into the memory of its cuts. */
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

/** What speaks against a rest whose level or noise has changed. */
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

/** A changed scale, unless all sides share it. */
export function ownScale(
  { scales }: SensorChanges,
  side: string,
  sides: readonly string[],
): SaidOfRecord | undefined {
  const scale = scales.get(side);
  return scale === undefined || sharedScale(scales, sides) !== undefined ? undefined : changedScale(scale);
}

/** Whether several strokes together show that a side's record is cut off. */
function cutOff(state: RoomState, analysis: StrokeAnalysis, side: string, fell: boolean): boolean {
  const measured = analysis.status === 'done' ? analysis.sides[side] : undefined;
  if (analysis.status !== 'done' || measured === undefined) return false;
  const isCut = (analysis.doubts ?? []).some((doubt) => doubt.side === side && doubt.doubt === 'clipped');
  return isCutOff(state.cut[side], measured, analysis.direction, isCut, fell);
}

/**
 * A warning of a rest lasts while the rest still reads this part of what it did then, in either direction. A guess, no
 * source.
 */
const STILL_PART = 0.6;

/**
 * What still speaks against a side by an open warning of its rest. The limits for level and noise go with the running
 * current, so that a rest near them passes them now and then; the warning lasts until the rest is plainly as it was.
 */
export function stillSaid(
  analysis: StrokeAnalysis,
  side: string,
  open: Warning | undefined,
): SaidOfRecord | undefined {
  const measured = analysis.status === 'done' ? analysis.sides[side] : undefined;
  if (open === undefined || measured === undefined) return undefined;
  const { doubt, restAmps: said } = open.evidence;
  if (doubt === 'noise' && measured.noiseAmps >= STILL_PART * mostNoise(measured))
    return { doubt, detail: noiseDetail(measured.noiseAmps) };
  const now = restOf(analysis, side);
  if (doubt !== 'offset' || said === undefined || now === undefined) return undefined;
  return Math.abs(now / said) < STILL_PART ? undefined : { doubt, detail: offsetDetail(now), restAmps: said };
}

function restOf(analysis: StrokeAnalysis, side: string): number | undefined {
  const amps = analysis.status === 'done' ? (analysis.sides[side]?.offsetAmps ?? null) : null;
  return amps === null ? undefined : Math.round(100 * amps) / 100;
}
