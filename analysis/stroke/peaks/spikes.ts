import type { Spike } from '../../measures.ts';
import { differences } from '../../statistics/differences.ts';
import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';
import { ReusedArray } from '../../statistics/reusedArray.ts';
import type { Interval } from '../signal/interval.ts';
import { halfWindow, type SideSignal } from '../signal/sideSignal.ts';
import { heldBackBefore } from './heldBackBefore.ts';
import { rippleOf } from './ripple.ts';
import { smoothCourse } from './smoothCourse.ts';

/**
 * The current's smooth course is its moving median over this part of the running time, and at least this many seconds.
 */
const COURSE_PART = 0.1;
const SHORTEST_COURSE_S = 1.2;
/**
 * A spike stands at least this many standard deviations above the course, and this part of the running level; a dip as
 * many deviations below it, and a larger part. At most this many of each are kept.
 */
const SPIKE_SIGMAS = 6;
const SPIKE_PART = 0.14;
const DIP_PART = 0.25;
const MOST_KEPT = 40;
/** Both are looked for in moving means over about this long, seconds. */
const SMOOTHING_S = 0.1;
/** No sensor, and no motor, is quieter than this part of the running current: a guess, no source. */
const LEAST_NOISE_PART = 0.005;
/** A ripple of less than this many times the noise hides no peak: a guess, no source. */
const LEAST_RIPPLE = 2;
/**
 * A motor's inertia makes its current take at least two steps of this, seconds, to rise and come back: a guess, no
 * source.
 */
const QUICK_S = 0.021;

/** The running part of one side: its samples with inrush, pauses and end stop cut away, the rest put together. */
export interface RunningPart {
  readonly signal: Pick<SideSignal, 'stepS'>;
  readonly timesS: Float64Array;
  /** Less the offset. */
  readonly amps: Float64Array;
  readonly positions: Float64Array;
  readonly noiseAmps: number;
  readonly runningAmps: number;
}

/** The peaks and dips of a running part. */
export interface Excursions {
  readonly spikes: Spike[];
  readonly dips: Spike[];
  /** When a controller held the side back, including the new starts after it. */
  readonly heldBack: Interval[];
  /**
   * Spread of the running current about its own smooth course: the standard deviation with far values limited, amperes.
   */
  readonly roughness: number;
}

/**
 * Short peaks and dips of the running current, and its spread about its own smooth course (a moving median, after Tukey
 * 1977). Peaks are what leaves that course far enough. The spread is the standard deviation after values beyond three
 * median absolute deviations (Hampel 1974) are set to that limit (winsorised, after J. W. Tukey 1962); the median
 * deviation alone would jump from step to step of a coarse sensor.
 *
 * A peak must come back to half its height on both sides within the part: the rise towards a seal or the end stop is
 * not one. Fewer than five samples have no peaks, and a roughness of 0.
 */
export function excursions(part: RunningPart): Excursions {
  const { amps } = part;
  const n = amps.length;
  if (n < 5) return { spikes: [], dips: [], heldBack: [], roughness: 0 };
  // Of the time that it ran: a pause that counted as well would smooth over more of the travel.
  const courseS = Math.max(SHORTEST_COURSE_S, COURSE_PART * (n - 1) * part.signal.stepS);
  const reach = halfWindow(part.signal, courseS, 2);
  const course = smoothCourse(amps, reach);
  const residual = forResidual.ofLength(n);
  for (let i = 0; i < n; i++) residual[i] = amps[i] - course[i];
  const roughness = medianAbsoluteDeviation(residual);
  const spread = drawnInDeviation(residual, roughness);
  const half = halfWindow(part.signal, SMOOTHING_S, 0);
  const smooth = movingMean(residual, half);
  const ofMeans = (deviation: number) =>
    Math.max(deviation / Math.sqrt(2 * half + 1), LEAST_NOISE_PART * part.runningAmps);
  // Most strokes have neither: a look at the heights is enough, and the costly ranking is left out.
  if (!reaches(smooth, SPIKE_PART * part.runningAmps))
    return { spikes: [], dips: [], heldBack: [], roughness: spread };
  const departures = lessRipple({ part, residual, smooth, course, reach }, ofMeans(part.noiseAmps));
  const left = departures.residual === residual ? roughness : medianAbsoluteDeviation(departures.residual);
  const least = ofMeans(Math.max(left, part.noiseAmps));
  const floor = Math.max(medianAbsoluteDeviation(departures.smooth), least);
  const spikeHeight = Math.max(SPIKE_SIGMAS * floor, SPIKE_PART * part.runningAmps);
  const dipHeight = Math.max(SPIKE_SIGMAS * floor, DIP_PART * part.runningAmps);
  const found = ofLoad(departures, peaksOf(departures, spikeHeight, 1), peaksOf(departures, dipHeight, -1));
  return {
    spikes: highestOf(departures, found.peaks, 1),
    dips: highestOf(departures, found.dips, -1),
    heldBack: found.heldBack,
    roughness: spread,
  };
}

