import { medianOfThree } from '../../statistics/rollingMedian.ts';
import { firstAtOrAfter } from '../signal/interval.ts';
import type { DrivenSide } from './drivenSide.ts';

/** How long after the motor's start a room may take to break away: seconds, and a part of the time it is driven. */
const LONGEST_BREAK_AWAY_S = 6;
const BREAK_AWAY_PART = 0.2;
/**
 * The current has settled once it stays this near its level (a part of it) for this many seconds and samples. What
 * rises later is a jolt. Guesses, no source.
 */
const SETTLED = 0.12;
const SETTLED_S = 0.3;
const FEWEST_SETTLED = 3;
/**
 * To break away the current rises above this many times its level, by at least this part of the level from its lowest,
 * and then falls by at least this part. Guesses, no source.
 */
const BREAK_AWAY_RISE = 1.15;
const LEAST_RISE = 0.15;
const LEAST_FALL = 0.08;

/**
 * The sample where a room's start is over altogether. Rope that winds up, play, or a seal that holds make the current
 * rise once more right after the motor's own start, until the room breaks away. `from` is the sample where the motor's
 * start is over; it is the answer where no such rise follows.
 */
export function breaksAwayBy({ signal, amps, level, durationS }: DrivenSide, from: number): number {
  const { timesS } = signal;
  const longestS = Math.min(LONGEST_BREAK_AWAY_S, BREAK_AWAY_PART * durationS);
  const last = firstAtOrAfter(timesS, timesS[Math.min(from, timesS.length - 1)] + longestS);
  const samples = amps.subarray(from, Math.min(amps.length, last + 1));
  let settledFrom = 0;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let rises = false;
  for (let i = 0; i < samples.length; i++) {
    const smooth = medianOfThree(samples, i);
    // Noise on the way up also falls back below the height that makes a rise, but not by much: that is no fall yet.
    if (rises && smooth <= Math.min(BREAK_AWAY_RISE * level, highest - LEAST_FALL * level))
      return from + i + 1;
    lowest = Math.min(lowest, smooth);
    rises ||= smooth > Math.max(BREAK_AWAY_RISE * level, lowest + LEAST_RISE * level);
    if (rises) highest = Math.max(highest, smooth);
    if (Math.abs(smooth / level - 1) > SETTLED) settledFrom = i + 1;
    const settled = i + 1 - settledFrom;
    if (settled >= FEWEST_SETTLED && timesS[from + i] - timesS[from + settledFrom] >= SETTLED_S)
      return rises ? from + settledFrom : from;
  }
  return from;
}
