import { median } from '../../statistics/median.ts';
import { presentAsTheyAre } from '../../statistics/select.ts';
import type { SideTrace } from '../../trace.ts';
import { lostSteps } from './lostSteps.ts';

/** Above this rate samples are averaged in blocks: nothing that a room does is faster. */
const HIGHEST_USEFUL_RATE_HZ = 200;

/** A step is a small part of the usual one below this part of it. */
const CROWDED_PART = 0.2;

/**
 * One side's current made ready for measuring: missed samples left out, driving current positive, at most 200
 * samples a second. `peakAmps` are the largest of each block, so that an inrush is not averaged away.
 */
export interface SideSignal {
  readonly side: string;
  /** What the recorded current was taken by: -1 where what drives the room read negative. */
  readonly sign: 1 | -1;
  /** Seconds from the stroke's start, strictly rising. */
  readonly timesS: Float64Array;
  /** Amperes; the sensor's offset is still in. To be read only, as the times are: they may be those that were recorded. */
  readonly amps: Float64Array;
  readonly peakAmps: Float64Array;
  /** The usual step between samples, seconds; and as they were recorded. */
  readonly stepS: number;
  readonly sampleStepS: number;
  /** Share of the samples that were missed, 0 to 1: told as such, or left out of a record that tells times. */
  readonly missedShare: number;
  /**
   * The most samples in a row whose step is a small part of the usual one: the clock stood still while the sensor went on. One
   * that merely trembles crowds many samples, but not those after each other.
   */
  readonly crowded: number;
  /** The longest time without a sample, seconds. */
  readonly longestGapS: number;
}

/** `sign`: +1, or -1 where the current that drives the room reads negative. Null with fewer than two samples. */
export function sideSignal(trace: SideTrace, sign: 1 | -1): SideSignal | null {
  const { timesS, amps } = trace;
  const isEven = areEven(timesS);
  const steps = isEven ? timesS.subarray(0, 0) : stepsOf(timesS);
  const rawStepS = toTheNanosecond(isEven ? timesS[1] - timesS[0] : median(steps));
  const read = readSamples(trace, sign);
  const kept = read.amps.length;
  if (kept < 2) return null;
  const block = Math.max(1, Math.floor(1 / (HIGHEST_USEFUL_RATE_HZ * rawStepS)));
  return {
    side: trace.side,
    sign,
    ...inBlocks(read.timesS, read.amps, block),
    stepS: rawStepS * block,
    sampleStepS: rawStepS,
    // A clock that ticks evenly neither stood still nor left anything out.
    crowded: isEven ? 0 : longestCrowd(steps, CROWDED_PART * rawStepS),
    missedShare: 1 - kept / (amps.length + (isEven ? 0 : lostSteps(steps, rawStepS))),
    longestGapS: longestStep(read.timesS),
  };
}

type Samples = Pick<SideTrace, 'timesS' | 'amps'>;

/** The samples that were not missed, driving current positive: those that were recorded where they are so already. */
function readSamples({ timesS, amps }: Samples, sign: 1 | -1): Samples {
  const read = presentAsTheyAre(amps);
  return {
    timesS: read === amps ? timesS : whereRead(timesS, amps),
    amps: sign === 1 ? read : negative(read),
  };
}

function whereRead(timesS: Float64Array, amps: Float64Array): Float64Array {
  const kept = new Float64Array(timesS.length);
  let count = 0;
  for (let i = 0; i < kept.length; i++) if (!Number.isNaN(amps[i])) kept[count++] = timesS[i];
  return kept.subarray(0, count);
}

function negative(values: Float64Array): Float64Array {
  const turned = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) turned[i] = -values[i];
  return turned;
}

/** The longest time from one sample to the next, seconds. */
function longestStep(timesS: Float64Array): number {
  let longest = 0;
  for (let i = 1; i < timesS.length; i++) {
    const step = timesS[i] - timesS[i - 1];
    if (step > longest) longest = step;
  }
  return longest;
}

/** Steps that differ by less than this part of one are even: what is left is how numbers are kept. */
const EVEN_PART = 1e-9;
/** Nor may it tell one stroke's windows, in whole samples, from the next one's: a step is told to the nanosecond. */
const STEPS_TO_A_SECOND = 1e9;

function toTheNanosecond(stepS: number): number {
  // A broken clock's steps may be shorter than that.
  return Math.round(stepS * STEPS_TO_A_SECOND) / STEPS_TO_A_SECOND || stepS;
}

function stepsOf(timesS: Float64Array): Float64Array {
  const steps = new Float64Array(Math.max(0, timesS.length - 1));
  for (let i = 1; i < timesS.length; i++) steps[i - 1] = timesS[i] - timesS[i - 1];
  return steps;
}

/** Whether all steps between times are alike, of which there is one at least. */
function areEven(timesS: Float64Array): boolean {
  const first = timesS[1] - timesS[0];
  const slack = EVEN_PART * first;
  for (let i = 2; i < timesS.length; i++)
    if (!(Math.abs(timesS[i] - timesS[i - 1] - first) <= slack)) return false;
  return timesS.length > 1;
}

function longestCrowd(steps: Float64Array, shortS: number): number {
  let longest = 0;
  let crowd = 0;
  for (let i = 0; i < steps.length; i++) {
    crowd = steps[i] < shortS ? crowd + 1 : 0;
    if (crowd > longest) longest = crowd;
  }
  return longest;
}

/** Mean time, mean and largest current of each `block` samples; a last incomplete block is left out. */
function inBlocks(
  timesS: Float64Array,
  amps: Float64Array,
  block: number,
): Pick<SideSignal, 'timesS' | 'amps' | 'peakAmps'> {
  if (block === 1) return { timesS, amps, peakAmps: amps };
  const count = Math.floor(amps.length / block);
  const times = new Float64Array(count);
  const means = new Float64Array(count);
  const peaks = new Float64Array(count);
  for (let b = 0; b < count; b++) {
    let time = 0;
    let sum = 0;
    let peak = -Infinity;
    for (let j = b * block; j < (b + 1) * block; j++) {
      time += timesS[j];
      sum += amps[j];
      if (amps[j] > peak) peak = amps[j];
    }
    times[b] = time / block;
    means[b] = sum / block;
    peaks[b] = peak;
  }
  return { timesS: times, amps: means, peakAmps: peaks };
}

/** Half a window of about `seconds` in whole samples, at least `least`. */
export function halfWindow(signal: { readonly stepS: number }, seconds: number, least = 1): number {
  return Math.max(least, Math.round(seconds / 2 / signal.stepS));
}
