import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';
import type { Direction } from '../../trace.ts';
import { bothWays, type CourseMemory, type GrownPlace, smooth } from './courseMemory.ts';

/** Bins at either end of the travel where seals are pressed and let go: no place is looked for there. */
const SEAL = 4;
/**
 * By how many bins the two directions may be shifted against each other: the current follows its load a little late.
 */
const LATER = [0, 1, -1] as const;
/**
 * A place that grew by less than this part of the current, over three bins, is not worth a word. A guess, no source.
 */
export const LEAST_PLACE = 0.035;
/**
 * A place stands out by this many deviations of the rest of the travel: by the normal distribution that comes by chance
 * once in 3 million looks, of which there are some 1,000 a year.
 */
const PLACE_SIGMAS = 5;
/** Each direction shows at least this part of the mean of both. */
const EACH_WAY = 0.5;
/** It is one place if no other grew by more than this part of it. A guess, no source. */
const MOST_ELSEWHERE = 0.4;
/**
 * A hump that only moved along the travel leaves a trough of at least this part of its height, within this many bins.
 */
const MOST_TROUGH = 0.6;
const TROUGH_WITHIN = 8;
/** A place is less than this many bins wide at half its height. */
const WIDEST = 5;

/** The one place where a side has grown in both directions and the rest of the travel has not; null: there is none. */
export function grownPlace(course: CourseMemory): GrownPlace | null {
  let best: GrownPlace | null = null;
  for (const later of LATER) {
    const { mean, least } = bothWays(course, later);
    let top = SEAL;
    for (let bin = SEAL; bin < mean.length - SEAL; bin++) if (mean[bin] > mean[top]) top = bin;
    const part = mean[top];
    if (part < LEAST_PLACE || part <= (best?.part ?? 0) || least[top] < EACH_WAY * part) continue;
    if (!standsAlone(mean, top)) continue;
    best = { bin: top, later, position: centreOf(mean, top), part };
  }
  return best;
}

function standsAlone(mean: Float64Array, top: number): boolean {
  const part = mean[top];
  const inTravel = mean.subarray(SEAL, mean.length - SEAL);
  if (part < PLACE_SIGMAS * medianAbsoluteDeviation(inTravel)) return false;
  let from = top;
  while (mean[from - 1] > part / 2) from--;
  let to = top;
  while (mean[to + 1] > part / 2) to++;
  if (to - from >= WIDEST) return false;
  for (let bin = SEAL; bin < mean.length - SEAL; bin++) {
    const isBeside = bin >= from - 1 && bin <= to + 1;
    if (!isBeside && mean[bin] > MOST_ELSEWHERE * part) return false;
    if (Math.abs(bin - top) <= TROUGH_WITHIN && mean[bin] < -MOST_TROUGH * part) return false;
  }
  return true;
}

/** The centre of the hump about a bin, 0 to 1 along the travel. */
function centreOf(mean: Float64Array, top: number): number {
  let weight = 0;
  let moment = 0;
  for (let bin = top - 1; bin <= top + 1; bin++) {
    weight += Math.max(0, mean[bin]);
    moment += Math.max(0, mean[bin]) * (bin + 0.5);
  }
  return moment / weight / mean.length;
}

/**
 * How much one stroke, or the moving mean of a direction, shows at a place: weighed over three bins, as a part of the
 * current.
 */
export function shownBy(place: GrownPlace, contrast: Float64Array, direction: Direction): number {
  return smooth(contrast)[binOf(place, direction)] ?? 0;
}

/** How high one stroke stands at a place: its highest bin of three, as a part of the current. */
export function heightIn(place: GrownPlace, contrast: Float64Array, direction: Direction): number {
  const bin = binOf(place, direction);
  return Math.max(...contrast.subarray(bin - 1, bin + 2));
}

function binOf({ bin, later }: GrownPlace, direction: Direction): number {
  return direction === 'extend' ? bin + later : bin - later;
}
