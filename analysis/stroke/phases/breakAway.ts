import { medianOfThree } from '../../statistics/rollingMedian.ts';
import { firstAtOrAfter } from '../signal/interval.ts';
import type { DrivenSide } from './drivenSide.ts';

/** A room that has not settled yet when its motor's start is over breaks away within so many seconds, and so much of its time. */
const LONGEST_BREAK_AWAY_S = 6;
const BREAK_AWAY_PART = 0.2;
/** Within so much of its level for so long, seconds and samples, it has settled: what comes then is a jolt. Guesses, no source. */
const SETTLED = 0.12;
const SETTLED_S = 0.3;
const FEWEST_SETTLED = 3;
/** It rises above so many times its level, by so much of that from its least, and comes down by so much. Guesses, no source. */
const BREAK_AWAY_RISE = 1.15;
const LEAST_RISE = 0.15;
const LEAST_FALL = 0.08;

/**
 * Where a room's start is over altogether: rope that winds up, play, or a seal that holds make the current rise once more, right
 * after the motor's own start, until the room breaks away. `from`: the sample where the motor's start is over, which is
 * answered where nothing of the kind follows.
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
    // Noise on the way up comes back below the least of a rise as well, but not by far.
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
