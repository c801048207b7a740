import { median } from '../../statistics/median.ts';
import { rollingMedian } from '../../statistics/rollingMedian.ts';
import { firstAtOrAfter, type Interval } from '../signal/interval.ts';
import { halfWindow, type SideSignal } from '../signal/sideSignal.ts';
import { drivenLevel } from './drivenLevel.ts';
import { edgeRest } from './edgeRest.ts';
import { heldLevel } from './heldLevel.ts';
import { withShortRest } from './longRest.ts';
import { pauseRest } from './pauseRest.ts';
import { flickerStep, restCentre } from './restCentre.ts';
import {
  differenceNoise,
  FLAT_AMPS,
  isFlat,
  isLong,
  LONGEST_HIGH_PART,
  MOST_REST_TIMES,
  NO_REST,
  type Rest,
  type RestSearch,
  SHORTEST_REST_S,
} from './rests.ts';
import { type RoughLevels, roughLevels } from './roughLevels.ts';

/** Windows of this length even out noise and leave every phase of a stroke standing. */
export const SMOOTHING_S = 0.2;
/** Fewer readings of a rest do not tell the noise. */
const FEWEST_FOR_NOISE = 8;

/** What a side's record tells of its sensor while nothing flows. */
export interface RestLevel {
  /** The sensor's reading while the motor stands still; null where the record has no rest at its edges. */
  readonly offsetAmps: number | null;
  /** Standard deviation of the sensor's noise, amperes. */
  readonly noiseAmps: number;
  /** The step between the readings that the resting sensor flickers between, amperes; 0: none is seen. */
  readonly stepAmps: number;
  /** What the motor draws that is held in place (`heldLevel.ts`), the offset in it; null: it is not. */
  readonly heldAmps: number | null;
  /** When the motor was seen to stand before its start or in a pause; null: it was not. */
  readonly stood: Interval | null;
  /** The typical current while the motor runs, less the offset: only to set thresholds by. */
  readonly activeAmps: number;
  /** The signal's moving median over a fifth of a second, the offset still in. */
  readonly smooth: Float64Array;
}

/**
 * The sensor's offset and noise, from the rest before and after the stroke.
 *
 * A rest is a run of samples at either edge of the record below three tenths of the way from the lowest level to the
 * running level; where both edges have none, a pause within it serves. Without one, the time at which another side of
 * the room was seen to stand: one switch drives them all, though this one's zero may lie too high to be taken for a
 * rest by itself. Without that, the offset is unknown and the noise is told from the differences between neighbours:
 * their median absolute deviation over the square root of two (von Neumann, 1941, for the idea of successive
 * differences).
 */
export function restLevel(signal: SideSignal, otherStood: Interval | null = null): RestLevel {
  const smooth = rollingMedian(signal.amps, halfWindow(signal, SMOOTHING_S));
  const whole = roughLevels(withShortRest(smooth, SHORTEST_DRIVE_S / signal.stepS));
  const unknown = { offsetAmps: null, stepAmps: 0, smooth };
  const held = heldLevel({ signal, smooth, ...whole });
  if (held !== null) {
    const { heldAmps, movingAmps } = held;
    return {
      ...unknown,
      noiseAmps: differenceNoise(signal.amps),
      heldAmps,
      stood: null,
      activeAmps: movingAmps,
    };
  }
  const { rough, found } = restOf(signal, smooth, whole, otherStood);
  const { rest, stood } = found;
  if (rest.length === 0) {
    // All of it is drive: what it draws most of the time, though start and stall be high above a motor without load.
    const activeAmps = Math.min(rough, median(smooth));
    return { ...unknown, noiseAmps: differenceNoise(signal.amps), heldAmps: null, stood, activeAmps };
  }
  const stepAmps = flickerStep(rest);
  const { mean, deviation } = restCentre(rest, rough - median(rest), stepAmps);
  const noiseAmps = rest.length >= FEWEST_FOR_NOISE ? deviation : differenceNoise(signal.amps);
  const activeAmps = drivenLevel(smooth, mean, rough - mean, noiseAmps);
  return { offsetAmps: mean, noiseAmps, stepAmps, heldAmps: null, stood, activeAmps, smooth };
}

/**
 * The rest, and the typical current above it. Where a long stall lies so high that all else of the record seems to be rest,
 * that holds both the rest and the drive.
 */
function restOf(
  signal: SideSignal,
  smooth: Float64Array,
  whole: RoughLevels,
  otherStood: Interval | null,
): { rough: number; found: Rest } {
  const among = (levels: RoughLevels): RestSearch => ({ signal, smooth, ...levels });
  const asRest = (found: Rest | null) =>
    found !== null && liesBeyondStart(signal, found.rest) ? null : found;
  const atEdges = edgeRest(among(whole));
  const first = atEdges ?? pauseRest(among(whole));
  const isMost = first !== null && first.rest.length > LONGEST_HIGH_PART * smooth.length;
  const isDrive = isMost && beginsLower(signal, first.rest);
  if (isMost && (isDrive || !isFlat(first.rest))) {
    const within = roughLevels(first.rest);
    const found = asRest(edgeRest(among(within)) ?? pauseRest(among(within)));
    if (found !== null) return { rough: within.rough, found };
  }
  const kept = isDrive ? null : asRest(first);
  // Where what lies at the edges is none, a pause may be one.
  const found = kept ?? asRest(atEdges && pauseRest(among(whole)));
  return {
    rough: whole.rough,
    found: found ?? asRest(restThen(signal, otherStood, whole.rough)) ?? NO_REST,
  };
}

/** Interference that a long rest gathers is no drive. */
const SHORTEST_DRIVE_S = 1;
const BEGINNING_S = 0.3;
const FEWEST_BEGINNING = 4;
const LOWER_NOISES = 8;

/** Whether what looks like a rest begins with a lower one, too short to show in its spread: then most of it is drive. */
function beginsLower({ stepS }: SideSignal, rest: Float64Array): boolean {
  const beginning = rest.subarray(0, Math.max(FEWEST_BEGINNING, Math.round(BEGINNING_S / stepS)));
  const lower = median(rest) - median(beginning);
  return lower > Math.max(FLAT_AMPS, LOWER_NOISES * differenceNoise(rest));
}

/** A clamp that a large current left magnetised reads a little more afterwards: this part of what a rest reads may be that. */
const NEARER_PART = 0.5;

/**
 * Whether the record's first reading lies nearer to nothing than what looks like a rest does, by more than noise and a
 * magnetised clamp make of it: a sensor has one zero, and what is read further from nothing is what the motor draws.
 */
function liesBeyondStart({ amps }: SideSignal, rest: Float64Array): boolean {
  const level = Math.abs(median(rest));
  const least = Math.max(FLAT_AMPS, LOWER_NOISES * differenceNoise(rest), NEARER_PART * level);
  const nearest = Math.abs(amps[0]);
  return level - nearest > least && rest.every((each) => Math.abs(each) > nearest);
}

/** What a side read while another one stood; null where that is no rest of this one. */
function restThen(signal: SideSignal, stood: Interval | null, rough: number): Rest | null {
  if (stood === null) return null;
  const from = firstAtOrAfter(signal.timesS, stood.fromS);
  const rest = signal.amps.subarray(from, firstAtOrAfter(signal.timesS, stood.toS));
  const plausible = rest.length > 0 && median(rest) < MOST_REST_TIMES * (rough - median(rest));
  return plausible && isLong(signal, rest, SHORTEST_REST_S) ? { rest, stood: null } : null;
}
