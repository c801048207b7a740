import { medianOfThree } from '../../statistics/rollingMedian.ts';
import { SMOOTHING_S } from '../rest/restLevel.ts';
import { firstAtOrAfter } from '../signal/interval.ts';
import { halfWindow } from '../signal/sideSignal.ts';
import { breaksAwayBy } from './breakAway.ts';
import type { DrivenSide } from './drivenSide.ts';

/** A start takes at least this long, and at most so much longer and so much of the drive. Guesses, no source. */
const SHORTEST_INRUSH_S = 0.25;
const LONGEST_INRUSH_S = 1.5;
const LONGEST_INRUSH_PART = 0.15;
/** Its peak comes within so long, also of a start that a controller makes soft: a guess, no source. */
const PEAK_WITHIN_S = 0.6;
/** It is over once the current is back within this part of the running level: a guess, no source. */
const OVER_PART = 1.15;

/** A side's start. */
export interface Inrush {
  /** The highest reading, amperes less the offset. */
  readonly amps: number;
  /** The first sample of the running current. */
  readonly end: number;
}

/** The peak of a side's start, and where the start is over, with what the room takes to break away (`breakAway.ts`). */
export function inrushOf(side: DrivenSide): Inrush {
  const { signal, amps, offsetAmps, first, end, level, durationS } = side;
  const { timesS, peakAmps } = signal;
  const beginS = timesS[first];
  const longestS = Math.min(LONGEST_INRUSH_S, LONGEST_INRUSH_PART * durationS);
  let peak = -Infinity;
  let peakAt = first;
  // What was smoothed to tell when it began may hide the first half of a window.
  const from = Math.max(0, first - halfWindow(signal, SMOOTHING_S));
  for (let i = from; i < end && timesS[i] <= beginS + Math.min(PEAK_WITHIN_S, longestS); i++) {
    const value = peakAmps[i] - offsetAmps;
    if (value > peak) {
      peak = value;
      peakAt = i;
    }
  }
  // No more than can be the start, and one to make the last of it smooth.
  const startEnd = Math.min(end, firstAtOrAfter(timesS, beginS + longestS) + 2);
  const start = amps.subarray(peakAt, startEnd);
  const isOver = (i: number) =>
    !(medianOfThree(start, i) > OVER_PART * level) || timesS[peakAt + i] >= beginS + longestS;
  let i = 0;
  while (i < start.length && !isOver(i)) i++;
  const atLeast = firstAtOrAfter(timesS, beginS + Math.min(SHORTEST_INRUSH_S, longestS));
  const over = breaksAwayBy(side, Math.min(end, peakAt + i + 1));
  return { amps: peak, end: Math.min(end, Math.max(over, atLeast)) };
}
