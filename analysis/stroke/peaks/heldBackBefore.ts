import type { Interval } from '../signal/interval.ts';

/** What goes before a new start lies within so long before it, seconds: the longest that a controller holds a side back for. A guess, no source. */
const HELD_BACK_S = 2;
/** Falls that follow each other so closely are looked back over for so long at most. A guess, no source. */
const LONGEST_TRAIN_S = 6;
/** It falls and rises at once, in so many seconds or samples, from this part of its height to that: a clamp is no quicker. Guesses, no source. */
const AT_ONCE = { longestS: 0.06, samples: 2.5, from: 0.25, to: 0.75 };
/** What the side lacked before was as deep as this part of the start, or of what it draws. A guess, no source. */
const LEAST_DEPTH = 0.5;
/** It is no deeper than the noise by chance. */
const NOISE_SIGMAS = 4;
/** What differs from the usual by less than this part of it, or so many deviations of the noise, is no charge. Guesses, no source. */
const SAME_PART = 0.08;
const SAME_SIGMAS = 2;
/** A start gives back no more than so many times what was lacked, as noise and the course leave it. A guess, no source. */
const MOST_GIVEN = 1.5;
/** What both make up together is more than so many samples: of two that stand apart nobody knows what they are part of. */
const MOST_UNTOLD = 2;
/** A start is over once the current has been the usual one for so long, seconds, and after so long at most. Guesses, no source. */
const SETTLED_S = 0.3;
const LONGEST_START_S = 1;

/** Where its course lies below this part of what a side draws for most of its way it idles; else much holding back has drawn it down. */
const LOADED_PART = 0.55;

/** The running current of a side, its course, the sensor's noise and what the side draws for most of its way, amperes. */
export interface RunningCourse {
  readonly timesS: Float64Array;
  readonly stepS: number;
  readonly amps: Float64Array;
  readonly course: Float64Array;
  readonly noiseAmps: number;
  readonly runningAmps: number;
}

/**
 * When a side was held back, with the new start after it, whose peak lies within the samples `from` to `last`; null: the peak is
 * no such start. A controller that keeps two sides in step takes the power of the one ahead away for a moment, or a part of
 * it, and gives it back: the current falls at once and jumps up at once, and as the speed is in the end what it was, the charge
 * above the usual is the one that was lacked, `J dω/dt = Kt (I - load / Kt)`. What catches in the mechanism begins with a rise, and
 * asks for more than was lacked; nor does a load change the current quicker than the motor's own inertia lets it.
 */
export function heldBackBefore(running: RunningCourse, from: number, last: number): Interval | null {
  const { timesS, stepS, amps, course, noiseAmps, runningAmps } = running;
  const about = Math.max(course[from], course[last]);
  const usual = about > LOADED_PART * runningAmps ? Math.max(about, runningAmps) : about;
  const { foot, head, height } = riseTo(running, from, last);
  const atOnceS = Math.max(AT_ONCE.longestS, AT_ONCE.samples * stepS);
  if (foot < 0 || timesS[head] - timesS[foot] > atOnceS) return null;
  const deep = Math.max(LEAST_DEPTH * Math.min(height, usual), NOISE_SIGMAS * noiseAmps);
  const same = Math.max(SAME_PART * usual, SAME_SIGMAS * noiseAmps);
  const lack = lackBefore(running, { usual, same, deep, foot });
  if (lack.depth < deep || lack.fellInS > atOnceS) return null;
  let givenAs = 0;
  let count = lack.count;
  let over = foot + 1;
  for (; over < amps.length && timesS[over] <= timesS[foot] + LONGEST_START_S; over++) {
    if (over > head && amps[over] <= usual) break;
    if (amps[over] <= usual + same) continue;
    givenAs += (amps[over] - usual) * stepS;
    count++;
  }
  // How long it lacked that is known to one sample.
  if (count <= MOST_UNTOLD || givenAs > MOST_GIVEN * (lack.chargeAs + stepS * lack.depth)) return null;
  return { fromS: timesS[lack.fell], toS: timesS[Math.min(over, amps.length - 1)] };
}

/** The last sample before a peak that lies low, the first that lies high, and how far the peak stands above the course, amperes. */
function riseTo(
  { amps, course }: RunningCourse,
  from: number,
  last: number,
): { foot: number; head: number; height: number } {
  let top = from;
  for (let i = from; i <= last; i++) if (amps[i] > amps[top]) top = i;
  const height = amps[top] - course[top];
  let foot = top;
  while (foot >= 0 && amps[foot] - course[top] > AT_ONCE.from * height) foot--;
  let head = foot + 1;
  while (amps[head] - course[top] < AT_ONCE.to * height) head++;
  return { foot, head, height };
}

/** What a side lacked before its new start. */
interface Lack {
  /** Ampere-seconds, and of how many samples. */
  readonly chargeAs: number;
  readonly count: number;
  /** The most of it, amperes. */
  readonly depth: number;
  /** The sample from which on it lacked, and how long the current took to fall there, seconds. */
  readonly fell: number;
  readonly fellInS: number;
}

/** `same`: what differs by less from the usual does not count; `deep`: from there on it is a fall and no slow course, amperes. */
interface Before {
  readonly usual: number;
  readonly same: number;
  readonly deep: number;
  readonly foot: number;
}

/** The most that was lacked of what is usual up to a sample, whatever starts before gave back of it taken off. */
function lackBefore({ timesS, stepS, amps }: RunningCourse, { usual, same, deep, foot }: Before): Lack {
  let [sumAs, count, depth] = [0, 0, 0];
  let most = { chargeAs: 0, count: 0, fell: foot };
  let sinceS = timesS[foot] - HELD_BACK_S;
  let [isSettled, settledToS] = [false, timesS[foot]];
  for (let i = foot; i > 0 && timesS[i] >= sinceS; i--) {
    const below = usual - amps[i];
    // A start that was over long before leaves nothing to give back.
    if (isSettled && below < -deep) break;
    depth = Math.max(depth, below);
    isSettled ||= settledToS - timesS[i] >= SETTLED_S;
    if (Math.abs(below) > same) {
      sumAs += below * stepS;
      count++;
      settledToS = timesS[i];
    }
    if (below < deep) continue;
    sinceS = Math.max(timesS[foot] - LONGEST_TRAIN_S, timesS[i] - HELD_BACK_S);
    if (sumAs > most.chargeAs) most = { chargeAs: sumAs, count, fell: i };
  }
  let before = most.fell;
  while (before > 0 && usual - amps[before] > AT_ONCE.from * depth) before--;
  let down = before;
  while (down < foot && usual - amps[down] < AT_ONCE.to * depth) down++;
  return { ...most, depth, fellInS: timesS[down] - timesS[before] };
}
