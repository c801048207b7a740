import type { SidePhases } from '../measures.ts';
import { median } from '../statistics/median.ts';
import { quantile } from '../statistics/quantile.ts';
import { rollingMedian } from '../statistics/rollingMedian.ts';
import type { Activity } from './activity.ts';
import { firstAtOrAfter, type Interval } from './interval.ts';
import { outsideOf } from './outsideOf.ts';
import { halfWindow, type SideSignal } from './sideSignal.ts';

/** A start takes at least this long and at most so much longer. */
const SHORTEST_INRUSH_S = 0.25;
const LONGEST_INRUSH_S = 1.5;
/**
 * An end stop lasts no longer than the first as a rule: whoever holds the switch lets go, or the controller does. Where
 * the motor already stalls that long before the end, up to the second: then a breaker has gone.
 */
const LONG_END_STOP_S = 3;
const LONGEST_END_STOP_S = 12;
/** A stall draws at least so many times the running current, even in a room that runs heavy. */
const LEAST_STOP_RISE = 1.35;
/** What stalls at its end draws no small part of what it drew as it started: less is the noise of a side without load. */
const LEAST_OF_START = 0.15;
/** A motor that goes on driving after a stall draws more than this part of the running current. A guess, no source. */
const DRIVEN_PART = 0.3;
/** A room meets its stop at once; a seal is pressed together little by little. From a quarter to three quarters. */
const SLOWEST_STOP_S = 0.35;
const SLOWEST_STOP_PART = 0.012;
/** No seal takes so many times the running current: that is a stall, however softly the room came to its stop. */
const NO_SEAL = 2.5;
const SLOWEST_SOFT_STOP_S = 1.2;
/** Rope and a bulb seal give way for longer before a motor that draws so many times its running current stands. */
const SURELY_A_STALL = 4;
const SLOWEST_GIVING_WAY_S = 2.5;

export interface FoundPhases extends SidePhases {
  readonly inrushAmps: number;
  /** The current while stalled at the end stop; null where the stroke ended without one. */
  readonly endStopAmps: number | null;
}

/**
 * Inrush, running and end stop of one side. `amps`: less the offset, one per sample of the signal; `pauses`: when
 * the whole room stood still. The inrush ends when the current first comes within 15 % of the running level; the end
 * stop begins where the last rise above the running level that lasts until switch-off begins.
 */
export function findPhases(
  signal: SideSignal,
  amps: Float64Array,
  offsetAmps: number,
  active: Activity,
  pauses: readonly Interval[],
): FoundPhases {
  const { timesS } = signal;
  const first = firstAtOrAfter(timesS, active.fromS);
  const end = firstAtOrAfter(timesS, active.toS);
  const pausedS = pauses.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);
  const durationS = active.toS - active.fromS - pausedS;
  const level = median(outsideOf(timesS, amps, active, pauses));
  const inrush = inrushOf(signal, amps, offsetAmps, first, end, level, durationS);
  const stop = endStopOf(signal, amps, inrush, end, level, durationS);
  return {
    startS: active.fromS,
    inrushEndS: timesS[Math.min(inrush.end, timesS.length - 1)],
    endStopStartS: stop === null ? null : timesS[stop.from],
    endS: active.toS,
    pauses: [...pauses],
    inrushAmps: inrush.amps,
    endStopAmps: stop === null ? null : stop.amps,
  };
}

function inrushOf(
  signal: SideSignal,
  amps: Float64Array,
  offsetAmps: number,
  first: number,
  end: number,
  level: number,
  durationS: number,
): { amps: number; end: number } {
  const { timesS } = signal;
  const beginS = timesS[first];
  const longestS = Math.min(LONGEST_INRUSH_S, 0.15 * durationS);
  let peak = -Infinity;
  let peakAt = first;
  const from = Math.max(0, first - halfWindow(signal, 0.2));
  for (let i = from; i < end && timesS[i] <= beginS + Math.min(0.6, longestS); i++) {
    const value = signal.peakAmps[i] - offsetAmps;
    if (value > peak) {
      peak = value;
      peakAt = i;
    }
  }
  // No more than can be the start, and one to make the last of it smooth.
  const startEnd = Math.min(end, firstAtOrAfter(timesS, beginS + longestS) + 2);
  const smooth = rollingMedian(amps.subarray(peakAt, startEnd), 1);
  let i = 0;
  while (peakAt + i < end && smooth[i] > 1.15 * level && timesS[peakAt + i] < beginS + longestS) i++;
  const atLeast = firstAtOrAfter(timesS, beginS + Math.min(SHORTEST_INRUSH_S, longestS));
  const over = breaksAwayBy(timesS, amps, Math.min(end, peakAt + i + 1), level, durationS);
  return { amps: peak, end: Math.min(end, Math.max(over, atLeast)) };
}

