import { greatest } from '../../statistics/greatest.ts';
import { median } from '../../statistics/median.ts';
import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';
import { rollingMedian } from '../../statistics/rollingMedian.ts';
import { type RestLevel, SMOOTHING_S } from '../rest/restLevel.ts';
import { firstAtOrAfter } from '../signal/interval.ts';
import { halfWindow, type SideSignal } from '../signal/sideSignal.ts';
import type { ActiveSide } from './activeSide.ts';
import type { Activity } from './activity.ts';

/** A motor starts within so long of the switch, and so much sooner at most by two clocks' difference. */
const STARTS_WITHIN_S = 0.6;
const STARTS_BEFORE_S = 0.3;
/** A start stands so many deviations of the record above its level, and so many amperes. */
const START_SIGMAS = 8;
const LEAST_START_AMPS = 1;
/** And it is this part at least of the other side's, which the same switch starts: less leaks into a clamp beside its wire. A guess. */
const LEAST_START_PART = 0.1;

/**
 * A side that shows no running current, but a start just when the other side was switched on: its clamp lives and its
 * motor turned, without any load. Null where there was no such start, as with a clamp that was left off. It ran for as
 * long as the `driven` side did; its level in that time is its zero where nothing before or after tells it.
 */
export function idlingSide(
  signal: SideSignal,
  other: Pick<ActiveSide, 'signal' | 'active'>,
): { rest: RestLevel; active: Activity } | null {
  const { timesS, amps } = signal;
  const driven = other.active;
  const from = firstAtOrAfter(timesS, driven.fromS - STARTS_BEFORE_S);
  const to = firstAtOrAfter(timesS, driven.fromS + STARTS_WITHIN_S);
  const end = firstAtOrAfter(timesS, driven.toS);
  if (to - from < 2 || end - to < 8) return null;
  const level = median(amps.subarray(to, end));
  const noiseAmps = medianAbsoluteDeviation(amps.subarray(to, end));
  const start = highestStart(signal, driven) - level;
  const leastStart = LEAST_START_PART * highestStart(other.signal, driven);
  if (!(start > Math.max(LEAST_START_AMPS, leastStart, START_SIGMAS * noiseAmps))) return null;
  const before = amps.subarray(0, from);
  const offsetAmps = before.length >= 4 ? median(before) : null;
  const smooth = rollingMedian(amps, halfWindow(signal, SMOOTHING_S));
  const activeAmps = level - (offsetAmps ?? 0);
  const rest = { offsetAmps, noiseAmps, stepAmps: 0, heldAmps: null, stood: null, activeAmps, smooth };
  return { rest, active: driven };
}

/** The highest that a side read while a drive began. */
function highestStart({ timesS, peakAmps }: SideSignal, { fromS }: Activity): number {
  const from = firstAtOrAfter(timesS, fromS - STARTS_BEFORE_S);
  const starting = peakAmps.subarray(from, firstAtOrAfter(timesS, fromS + STARTS_WITHIN_S));
  return greatest(starting);
}
