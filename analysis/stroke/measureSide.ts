import type { SideMeasures } from '../measures.ts';
import { heldReading } from './doubts/heldReading.ts';
import { excursions } from './peaks/spikes.ts';
import { type FoundPhases, findPhases } from './phases/phases.ts';
import { type RunningCurrent, runningCurrent } from './phases/runningCurrent.ts';
import { profileOf } from './profile.ts';
import type { SideToMeasure } from './read/activeSide.ts';
import { firstAtOrAfter, type Interval, lastS } from './signal/interval.ts';
import { outsideOf } from './signal/outsideOf.ts';
import { travelPosition } from './travelPosition.ts';

/** One side with its phases, and where along the travel each of its samples was taken. */
export interface PlacedSide {
  readonly phases: FoundPhases;
  readonly running: RunningCurrent;
  /** When the room stops moving, seconds: the end stop's beginning, else the end. */
  readonly movingToS: number;
  /** 0 fully retracted to 1 fully extended, one per sample of the signal. */
  readonly positions: Float64Array;
}

/** Fewer samples of the running current tell nothing. */
const FEWEST_SAMPLES = 5;

/** Null where too little of it is running current (fewer than 5 samples). */
export function placeSide(side: SideToMeasure): PlacedSide | null {
  const { signal, amps, pauses, volts, direction } = side;
  const phases = findPhases(side, pauses);
  const running = runningCurrent(side, phases);
  if (running.amps.length < FEWEST_SAMPLES) return null;
  const movingToS = phases.endStopStartS ?? phases.endS;
  const positions = travelPosition({
    timesS: signal.timesS,
    amps,
    moving: { fromS: phases.startS, toS: movingToS },
    pauses,
    volts,
    stallAmps: Math.max(phases.inrushAmps, phases.endStopAmps ?? 0),
    runningAmps: running.runningAmps,
    direction,
  });
  return { phases, running, movingToS, positions };
}

const ALL_TIMES: Interval = { fromS: Number.NEGATIVE_INFINITY, toS: Number.POSITIVE_INFINITY };

/** What one side says of a stroke; null where too little of it is running current (fewer than 5 samples). */
export function measureSide(side: SideToMeasure): SideMeasures | null {
  const { signal, rest, pauses } = side;
  const placed = placeSide(side);
  if (placed === null) return null;
  const { phases, running, movingToS, positions } = placed;
  const { amps, pick, runningAmps, runningAmpsP90 } = running;
  const [timesS, runningPositions] = [pick(signal.timesS), pick(positions)];
  const { spikes, dips, heldBack, roughness } = excursions({
    signal,
    timesS,
    amps,
    positions: runningPositions,
    noiseAmps: rest.noiseAmps,
    runningAmps,
  });
  const ofLoad = (values: Float64Array) => outsideOf(timesS, values, ALL_TIMES, heldBack);
  const { inrushAmps, endStopAmps, ...times } = phases;
  const held = heldReading(signal, rest, runningAmpsP90);
  return {
    inrushAmps,
    runningAmps,
    runningAmpsP90,
    endStopAmps,
    durationS: movingToS - phases.startS - lastS(pauses),
    ...drawn(side, phases),
    roughness,
    spikes,
    dips,
    profile: profileOf(ofLoad(runningPositions), ofLoad(amps)),
    offsetAmps: rest.offsetAmps,
    noiseAmps: rest.noiseAmps,
    phases: times,
    rateHz: 1 / signal.sampleStepS,
    sign: signal.sign,
    ...(held === null ? {} : { held }),
  };
}

/** Charge and energy over the whole span by the trapezium rule; energy needs the supply. */
function drawn(
  { signal: { timesS }, amps, volts }: SideToMeasure,
  phases: FoundPhases,
): { chargeAs: number; energyJ: number | null } {
  const from = firstAtOrAfter(timesS, phases.startS);
  const end = Math.min(timesS.length, firstAtOrAfter(timesS, phases.endS) + 1);
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
