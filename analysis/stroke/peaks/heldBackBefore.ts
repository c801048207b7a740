import type { Interval } from '../signal/interval.ts';

/** The longest that a controller holds a side back before a new start, seconds. A guess, no source. */
const HELD_BACK_S = 2;
/**
 * Falls that follow each other within `HELD_BACK_S` are looked back over for this long at most, seconds. A guess, no
 * source.
 */
const LONGEST_TRAIN_S = 6;
/**
 * The current falls and rises at once: from the first part of its height to the second within this many seconds, or
 * samples if those take longer. A clamp is no quicker. Guesses, no source.
 */
const AT_ONCE = { longestS: 0.06, samples: 2.5, from: 0.25, to: 0.75 };
/**
 * The dip before is at least this part as deep as the start is high, or as what the side draws if that is less. A
 * guess, no source.
 */
const LEAST_DEPTH = 0.5;
/** And deeper than this many standard deviations of the noise, which chance does not reach. */
const NOISE_SIGMAS = 4;
/**
 * What differs from the usual current by less than this part of it, or this many standard deviations of the noise,
 * counts as no charge. Guesses, no source.
 */
const SAME_PART = 0.08;
const SAME_SIGMAS = 2;
/**
 * A start gives back at most this many times what was lacked: 1 but for noise and an uncertain course. A guess, no
 * source.
 */
const MOST_GIVEN = 1.5;
/**
 * Dip and start together must have more samples than this: of two odd samples nobody can tell what they are part of.
 */
const MOST_UNTOLD = 2;
/**
 * A start is over once the current has been the usual one for the first, and after the second at most. Guesses, no
 * source.
 */
const SETTLED_S = 0.3;
const LONGEST_START_S = 1;

/**
 * A side whose course lies below this part of what it draws for most of its way idles there. A course that is only
 * somewhat lower has been drawn down by much holding back.
 */
const LOADED_PART = 0.55;

/**
 * The running current of a side, its smooth course, the sensor's noise and what the side draws for most of its way,
 * amperes.
 */
export interface RunningCourse {
  readonly timesS: Float64Array;
  readonly stepS: number;
  readonly amps: Float64Array;
  readonly course: Float64Array;
  readonly noiseAmps: number;
  readonly runningAmps: number;
}

/**
 * When a side was held back, including the new start after it, whose peak lies within the samples `from` to `last`.
 * Null where the peak is no such start.
 *
 * A controller that keeps two sides in step takes the power of the one ahead away for a moment, or a part of it, and
 * gives it back. The current falls at once and jumps up at once. The speed ends up where it was, so the charge above
 * the usual is the charge that was lacked: `J dω/dt = Kt (I - load / Kt)`. Something that catches in the mechanism
 * begins with a rise instead, and takes more than was lacked; and a load cannot change the current quicker than the
 * motor's inertia lets it.
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
  // How long the dip lasted is known to one sample only.
  if (count <= MOST_UNTOLD || givenAs > MOST_GIVEN * (lack.chargeAs + stepS * lack.depth)) return null;
  return { fromS: timesS[lack.fell], toS: timesS[Math.min(over, amps.length - 1)] };
}

/**
 * The rise to a peak: the last sample before it that lies low, the first that lies high, and how far the peak stands
 * above the course, amperes.
 */
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
  /** The charge, ampere-seconds, and in how many samples it was lacked. */
  readonly chargeAs: number;
  readonly count: number;
  /** How far the current fell below the usual at most, amperes. */
  readonly depth: number;
  /** The sample at which the current had fallen, and how long it took to fall, seconds. */
  readonly fell: number;
  readonly fellInS: number;
}

/**
 * What a dip is measured against, amperes. `same`: what differs by less from the usual does not count. `deep`: what
 * lies this far below is a fall and no slow course. `foot`: the last low sample before the start.
 */
interface Before {
  readonly usual: number;
  readonly same: number;
  readonly deep: number;
  readonly foot: number;
}

/** The most charge that was lacked up to the foot, less what earlier starts gave back of it. */
function lackBefore({ timesS, stepS, amps }: RunningCourse, { usual, same, deep, foot }: Before): Lack {
  let [sumAs, count, depth] = [0, 0, 0];
  let most = { chargeAs: 0, count: 0, fell: foot };
  let sinceS = timesS[foot] - HELD_BACK_S;
  let [isSettled, settledToS] = [false, timesS[foot]];
  for (let i = foot; i > 0 && timesS[i] >= sinceS; i--) {
    const below = usual - amps[i];
    // An earlier start that was over long before has nothing to do with this one.
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
