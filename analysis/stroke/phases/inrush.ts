import { medianOfThree } from '../../statistics/rollingMedian.ts';
import { SMOOTHING_S } from '../rest/restLevel.ts';
import { firstAtOrAfter } from '../signal/interval.ts';
import { halfWindow } from '../signal/sideSignal.ts';
import { breaksAwayBy } from './breakAway.ts';
import type { DrivenSide } from './drivenSide.ts';

/** A start takes at least the first, and at most the second and this part of the time driven. Guesses, no source. */
const SHORTEST_INRUSH_S = 0.25;
const LONGEST_INRUSH_S = 1.5;
const LONGEST_INRUSH_PART = 0.15;
/** The peak of a start comes within this time, even if a controller makes the start soft: a guess, no source. */
const PEAK_WITHIN_S = 0.6;
/** A start is over once the current has fallen to this many times the running level: a guess, no source. */
const OVER_PART = 1.15;

/** A side's start. */
export interface Inrush {
  /** The highest reading, amperes less the offset. */
  readonly amps: number;
  /** The first sample of the running current. */
  readonly end: number;
}

/**
 * The peak of a side's start, and where the start is over. What the room needs to break away is part of it
 * (`breakAway.ts`).
 */
export function inrushOf(side: DrivenSide): Inrush {
  const { signal, amps, offsetAmps, first, end, level, durationS } = side;
  const { timesS, peakAmps } = signal;
  const beginS = timesS[first];
  const longestS = Math.min(LONGEST_INRUSH_S, LONGEST_INRUSH_PART * durationS);
  let peak = -Infinity;
  let peakAt = first;
  // The start was found on smoothed samples: the peak may lie up to half a window before it.
  const from = Math.max(0, first - halfWindow(signal, SMOOTHING_S));
  for (let i = from; i < end && timesS[i] <= beginS + Math.min(PEAK_WITHIN_S, longestS); i++) {
    const value = peakAmps[i] - offsetAmps;
    if (value > peak) {
      peak = value;
      peakAt = i;
    }
  }
  // As far as the start can last, and two samples more: the median of three needs the one after the last.
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
