import { medianInPlace } from '../../statistics/median.ts';
import type { Interval } from '../signal/interval.ts';

/**
 * From this step between samples on, seconds, a short wait may fall between two samples, so that none of them reads
 * zero.
 */
const SLOW_S = 0.03;
/**
 * In a wait at most this many samples in a row lie below the first part of what was drawn before it, and the lowest of
 * them below the second. Guesses, no source.
 */
const MOST_LOW = 3;
const LOW_PART = 0.8;
const LEAST_PART = 0.6;
/** A wait that begins within this many samples after another is counted as one with it. */
const BETWEEN = 3;
/**
 * What was drawn before a wait is the mean of this many samples, the last one left out; what is drawn after it is the
 * median over this many seconds.
 */
const MEAN_SAMPLES = 3;
const SETTLED_S = 0.5;
/**
 * If the load rises by more than this factor meanwhile, it is another load, and before and after cannot be compared.
 */
const MOST_RISEN = 1.1;
/**
 * A new start has its peak in one of this many first samples, and at least this many of its samples lie above the usual
 * current.
 */
const FIRST_SAMPLES = 2;
const LEAST_HIGH = 2;
/**
 * The charge that the new start gives back, as a part of the charge lacked in the wait. It would be 1 but for a next
 * wait, noise and slow samples. Guesses, no source.
 */
const GIVEN_BACK = { least: 0.15, most: 1.5 };

/** One side's samples, and the noise of its sensor, amperes. */
interface Samples {
  readonly timesS: Float64Array;
  readonly stepS: number;
  readonly amps: Float64Array;
  readonly noiseAmps: number;
}

/**
 * When a side was switched off for so short a time that its logger has no sample at zero, among the samples `from` to
 * before `end`. A motor that runs on under the same load draws the charge that it lacked once more, because its speed
 * ends up where it was: `J dω/dt = Kt (I − load / Kt)`. A load that jolts takes more than that; one that is let go for
 * a moment takes less.
 */
export function briefWaits(samples: Samples, from: number, end: number): Interval[] {
  const { timesS, stepS, amps } = samples;
  const waits: Interval[] = [];
  if (stepS < SLOW_S) return waits;
  for (let i = from + MEAN_SAMPLES + 1; i < end; i++) {
    const before = meanOf(amps, i - MEAN_SAMPLES - 1, i - 1);
    const isFirstLow = amps[i] < LOW_PART * before && amps[i - 1] >= LOW_PART * before;
    if (!isFirstLow) continue;
    const to = endOfLow(amps, i, end, LOW_PART * before);
    if (to === null || !isWait(samples, { from: i, to, end }, before)) continue;
    waits.push({ fromS: timesS[i], toS: timesS[to] });
    i = to;
  }
  return waits;
}

/**
 * The first sample after a few runs of samples below `low`; null where one of the runs lasts too long for a brief wait.
 */
function endOfLow(amps: Float64Array, from: number, end: number, low: number): number | null {
  let to = from;
  for (let next: number | null = from; next !== null; next = nextLow(amps, to, end, low)) {
    to = next;
    while (to < end && amps[to] < low) to++;
    if (to === end || to - next > MOST_LOW) return null;
  }
  return to;
}

function nextLow(amps: Float64Array, from: number, end: number, low: number): number | null {
  for (let i = from; i < Math.min(end, from + BETWEEN); i++) if (amps[i] < low) return i;
  return null;
}

/**
 * Whether the samples `from` to before `to`, of those before `end`, are a wait, or a few that follow each other.
 * `before`: what was drawn until then, amperes.
 */
function isWait(
  { stepS, amps, noiseAmps }: Samples,
  { from, to, end }: { readonly from: number; readonly to: number; readonly end: number },
  before: number,
): boolean {
  const settled = Math.min(end, to + Math.ceil(SETTLED_S / stepS));
  if (settled <= to + FIRST_SAMPLES) return false;
  const after = medianInPlace(amps.slice(to + FIRST_SAMPLES, settled));
  const usual = Math.min(MOST_RISEN * before, Math.max(before, after));
  let lacked = 0;
  let given = 0;
  let least = before;
  const count = (i: number) => {
    if (amps[i] < usual) lacked += usual - amps[i];
    else given += amps[i] - usual;
  };
  // The sample before may hold a little of the wait too.
  if (amps[from - 1] < usual) count(from - 1);
  for (let i = from; i < to; i++) {
    count(i);
    least = Math.min(least, amps[i]);
  }
  if (least > LEAST_PART * before) return false;
  let top = to;
  for (let i = to; i < Math.min(end, to + FIRST_SAMPLES); i++) if (amps[i] > amps[top]) top = i;
  // The first samples of the new start may hold a little of the wait.
  for (let i = to; i < top; i++) count(i);
  let high = 0;
  for (let i = top; i < settled && amps[i] > usual; i++) {
    if (i > top && amps[i] > amps[i - 1] + 2 * noiseAmps) break;
    count(i);
    high++;
  }
  return high >= LEAST_HIGH && given >= GIVEN_BACK.least * lacked && given <= GIVEN_BACK.most * lacked;
}

function meanOf(amps: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += amps[i];
  return sum / (to - from);
}
