import { median } from '../../statistics/median.ts';
import { quantile } from '../../statistics/quantile.ts';
import { rollingMedian } from '../../statistics/rollingMedian.ts';
import { firstAtOrAfter } from '../signal/interval.ts';
import type { DrivenSide } from './drivenSide.ts';
import type { Inrush } from './inrush.ts';

/**
 * How long an end stop lasts, seconds. As a rule no longer than the first: the user or the controller lets go. Where
 * the motor already stalls that long before the end, up to the second: then a breaker has opened.
 */
const LONG_END_STOP_S = 3;
const LONGEST_END_STOP_S = 12;
/** Fewer samples than the first show no level; above the second a single odd one is smoothed away. */
const FEWEST_SAMPLES = 3;
const ENOUGH_TO_SMOOTH = 30;
/** A stall draws at least this many times the running current, even in a room that runs heavy. */
const LEAST_STOP_RISE = 1.35;
/** A stall draws more than this part of the inrush: less is the noise of a side without load. */
const LEAST_OF_START = 0.15;
/**
 * The stall begins above this part of the rise to its peak; what it draws is this quantile of its samples. Guesses, no
 * source.
 */
const STALL_PART = 0.4;
const STALL_QUANTILE = 0.9;
/**
 * A motor that drives on after a peak draws more than this part of the running current for longer than this. Guesses,
 * no source.
 */
const DRIVEN_PART = 0.3;
const LONGEST_DRIVEN_AFTER_S = 0.25;
/** A rise or fall cannot be timed more finely than this many samples. */
const FEW_STEPS = 3;
/**
 * A room meets its stop at once; a seal is pressed together little by little. At a stop this part of the rise takes no
 * longer than `SLOWEST_STOP_S`, or `SLOWEST_STOP_PART` of the time that the side is driven.
 */
const AT_ONCE_PART = 0.5;
/**
 * Where every sample looked at lies above `STALL_PART`, the stall begins above this part of the height, and what lies
 * below it is the end of the way. A guess, no source.
 */
const HIGH_PART = 0.75;
const SLOWEST_STOP_S = 0.35;
const SLOWEST_STOP_PART = 0.012;
/**
 * No seal takes this many times the running current: that is a stall, even if rope or a bulb seal gave way before it
 * and made the rise slow, up to this many seconds.
 */
const NO_SEAL = 2.5;
const SLOWEST_GIVING_WAY_S = 2.5;

/** The stall at the end of a way. */
export interface EndStop {
  /** The first sample of the stall. */
  readonly from: number;
  /** Amperes less the offset. */
  readonly amps: number;
}

/**
 * The stall at the end of a side's way: where the last rise above the running level begins that lasts until switch-off,
 * and what the side draws there. Null where the stroke ended without one.
 */
export function endStopOf(side: DrivenSide, inrush: Inrush): EndStop | null {
  const { signal, amps, end, level } = side;
  const { timesS, stepS } = signal;
  const window = endOfWay(side, inrush);
  if (end - window < FEWEST_SAMPLES) return null;
  const smooth = rollingMedian(amps.subarray(window, end), end - window > ENOUGH_TO_SMOOTH ? 1 : 0);
  let peakAt = 0;
  for (let i = 0; i < smooth.length; i++) if (smooth[i] >= smooth[peakAt]) peakAt = i;
  const peak = smooth[peakAt];
  if (!(peak >= LEAST_STOP_RISE * level && peak > LEAST_OF_START * inrush.amps)) return null;
  const before = levelBefore(smooth, peakAt, level);
  const threshold = before + STALL_PART * (peak - before);
  const start = risenFrom(smooth, peakAt, threshold);
  if (!risesAtOnce(side, smooth.subarray(0, peakAt + 1), { start, before })) return null;
  let last = peakAt;
  while (last + 1 < smooth.length && smooth[last + 1] > threshold) last++;
  // Samples far below the running level are a rest, though one too short to tell the sensor's zero.
  let driven = smooth.length - 1;
  while (driven > last && smooth[driven] < DRIVEN_PART * level) driven--;
  // Falling back to the running level while still driven is a spike near the end, not the end stop.
  const drivenAfterS = timesS[window + driven] - timesS[window + last];
  if (drivenAfterS > Math.max(LONGEST_DRIVEN_AFTER_S, FEW_STEPS * stepS)) return null;
  return { from: window + start, amps: quantile(smooth.subarray(start, last + 1), STALL_QUANTILE) };
}

/** The first sample that may belong to the stall. */
function endOfWay({ signal: { timesS }, amps, end, level }: DrivenSide, inrush: Inrush): number {
  const endS = timesS[Math.min(end, timesS.length) - 1];
  const within = (seconds: number) => Math.max(inrush.end, firstAtOrAfter(timesS, endS - seconds));
  const usual = within(LONG_END_STOP_S);
  const stalls =
    end - usual >= FEWEST_SAMPLES &&
    median(amps.subarray(usual, usual + FEWEST_SAMPLES)) > LEAST_STOP_RISE * level;
  return stalls ? within(LONGEST_END_STOP_S) : usual;
}

/** The longest time, seconds, that half of the rise to a stall of `peak` amperes may take. */
function slowestStopS({ signal, level, durationS }: DrivenSide, peak: number): number {
  const byHeightS = peak / level >= NO_SEAL ? SLOWEST_GIVING_WAY_S : SLOWEST_STOP_S;
  return Math.max(byHeightS, SLOWEST_STOP_PART * durationS, FEW_STEPS * signal.stepS);
}

/** The first sample from which on all samples up to the peak lie above the threshold. */
function risenFrom(smooth: Float64Array, peakAt: number, threshold: number): number {
  let start = peakAt;
  while (start > 0 && smooth[start - 1] > threshold) start--;
  return start;
}

/**
 * What a side draws at the end of its way, before its stall, amperes: no less than what it draws for most of the way.
 */
function levelBefore(smooth: Float64Array, peakAt: number, level: number): number {
  const risen = (part: number) => risenFrom(smooth, peakAt, level + part * (smooth[peakAt] - level));
  const start = risen(STALL_PART) || risen(HIGH_PART);
  return start === 0 ? level : Math.max(level, median(smooth.subarray(0, start)));
}

/**
 * Whether half of the rise from the level before it comes at once, after `start`, from which on the current stays high.
 * If `start` is the first sample, the rise began before all of them: then the current must reach almost its height at
 * once.
 */
function risesAtOnce(
  side: DrivenSide,
  smooth: Float64Array,
  { start, before }: { readonly start: number; readonly before: number },
): boolean {
  const peakAt = smooth.length - 1;
  const peak = smooth[peakAt];
  const most = Math.floor(slowestStopS(side, peak) / side.signal.stepS);
  if (start === 0) return risenFrom(smooth, peakAt, before + HIGH_PART * (peak - before)) <= most;
  const rise = AT_ONCE_PART * Math.max(peak - before, (LEAST_STOP_RISE - 1) * side.level);
  for (let i = start; i <= peakAt; i++) if (smooth[i] - smooth[Math.max(0, i - most)] >= rise) return true;
  return false;
}
