import type { SideMeasures } from '../measures.ts';
import { medianInPlace } from '../statistics/median.ts';
import { quantileInPlace } from '../statistics/quantile.ts';
import type { Direction, SupplyTrace } from '../trace.ts';
import { firstAtOrAfter, type Interval } from './interval.ts';
import { ownWaits } from './ownWaits.ts';
import { type FoundPhases, findPhases } from './phases.ts';
import { profileOf } from './profile.ts';
import type { ActiveSide } from './readSides.ts';
import type { SideSignal } from './sideSignal.ts';
import { excursions } from './spikes.ts';
import { interpolate, travelPosition } from './travelPosition.ts';

/** A start after a pause has an inrush of its own, which belongs to no running current: at least and at most so long. */
const RESTART_S = 0.6;
const LONGEST_RESTART_S = 2;
/** A start is over once the current is back within this part of the running level. */
const SETTLED_PART = 1.1;
/** The last moments before the end hold the switch-off, or the foot of the end stop's rise. */
const LETTING_GO_S = 0.15;

export interface SideToMeasure extends ActiveSide {
  /** When the whole room stood still. */
  readonly pauses: readonly Interval[];
  readonly supply: SupplyTrace | null;
  readonly direction: Direction;
}

/** One side with its phases, and where along the travel each of its samples was taken. */
export interface PlacedSide {
  readonly phases: FoundPhases;
  /** 1 for each sample of the running current. */
  readonly include: Uint8Array;
  /** The running current alone, in order of time, amperes. */
  readonly running: Float64Array;
  readonly runningAmps: number;
  readonly runningAmpsP90: number;
  /** When the room stops moving, seconds: the end stop's beginning, else the end. */
  readonly movingToS: number;
  /** 0 fully retracted to 1 fully extended, one per sample of the signal. */
  readonly positions: Float64Array;
}

/** Null where too little of it is running current (fewer than 5 samples). */
export function placeSide(side: SideToMeasure): PlacedSide | null {
  const { signal, amps, pauses, supply, direction } = side;
  const phases = findPhases(side, pauses);
  const include = runningSamples(signal, amps, phases);
  let running = pick(amps, include);
  let levels = levelsOf(running);
  if (leaveOutWaits(side, phases, include, levels.runningAmps)) {
    running = pick(amps, include);
    levels = levelsOf(running);
  }
  if (running.length < 5) return null;
  const { runningAmps, runningAmpsP90 } = levels;
  const movingToS = phases.endStopStartS ?? phases.endS;
  const positions = travelPosition({
    timesS: signal.timesS,
    amps,
    moving: { fromS: phases.startS, toS: movingToS },
    pauses,
    supply,
    stallAmps: Math.max(phases.inrushAmps, phases.endStopAmps ?? 0),
    runningAmps,
    direction,
  });
  return { phases, include, running, runningAmps, runningAmpsP90, movingToS, positions };
}

/** What one side says of a stroke; null where too little of it is running current (fewer than 5 samples). */
export function measureSide(side: SideToMeasure): SideMeasures | null {
  const { signal, rest, amps, pauses, supply } = side;
  const placed = placeSide(side);
  if (placed === null) return null;
  const { phases, include, running, runningAmps, runningAmpsP90, movingToS, positions } = placed;
  const { spikes, dips, roughness } = excursions({
    signal,
    timesS: pick(signal.timesS, include),
    amps: running,
    positions: pick(positions, include),
    noiseAmps: rest.noiseAmps,
    runningAmps,
  });
  const { inrushAmps, endStopAmps, ...times } = phases;
  return {
    inrushAmps,
    runningAmps,
    runningAmpsP90,
    endStopAmps,
    durationS: movingToS - phases.startS - pausedS(pauses),
    ...drawn(signal.timesS, amps, supply, phases),
    roughness,
    spikes,
    dips,
    profile: profileOf(positions, amps, include),
    offsetAmps: rest.offsetAmps,
    noiseAmps: rest.noiseAmps,
    phases: times,
    rateHz: 1 / signal.sampleStepS,
    sign: signal.sign,
  };
}

/** The values that are included, in order. */
function pick(values: Float64Array, include: Uint8Array): Float64Array {
  const picked = new Float64Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) if (include[i] === 1) picked[count++] = values[i];
  return picked.subarray(0, count);
}

function pausedS(pauses: readonly Interval[]): number {
  return pauses.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);
}

function levelsOf(running: Float64Array): Pick<PlacedSide, 'runningAmps' | 'runningAmpsP90'> {
  const ranked = running.slice();
  const runningAmpsP90 = quantileInPlace(ranked, 0.9);
  return { runningAmps: medianInPlace(ranked), runningAmpsP90 };
}

/**
 * Takes out of what is included when this side alone waited, with the starts after it. Answers whether it did. `level`: the
 * median of what is included, amperes.
 */
function leaveOutWaits(
  { signal, rest, amps }: SideToMeasure,
  phases: FoundPhases,
  include: Uint8Array,
  level: number,
): boolean {
  const within = { fromS: phases.inrushEndS, toS: phases.endStopStartS ?? phases.endS };
  const waits = ownWaits(signal, amps, rest, within, level);
  const at = (timeS: number) => firstAtOrAfter(signal.timesS, timeS);
  // Where the whole room paused all is left out already, but not where this side started later than the other.
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

/** Leaves out when the side stood, with the starts after it. */
function leaveOut(
  signal: SideSignal,
  amps: Float64Array,
  stood: readonly Interval[],
  include: Uint8Array,
): void {
  const { timesS } = signal;
  for (const { fromS, toS } of stood) {
    include.fill(0, firstAtOrAfter(timesS, fromS - LETTING_GO_S), firstAtOrAfter(timesS, toS + RESTART_S));
  }
  if (stood.length > 0) leaveOutRestarts(signal, amps, stood, include);
}

/** A heavy room takes longer to get going again: the rest of each new start is left out too. */
function leaveOutRestarts(
  { timesS }: SideSignal,
  amps: Float64Array,
  pauses: readonly Interval[],
  include: Uint8Array,
): void {
  const settled = SETTLED_PART * medianInPlace(pick(amps, include));
  for (const { toS } of pauses) {
    const last = firstAtOrAfter(timesS, toS + LONGEST_RESTART_S);
    for (let i = firstAtOrAfter(timesS, toS + RESTART_S); i < last && amps[i] > settled; i++) include[i] = 0;
  }
}

/** Charge and energy over the whole span by the trapezium rule; energy needs the supply. */
function drawn(
  timesS: Float64Array,
  amps: Float64Array,
  supply: SupplyTrace | null,
  phases: FoundPhases,
): { chargeAs: number; energyJ: number | null } {
  const from = firstAtOrAfter(timesS, phases.startS);
  const end = Math.min(timesS.length, firstAtOrAfter(timesS, phases.endS) + 1);
  const volts = supply === null ? null : interpolate(supply, timesS);
  let chargeAs = 0;
  let energyJ = 0;
  for (let i = from + 1; i < end; i++) {
    const stepS = timesS[i] - timesS[i - 1];
    const mean = (amps[i] + amps[i - 1]) / 2;
    chargeAs += mean * stepS;
    if (volts !== null) energyJ += mean * ((volts[i] + volts[i - 1]) / 2) * stepS;
  }
  return { chargeAs, energyJ: volts === null ? null : energyJ };
}
