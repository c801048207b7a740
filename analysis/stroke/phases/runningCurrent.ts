import { median, medianInPlace } from '../../statistics/median.ts';
import { quantileInPlace } from '../../statistics/quantile.ts';
import { ReusedArray } from '../../statistics/reusedArray.ts';
import type { SideToMeasure } from '../read/activeSide.ts';
import { firstAtOrAfter, type Interval } from '../signal/interval.ts';
import type { SideSignal } from '../signal/sideSignal.ts';
import { ownWaits } from './ownWaits.ts';
import type { FoundPhases } from './phases.ts';

/**
 * A start after a pause has an inrush of its own, which is no running current. It lasts at least and at most this long.
 */
const RESTART_S = 0.6;
const LONGEST_RESTART_S = 2;
/** Such a start is over once the current has fallen to this many times the running level. */
const SETTLED_PART = 1.1;
/** The last moments before the end hold the switch-off, or the foot of the end stop's rise. */
const LETTING_GO_S = 0.15;
/**
 * A controller that stops an idling side every half second, to keep it from running ahead, leaves less time between two
 * stops than `RESTART_S` and `LETTING_GO_S`. At most these parts of that time are left out, so that some of what the
 * side draws there still counts. Guesses, no source.
 */
const RESTART_PART = 0.5;
const LETTING_GO_PART = 0.25;

const NINETIETH = 0.9;

interface Levels {
  /** Median and 90th percentile, amperes; NaN where nothing is included. */
  readonly runningAmps: number;
  readonly runningAmpsP90: number;
}

/** The running current of one side. */
export interface RunningCurrent extends Levels {
  /** In order of time, amperes. Read only: they may be a view of all that the side drew. */
  readonly amps: Float64Array;
  /** Takes from other values, one for each sample of the side, those at the same samples as `amps`. Read only too. */
  readonly pick: (values: Float64Array) => Float64Array;
}

/**
 * What a side draws after its inrush and before its end stop, without pauses, its own waits and the starts after them.
 */
export function runningCurrent(side: SideToMeasure, phases: FoundPhases): RunningCurrent {
  const include = runningSamples(side.signal, side.amps, phases);
  const running = pickedBy(include, side.amps);
  if (!leaveOutWaits(side, phases, include, running.runningAmps)) return running;
  return pickedBy(include, side.amps);
}

function pickedBy(include: Uint8Array, sideAmps: Float64Array): RunningCurrent {
  const pick = pickerOf(include);
  const amps = pick(sideAmps);
  return { amps, pick, ...levelsOf(amps) };
}

/** Takes those values that are included: a view where they follow each other, as in most strokes. */
function pickerOf(include: Uint8Array): RunningCurrent['pick'] {
  const first = Math.max(0, include.indexOf(1));
  const end = include.lastIndexOf(1) + 1;
  if (!include.subarray(first, end).includes(0)) return (values) => values.subarray(first, end);
  return (values) => {
    const picked = new Float64Array(end - first);
    let count = 0;
    for (let i = first; i < end; i++) if (include[i] === 1) picked[count++] = values[i];
    return picked.subarray(0, count);
  };
}

const forRanks = new ReusedArray();

function levelsOf(running: Float64Array): Levels {
  const ranked = forRanks.copyOf(running);
  const runningAmpsP90 = quantileInPlace(ranked, NINETIETH);
  return { runningAmps: medianInPlace(ranked), runningAmpsP90 };
}

/**
 * Takes the waits of this side alone, and the starts after them, out of `include`. Answers whether there were any.
 * `level`: the median of what is included, amperes.
 */
function leaveOutWaits(
  side: SideToMeasure,
  phases: FoundPhases,
  include: Uint8Array,
  level: number,
): boolean {
  const within = { fromS: phases.inrushEndS, toS: phases.endStopStartS ?? phases.endS };
  const { signal, amps } = side;
  const waits = ownWaits(side, within, level);
  const at = (timeS: number) => firstAtOrAfter(signal.timesS, timeS);
  // A pause of the whole room is left out already, but not the rest of it where this side started later than the other.
  const alone = waits.filter(({ fromS, toS }) =>
    include.subarray(at(fromS), at(toS + RESTART_S)).includes(1),
  );
  leaveOut(signal, amps, alone, include);
  return alone.length > 0;
}

/** 1 for each sample of the running current: after the inrush, before the end stop, away from pauses. */
function runningSamples(signal: SideSignal, amps: Float64Array, phases: FoundPhases): Uint8Array {
  const { timesS } = signal;
  const include = new Uint8Array(timesS.length);
  const endS = (phases.endStopStartS ?? phases.endS) - Math.max(LETTING_GO_S, 2 * signal.stepS);
  include.fill(1, firstAtOrAfter(timesS, phases.inrushEndS), firstAtOrAfter(timesS, endS));
  leaveOut(signal, amps, phases.pauses, include);
  return include;
}

/**
 * Takes the times at which the side stood, and the starts after them, out of `include`. `stood` is in order of time.
 */
function leaveOut(
  signal: SideSignal,
  amps: Float64Array,
  stood: readonly Interval[],
  include: Uint8Array,
): void {
  const { timesS } = signal;
  stood.forEach(({ fromS, toS }, i) => {
    const ranS = fromS - (stood[i - 1]?.toS ?? Number.NEGATIVE_INFINITY);
    const leavesS = Math.min(LETTING_GO_S, LETTING_GO_PART * ranS);
    const startedS = toS + restartS(stood, i);
    include.fill(0, firstAtOrAfter(timesS, fromS - leavesS), firstAtOrAfter(timesS, startedS));
  });
  if (stood.length > 0) leaveOutRestarts(signal, amps, stood, include);
}

/** The least time, seconds, that is left out for the start after the stop with this index. */
function restartS(stood: readonly Interval[], i: number): number {
  const runsS = (stood[i + 1]?.fromS ?? Number.POSITIVE_INFINITY) - stood[i].toS;
  return Math.min(RESTART_S, RESTART_PART * runsS);
}

/** A heavy room takes longer to get going again: whatever is left of each new start is left out too. */
function leaveOutRestarts(
  { timesS }: SideSignal,
  amps: Float64Array,
  stood: readonly Interval[],
  include: Uint8Array,
): void {
  const settled = SETTLED_PART * median(pickerOf(include)(amps));
  stood.forEach(({ toS }, stop) => {
    const last = firstAtOrAfter(timesS, toS + LONGEST_RESTART_S);
    const from = firstAtOrAfter(timesS, toS + restartS(stood, stop));
    for (let i = from; i < last && amps[i] > settled; i++) include[i] = 0;
  });
}
