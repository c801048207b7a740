import { median, medianInPlace } from '../statistics/median.ts';
import { medianAbsoluteDeviation } from '../statistics/medianAbsoluteDeviation.ts';
import { quantileInPlace } from '../statistics/quantile.ts';
import { rollingMedian } from '../statistics/rollingMedian.ts';
import { firstAtOrAfter, type Interval } from './interval.ts';
import { halfWindow, type SideSignal } from './sideSignal.ts';

/** Windows of this length even out noise and leave every phase of a stroke standing. */
export const SMOOTHING_S = 0.2;
/** Shorter rests at the edges of a record say nothing of the sensor's offset, unless both say the same. */
const SHORTEST_LONE_REST_S = 0.3;
const SHORTEST_REST_S = 0.15;
const AGREEING_PART = 0.08;
const FEWEST_REST_SAMPLES = 4;
/**
 * A level that is a large part of the running current may as well be a motor that holds or creeps at the edge of the
 * record: it counts as rest only when it lasts.
 */
const HIGH_PART = 0.25;
const SHORTEST_HIGH_REST_S = 0.8;
const SHORTEST_AGREED_HIGH_REST_S = 0.3;
/** Nor does it last for most of the record: then what rises above it is the stall at the end of the travel. */
const LONGEST_HIGH_PART = 0.5;
/** Nor is a level so far from nothing, amperes, that most of a record is at, and only one end of it: a guess, no source. */
const FAR_AMPS = 2.5;
/** A record that begins with a start: its first moments stand so far above what follows, in parts of either. */
const START_S = 0.35;
const START_NOISES = 8;
const START_PART = 0.04;
/** No rest lies so many times higher than the motor's current above it: that is the motor itself, running lightly. */
const MOST_REST_TIMES = 1.5;

export interface RestLevel {
  /** The sensor's reading while the motor stands still; null where the record has no rest at its edges. */
  readonly offsetAmps: number | null;
  /** Standard deviation of the sensor's noise, amperes. */
  readonly noiseAmps: number;
  /** The step between the readings that the resting sensor flickers between, amperes; 0: none is seen. */
  readonly stepAmps: number;
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
  const ranked = smooth.slice();
  const high = quantileInPlace(ranked, 0.9);
  const low = quantileInPlace(ranked, 0.02);
  const rough = medianAbove(smooth, low + 0.3 * (high - low));
  const threshold = low + 0.3 * (rough - low);
  const { rest, stood } =
    steadyRest(signal, smooth, threshold, rough) ??
    pauseRest(signal, smooth, threshold, rough) ??
    restThen(signal, otherStood, rough) ??
    NO_REST;
  if (rest.length === 0) {
    const noiseAmps = differenceNoise(signal.amps);
    // All of it is drive: what it draws most of the time, though start and stall be high above a motor without load.
    return {
      offsetAmps: null,
      noiseAmps,
      stepAmps: 0,
      stood,
      activeAmps: Math.min(rough, median(smooth)),
      smooth,
    };
  }
  const stepAmps = flickerStep(rest);
  const { mean, deviation } = centreOf(rest, rough - median(rest), stepAmps);
  const noiseAmps = rest.length >= 8 ? deviation : differenceNoise(signal.amps);
  return { offsetAmps: mean, noiseAmps, stepAmps, stood, activeAmps: rough - mean, smooth };
}

/** The readings of a rest, and when it was, where it tells of the other sides as well: sides come to their end apart. */
interface Rest {
  readonly rest: Float64Array;
  readonly stood: Interval | null;
}

const NO_REST: Rest = { rest: new Float64Array(0), stood: null };

/** What a side read while another one stood; null where that is no rest of this one. */
function restThen(signal: SideSignal, stood: Interval | null, rough: number): Rest | null {
  if (stood === null) return null;
  const from = firstAtOrAfter(signal.timesS, stood.fromS);
  const rest = signal.amps.subarray(from, firstAtOrAfter(signal.timesS, stood.toS));
  const plausible = rest.length > 0 && median(rest) < MOST_REST_TIMES * (rough - median(rest));
  return plausible && isLong(signal, rest, SHORTEST_REST_S) ? { rest, stood: null } : null;
}

/**
 * Mean and standard deviation of the rest without its outliers: a coarse sensor flickers between two readings, of
 * which a median would take one and a median deviation see nothing.
 */
