import { median } from '../statistics/median.ts';
import type { SideTrace } from '../trace.ts';

/** Above this rate samples are averaged in blocks: nothing that a room does is faster. */
const HIGHEST_USEFUL_RATE_HZ = 200;

const CROWDED_PART = 0.2;

/**
 * One side's current made ready for measuring: missed samples left out, driving current positive, at most 200
 * samples a second. `peakAmps` are the largest of each block, so that an inrush is not averaged away.
 */
export interface SideSignal {
  readonly side: string;
  /** Seconds from the stroke's start, strictly rising. */
  readonly timesS: Float64Array;
  /** Amperes; the sensor's offset is still in. */
  readonly amps: Float64Array;
  readonly peakAmps: Float64Array;
  /** The usual step between samples, seconds. */
  readonly stepS: number;
  /** Share of the samples that were missed, 0 to 1. */
  readonly missedShare: number;
  /** Samples whose step is a small part of the usual one: the clock stood still while the sensor went on. */
  readonly crowded: number;
  /** The longest time without a sample, seconds. */
  readonly longestGapS: number;
}

/** `sign`: +1, or -1 where the current that drives the room reads negative. Null with fewer than two samples. */
export function sideSignal(trace: SideTrace, sign: 1 | -1): SideSignal | null {
  const { timesS, amps } = trace;
  const kept: number[] = [];
  for (let i = 0; i < amps.length; i++) if (!Number.isNaN(amps[i])) kept.push(i);
  if (kept.length < 2) return null;
  const steps = new Float64Array(timesS.length - 1);
  for (let i = 1; i < timesS.length; i++) steps[i - 1] = timesS[i] - timesS[i - 1];
  const rawStepS = median(steps);
  const crowded = steps.reduce((count, step) => (step < CROWDED_PART * rawStepS ? count + 1 : count), 0);
  let longestGapS = 0;
  for (let i = 1; i < kept.length; i++)
    longestGapS = Math.max(longestGapS, timesS[kept[i]] - timesS[kept[i - 1]]);
  const block = Math.max(1, Math.floor(1 / (HIGHEST_USEFUL_RATE_HZ * rawStepS)));
  const count = Math.floor(kept.length / block);
  const outTimes = new Float64Array(count);
  const outAmps = new Float64Array(count);
  const outPeaks = new Float64Array(count);
  for (let b = 0; b < count; b++) {
    let time = 0;
    let sum = 0;
    let peak = -Infinity;
    for (let j = b * block; j < (b + 1) * block; j++) {
      const value = sign * amps[kept[j]];
      time += timesS[kept[j]];
      sum += value;
      if (value > peak) peak = value;
    }
    outTimes[b] = time / block;
    outAmps[b] = sum / block;
    outPeaks[b] = peak;
  }
  return {
    side: trace.side,
    timesS: outTimes,
    amps: outAmps,
    peakAmps: outPeaks,
    stepS: rawStepS * block,
    crowded,
    missedShare: 1 - kept.length / amps.length,
    longestGapS,
  };
}

/** Half a window of about `seconds` in whole samples, at least `least`. */
export function halfWindow(signal: { readonly stepS: number }, seconds: number, least = 1): number {
  return Math.max(least, Math.round(seconds / 2 / signal.stepS));
}