/** A room that has not settled yet when its motor's start is over breaks away within so many seconds, and so much of its time. */
const LONGEST_BREAK_AWAY_S = 6;
const BREAK_AWAY_PART = 0.2;
/** Within so much of its level for so long, seconds and samples, it has settled: what comes then is a jolt. */
const SETTLED = 0.12;
const SETTLED_S = 0.3;
const FEWEST_SETTLED = 3;
const BREAK_AWAY_RISE = 1.15;
const LEAST_RISE = 0.15;
const LEAST_FALL = 0.08;

/**
 * Where a room's start is over altogether: rope that winds up, play, or a seal that holds make the current rise once more, right
 * after the motor's own start, until the room breaks away. `from`: where the motor's start is over, which is answered where
 * nothing of the kind follows.
 */
function breaksAwayBy(
  timesS: Float64Array,
  amps: Float64Array,
  from: number,
  level: number,
  durationS: number,
): number {
  const longestS = Math.min(LONGEST_BREAK_AWAY_S, BREAK_AWAY_PART * durationS);
  const last = firstAtOrAfter(timesS, timesS[Math.min(from, timesS.length - 1)] + longestS);
  const smooth = rollingMedian(amps.subarray(from, Math.min(amps.length, last + 1)), 1);
  let settledFrom = 0;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let rises = false;
  for (let i = 0; i < smooth.length; i++) {
    // Noise on the way up comes back below the least of a rise as well, but not by far.
    if (rises && smooth[i] <= Math.min(BREAK_AWAY_RISE * level, highest - LEAST_FALL * level))
      return from + i + 1;
    lowest = Math.min(lowest, smooth[i]);
    rises ||= smooth[i] > Math.max(BREAK_AWAY_RISE * level, lowest + LEAST_RISE * level);
    if (rises) highest = Math.max(highest, smooth[i]);
    if (Math.abs(smooth[i] / level - 1) > SETTLED) settledFrom = i + 1;
    const settled = i + 1 - settledFrom;
    if (settled >= FEWEST_SETTLED && timesS[from + i] - timesS[from + settledFrom] >= SETTLED_S)
      return rises ? from + settledFrom : from;
  }
  return from;
}

function endStopOf(
  signal: SideSignal,
  amps: Float64Array,
  inrush: { readonly amps: number; readonly end: number },
  end: number,
  level: number,
  durationS: number,
): { from: number; amps: number } | null {
  const { timesS } = signal;
  const from = inrush.end;
  const endS = timesS[Math.min(end, timesS.length) - 1];
  const within = (seconds: number) => Math.max(from, firstAtOrAfter(timesS, endS - seconds));
  const usual = within(LONG_END_STOP_S);
  const stalls = end - usual >= 3 && median(amps.subarray(usual, usual + 3)) > LEAST_STOP_RISE * level;
  const window = stalls ? within(LONGEST_END_STOP_S) : usual;
  if (end - window < 3) return null;
  const smooth = rollingMedian(amps.subarray(window, end), end - window > 30 ? 1 : 0);
  let peakAt = 0;
  for (let i = 0; i < smooth.length; i++) if (smooth[i] >= smooth[peakAt]) peakAt = i;
  const peak = smooth[peakAt];
  if (!(peak >= LEAST_STOP_RISE * level && peak > LEAST_OF_START * inrush.amps)) return null;
  const threshold = level + 0.4 * (peak - level);
  let start = peakAt;
  while (start > 0 && smooth[start - 1] > threshold) start--;
  let last = peakAt;
  while (last + 1 < smooth.length && smooth[last + 1] > threshold) last++;
  // Falling back to the running level while still driven is a spike near the end, not the end stop.
  const slowestS = Math.max(slowestStopS(peak / level), SLOWEST_STOP_PART * durationS, 3 * signal.stepS);
  if (riseS(smooth, peakAt, level, peak, signal.stepS) > slowestS) return null;
  // What stands far below the running level is a rest that is too short to tell the sensor's zero by.
  let driven = smooth.length - 1;
  while (driven > last && smooth[driven] < DRIVEN_PART * level) driven--;
  const drivenAfterS = timesS[window + driven] - timesS[window + last];
  if (drivenAfterS > Math.max(0.25, 3 * signal.stepS)) return null;
  return { from: window + start, amps: quantile(smooth.subarray(start, last + 1), 0.9) };
}

function slowestStopS(timesLevel: number): number {
  if (timesLevel >= SURELY_A_STALL) return SLOWEST_GIVING_WAY_S;
  return timesLevel >= NO_SEAL ? SLOWEST_SOFT_STOP_S : SLOWEST_STOP_S;
}

/** How long the last rise before the peak took from a quarter to three quarters of its height. */
function riseS(smooth: Float64Array, peakAt: number, level: number, peak: number, stepS: number): number {
  let i = peakAt;
  while (i > 0 && smooth[i - 1] > level + 0.75 * (peak - level)) i--;
  const high = i;
  while (i > 0 && smooth[i - 1] > level + 0.25 * (peak - level)) i--;
  return (high - i) * stepS;
}