function centreOf(
  rest: Float64Array,
  activeAmps: number,
  stepAmps: number,
): { mean: number; deviation: number } {
  const middle = median(rest);
  const reach = Math.max(5 * medianAbsoluteDeviation(rest), 0.1 * activeAmps, ONE_STEP * stepAmps);
  const kept = rest.filter((value) => Math.abs(value - middle) <= reach);
  const mean = kept.reduce((sum, value) => sum + value, 0) / kept.length;
  const squares = kept.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, deviation: Math.sqrt(squares / Math.max(1, kept.length - 1)) };
}

const ONE_STEP = 1.01;
/** A reading that a sensor flickers to comes so often: what comes seldom is an outlier, or the foot of a start. */
const FLICKER_PART = 0.05;
const FEWEST_FLICKERS = 3;

/** From the usual reading of a rest to the next one that comes often; 0 where there is none. */
function flickerStep(rest: Float64Array): number {
  const middle = median(rest);
  let step = Infinity;
  for (const value of rest) if (value !== middle) step = Math.min(step, Math.abs(value - middle));
  let count = 0;
  for (const value of rest) {
    const away = Math.abs(value - middle);
    if (away > 0 && away < ONE_STEP * step) count++;
  }
  return count >= Math.max(FEWEST_FLICKERS, FLICKER_PART * rest.length) ? step : 0;
}

function medianAbove(values: Float64Array, level: number): number {
  const above = new Float64Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) if (values[i] > level) above[count++] = values[i];
  return count > 0 ? medianInPlace(above.subarray(0, count)) : level;
}

/** A sensor so noisy, as a part of what the motor draws, throws single samples of its rest over any threshold. */
const NOISY_PART = 0.12;
const NOISE_SIGMAS = 4;

/** A rest that ends sooner may have ended in the noise. */
const LONG_REST_S = 0.5;

/** The rest at the edges, also of a record whose noise is large beside its current. */
function steadyRest(signal: SideSignal, smooth: Float64Array, threshold: number, rough: number): Rest | null {
  const quiet = edgeRest(signal, smooth, threshold, threshold, rough);
  if (quiet !== null && quiet.rest.length * signal.stepS > LONG_REST_S) return quiet;
  const noise = differenceNoise(signal.amps);
  if (noise < NOISY_PART * rough) return quiet;
  return edgeRest(signal, smooth, threshold, threshold + NOISE_SIGMAS * noise, rough) ?? quiet;
}

/** `threshold`: what the smoothed rest stays below; `highest`: what each of its samples does. */
function edgeRest(
  signal: SideSignal,
  smooth: Float64Array,
  threshold: number,
  highest: number,
  rough: number,
): Rest | null {
  const n = smooth.length;
  let head = 0;
  while (head < n && smooth[head] < threshold && signal.amps[head] < highest) head++;
  let tail = 0;
  while (tail < n - head && smooth[n - 1 - tail] < threshold && signal.amps[n - 1 - tail] < highest) tail++;
  // The samples next to the motion may hold part of it.
  const edges = [
    signal.amps.subarray(0, Math.max(0, head - 1)),
    signal.amps.subarray(Math.min(n, n - tail + 1)),
  ];
  const alike = Math.abs(median(edges[0]) - median(edges[1])) < AGREEING_PART * Math.abs(rough);
  // A clamp has one zero: of two edges that differ by much, the higher one is a motor that runs while the stall is long.
  const apart = edges.every((edge) => isLong(signal, edge, SHORTEST_REST_S)) && areApart(edges, rough);
  const agreeFor = (seconds: number) => alike && edges.every((edge) => isLong(signal, edge, seconds));
  const [first, last] = edges.map((edge, i) => {
    if (apart && median(edge) > median(edges[1 - i])) return edge.subarray(0, 0);
    if (i === 0 && beginsWithStart(signal, edge, rough)) return edge.subarray(0, 0);
    const isHigh = edge.length > 0 && median(edge) > HIGH_PART * (rough - median(edge));
    const isFar = Math.abs(median(edge)) > FAR_AMPS && !alike;
    if ((isHigh || isFar) && edge.length > LONGEST_HIGH_PART * n) return edge.subarray(0, 0);
    const loneS = isHigh ? SHORTEST_HIGH_REST_S : SHORTEST_LONE_REST_S;
    const agreedS = isHigh ? SHORTEST_AGREED_HIGH_REST_S : SHORTEST_REST_S;
    const neededS = agreeFor(agreedS) ? agreedS : loneS;
    if (edge.length > 0 && median(edge) > MOST_REST_TIMES * (rough - median(edge)))
      return edge.subarray(0, 0);
    return isLong(signal, edge, neededS) ? edge : edge.subarray(0, 0);
  });
  if (first.length + last.length === 0) return null;
  const rest = new Float64Array(first.length + last.length);
  rest.set(first);
  rest.set(last, first.length);
  const stood = first.length > 0 ? { fromS: signal.timesS[0], toS: signal.timesS[first.length] } : null;
  return { rest, stood };
}