/** Takes a regular ripple off: it is neither noise that a peak must stand out of, nor a peak itself. */
function lessRipple(departures: Departures, noise: number): Departures {
  const { part, residual, smooth } = departures;
  if (medianAbsoluteDeviation(smooth) < LEAST_RIPPLE * noise) return departures;
  const ripple = rippleOf(smooth, part.positions);
  if (ripple === null) return departures;
  return { ...departures, residual: differences(residual, ripple), smooth: differences(smooth, ripple) };
}

function reaches(values: Float64Array, height: number): boolean {
  for (let i = 0; i < values.length; i++) if (Math.abs(values[i]) >= height) return true;
  return false;
}

/** Values are limited to this many deviations: a guess, no source. */
const DRAWN_IN_AT = 3;

/**
 * Root mean square of the values, each limited to three times `scale`, or three times their mean size if that is
 * larger.
 */
function drawnInDeviation(values: Float64Array, scale: number): number {
  let size = 0;
  for (let i = 0; i < values.length; i++) size += Math.abs(values[i]);
  const reach = DRAWN_IN_AT * Math.max(scale, size / values.length);
  let squares = 0;
  for (let i = 0; i < values.length; i++) squares += Math.min(Math.abs(values[i]), reach) ** 2;
  return Math.sqrt(squares / values.length);
}

const [forResidual, forSums, forMeans] = [new ReusedArray(), new ReusedArray(), new ReusedArray()];

function movingMean(values: Float64Array, half: number): Float64Array {
  if (half === 0) return values;
  const sums = forSums.atLeast(values.length + 1);
  sums[0] = 0;
  for (let i = 0; i < values.length; i++) sums[i + 1] = sums[i] + values[i];
  const means = forMeans.ofLength(values.length);
  for (let i = 0; i < values.length; i++) {
    const from = Math.max(0, i - half);
    const to = Math.min(values.length, i + half + 1);
    means[i] = (sums[to] - sums[from]) / (to - from);
  }
  return means;
}

/**
 * Whether all of a peak is one lone sample of a quick record: a relay's crackle, because no motor gets from one load to
 * another so fast. `residual`: the peak's samples less their course, amperes.
 */
function isCrackle({ signal }: RunningPart, residual: Float64Array, sign: 1 | -1): boolean {
  if (signal.stepS > QUICK_S) return false;
  let highest = 0;
  for (const value of residual) highest = Math.max(highest, sign * value);
  let high = 0;
  for (const value of residual) if (sign * value > highest / 2) high++;
  return high === 1;
}

/**
 * A part's departures from its course, amperes: sample by sample (`residual`), and as means over a short window
 * (`smooth`).
 */
interface Departures {
  readonly part: RunningPart;
  readonly residual: Float64Array;
  readonly smooth: Float64Array;
  readonly course: Float64Array;
  /** Half of the window that the course is taken over, samples. */
  readonly reach: number;
}

/**
 * Whether the current itself, and not only its departure from the course, comes back by half of the peak on both sides
 * within the course's window. A steep slope also departs from its course, which lags behind it, but is no peak.
 */
