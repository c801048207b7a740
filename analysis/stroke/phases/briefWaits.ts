import { medianInPlace } from '../../statistics/median.ts';
import type { Interval } from '../signal/interval.ts';

/** From so slow a logger on a short wait may fall between two samples, and none reads nothing: seconds from one to the next. */
const SLOW_S = 0.03;
/** So many samples in a row stand below this part of what was drawn before it, the least of them below that. Guesses, no source. */
const MOST_LOW = 3;
const LOW_PART = 0.8;
const LEAST_PART = 0.6;
/** After so few samples the next wait is one with this. */
const BETWEEN = 3;
/** What was drawn before is the mean of so many samples, the very last left out; after it the middle of what is drawn for so long, seconds. */
const MEAN_SAMPLES = 3;
const SETTLED_S = 0.5;
/** A load that rises meanwhile by more than this is another. */
const MOST_RISEN = 1.1;
/** A new start falls from one of its first samples on; so many of its samples stand high. */
const FIRST_SAMPLES = 2;
const LEAST_HIGH = 2;
/** Of what the wait took off its motor's speed the new start gives back so much, as the next wait, noise and slow samples leave it. Guesses. */
const GIVEN_BACK = { least: 0.15, most: 1.5 };

/** One side's samples, and the noise of its sensor, amperes. */
interface Samples {
  readonly timesS: Float64Array;
  readonly stepS: number;
  readonly amps: Float64Array;
  readonly noiseAmps: number;
}

/**
 * When a side was switched off for less than its logger needs to see it, within these samples. A motor that runs on under the same load
 * gets back the charge that it lacked meanwhile, for its speed is in the end what it was: `J dω/dt = Kt (I − load / Kt)`. A
 * load that jolts asks for more than that, and one that is only let go for a moment for less.
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

/** The first sample after those that stand below `low`, a few at a time; null: they stay there for longer. */
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

/** `from` to `to`: the samples of a wait or a few, of those before `end`. `before`: what was drawn until then, amperes. */
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
  // The sample before may hold a little of it too.
  if (amps[from - 1] < usual) count(from - 1);
  for (let i = from; i < to; i++) {
    count(i);
    least = Math.min(least, amps[i]);
  }
  if (least > LEAST_PART * before) return false;
  let top = to;
  for (let i = to; i < Math.min(end, to + FIRST_SAMPLES); i++) if (amps[i] > amps[top]) top = i;
  // The first of them may hold a little of the wait.
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