function areApart([first, last]: Float64Array[], rough: number): boolean {
  return Math.abs(median(first) - median(last)) > HIGH_PART * (rough - Math.max(median(first), median(last)));
}

/** Whether an edge begins with a motor's start, which no rest does: what follows is its running current. */
function beginsWithStart(signal: SideSignal, edge: Float64Array, rough: number): boolean {
  if (edge.length < FEWEST_REST_SAMPLES) return false;
  const level = median(edge);
  let highest = -Infinity;
  const start = Math.max(1, Math.ceil(START_S / signal.stepS));
  for (let i = 0; i < Math.min(start, edge.length); i++) highest = Math.max(highest, edge[i]);
  const clear = Math.max(START_NOISES * medianAbsoluteDeviation(edge), START_PART * (rough - level));
  return highest - level > clear;
}

/** A motor that starts again after a pause draws at least so many times its running current, and falls back from it. */
const START_TIMES = 1.8;
const START_WITHIN_S = 0.4;
const FALLS_TO_PART = 0.75;
const SHORTEST_PAUSE_REST_S = 0.4;

/**
 * The readings of the longest pause within the stroke: a stretch below the threshold that ends in a start. A side that
 * lost its load for a while ends it without one, and a motor that runs lightly up to its stop stalls there for good.
 */
function pauseRest(signal: SideSignal, smooth: Float64Array, threshold: number, rough: number): Rest | null {
  let longest: Rest | null = null;
  for (let i = 0; i < smooth.length; i++) {
    if (smooth[i] >= threshold) continue;
    const from = i;
    while (i < smooth.length && smooth[i] < threshold) i++;
    const within = i + Math.ceil(START_WITHIN_S / signal.stepS);
    const starts = startsAt(signal, smooth, i, within, rough);
    // What lies next to the motion may hold part of it.
    const pause = signal.amps.subarray(from + 1, i - 1);
    const plausible = pause.length > 0 && median(pause) < HIGH_PART * (rough - median(pause));
    const isLongest = pause.length > (longest?.rest.length ?? 0);
    if (starts && plausible && isLong(signal, pause, SHORTEST_PAUSE_REST_S) && isLongest)
      longest = { rest: pause, stood: { fromS: signal.timesS[from + 1], toS: signal.timesS[i - 1] } };
  }
  return longest;
}

function startsAt(
  signal: SideSignal,
  smooth: Float64Array,
  from: number,
  to: number,
  rough: number,
): boolean {
  let peak = 0;
  let peakAt = from;
  for (let i = from; i < Math.min(to, smooth.length); i++) {
    if (signal.peakAmps[i] <= peak) continue;
    peak = signal.peakAmps[i];
    peakAt = i;
  }
  const fallsBack = () => smooth.subarray(peakAt).some((amps) => amps < FALLS_TO_PART * peak);
  return peak > START_TIMES * rough && fallsBack();
}

function isLong(signal: SideSignal, samples: Float64Array, seconds: number): boolean {
  return samples.length + 1 >= FEWEST_REST_SAMPLES && (samples.length + 1) * signal.stepS >= seconds;
}

function differenceNoise(amps: Float64Array): number {
  const differences = new Float64Array(Math.max(0, amps.length - 1));
  for (let i = 1; i < amps.length; i++) differences[i - 1] = amps[i] - amps[i - 1];
  return differences.length === 0 ? 0 : medianAbsoluteDeviation(differences) / Math.SQRT2;
}