function comesBack({ smooth, course, reach }: Departures, top: number, sign: 1 | -1): boolean {
  const enough = sign * (course[top] + smooth[top]) - (sign * smooth[top]) / 2;
  const falls = (from: number, to: number) => {
    for (let i = Math.max(0, from); i < Math.min(smooth.length, to); i++)
      if (sign * (course[i] + smooth[i]) <= enough) return true;
    return false;
  };
  return falls(top - reach, top) && falls(top + 1, top + reach + 1);
}

/** The peaks of at least `height` amperes: above the course with `sign` 1, below it with -1. */
function peaksOf(departures: Departures, height: number, sign: 1 | -1): PeakFound[] {
  const { part, residual, smooth } = departures;
  const found: PeakFound[] = [];
  const n = smooth.length;
  for (let i = 0; i < n; i++) {
    if (sign * smooth[i] < height) continue;
    let top = i;
    let to = i;
    while (to < n && sign * smooth[to] >= height / 2) {
      if (sign * smooth[to] > sign * smooth[top]) top = to;
      to++;
    }
    let from = top;
    const halfTop = (sign * smooth[top]) / 2;
    while (from > 0 && sign * smooth[from - 1] >= halfTop) from--;
    let last = top;
    while (last + 1 < n && sign * smooth[last + 1] >= halfTop) last++;
    i = to;
    if (from === 0 || last === n - 1 || !comesBack(departures, top, sign)) continue;
    if (isCrackle(part, residual.subarray(from, last + 1), sign)) continue;
    found.push({ from, top, last, height: sign * smooth[top] });
  }
  return found;
}

/** The highest or deepest of the peaks found, in the form that people are shown, in order of place. */
function highestOf(departures: Departures, found: readonly PeakFound[], sign: 1 | -1): Spike[] {
  return [...found]
    .sort((a, b) => b.height - a.height)
    .slice(0, MOST_KEPT)
    .map((peak) => spikeAt(departures, peak, sign))
    .sort((a, b) => a.position - b.position);
}

/** A peak's first and last sample at half its height or more, and its highest. */
interface PeakSamples {
  readonly from: number;
  readonly top: number;
  readonly last: number;
}

/** `height`: amperes from the course, positive for dips too. */
interface PeakFound extends PeakSamples {
  readonly height: number;
}

/** Peaks and dips without those that a controller made by holding the side back for a moment, and when it did so. */
function ofLoad(
  { part, course }: Departures,
  peaks: readonly PeakFound[],
  dips: readonly PeakFound[],
): { peaks: PeakFound[]; dips: PeakFound[]; heldBack: Interval[] } {
  const { signal, timesS, amps, noiseAmps, runningAmps } = part;
  const half = halfWindow(signal, SMOOTHING_S, 0);
  const heldBack: Interval[] = [];
  const left = peaks.filter(({ from, last }) => {
    const [first, end] = [Math.max(0, from - half), Math.min(timesS.length - 1, last + half)];
    const held = heldBackBefore(
      { timesS, stepS: signal.stepS, amps, course, noiseAmps, runningAmps },
      first,
      end,
    );
    if (held !== null) heldBack.push(held);
    return held === null;
  });
  const isHeld = ({ top }: PeakFound) =>
    heldBack.some(({ fromS, toS }) => timesS[top] >= fromS && timesS[top] < toS);
  return { peaks: left, dips: dips.filter((dip) => !isHeld(dip)), heldBack };
}

function spikeAt({ part, smooth }: Departures, { from, top, last }: PeakSamples, sign: 1 | -1): Spike {
  let weight = 0;
  let moment = 0;
  let extreme = part.amps[top];
  for (let i = from; i <= last; i++) {
    const w = sign * smooth[i];
    weight += w;
    moment += w * part.positions[i];
    extreme = sign > 0 ? Math.max(extreme, part.amps[i]) : Math.min(extreme, part.amps[i]);
  }
  const widthS = part.timesS[last] - part.timesS[from] + part.signal.stepS;
  return { position: moment / weight, amps: extreme, widthS };
}
