import { PROFILE_BINS } from '../../measures.ts';
import type { Direction } from '../../trace.ts';

/** How a side departs from its usual course in one direction, as a moving mean over its latest strokes. */
export interface WayCourse {
  /** By bin of the travel, in ten-thousandths of the current. */
  contrast: number[];
  strokes: number;
}

/** Where a side draws more than it used to. */
export interface GrownPlace {
  /**
   * The bin of the travel. It shows `later` bins further out on the way out, and as many further in on the way back.
   */
  readonly bin: number;
  readonly later: number;
  /** 0 to 1 along the travel. */
  readonly position: number;
  /** How much more is drawn there, weighed over three bins, as a part of the current. */
  readonly part: number;
}

/** Where along the travel a side draws more than it used to, as its strokes say together. */
export interface CourseMemory {
  readonly ways: Record<Direction, WayCourse>;
  /** A place that has grown and waits for the next strokes to confirm it, with what each of them showed; null: none. */
  awaited: {
    readonly place: GrownPlace;
    readonly shown: { readonly direction: Direction; readonly part: number; readonly height: number }[];
  } | null;
  /**
   * The place that they confirmed, while it lasts; how much they showed of it and how high it stands, as parts of the
   * current.
   */
  borneOut: { readonly place: GrownPlace; readonly shown: number; readonly height: number } | null;
}

/** No stroke yet. */
export function beginCourse(): CourseMemory {
  return { ways: { extend: beginWay(), retract: beginWay() }, awaited: null, borneOut: null };
}

function beginWay(): WayCourse {
  return { contrast: new Array(PROFILE_BINS).fill(0), strokes: 0 };
}

/**
 * The weight of the newest stroke in the exponentially weighted moving mean (S. W. Roberts, 1959). Its variance settles
 * at a seventh of one stroke's, which is best against steps of about two standard deviations.
 */
const NEWEST = 0.25;
/** One stroke counts for no more than this at a place, as a part of the current, so that several must agree. */
const MOST_OF_ONE = 0.15;
const STEPS = 10_000;

/** A departure, as a part of the current, limited to what a single stroke may count for. */
export const drawnIn = (part: number): number => Math.max(-MOST_OF_ONE, Math.min(MOST_OF_ONE, part));

/** Takes one more stroke into the moving mean of its direction; `contrast`: see `courseContrast`. */
export function takeIn(way: WayCourse, contrast: Float64Array): void {
  way.strokes++;
  for (let bin = 0; bin < contrast.length; bin++) {
    const kept = way.contrast[bin];
    // Adding 0 makes 0 of -0, which JSON does not have.
    way.contrast[bin] = Math.round(kept + NEWEST * (STEPS * drawnIn(contrast[bin]) - kept)) + 0;
  }
}

/** Forgets a direction whose usual course is not known any more, and what was found by it. */
export function forgetWay(course: CourseMemory, direction: Direction): void {
  if (course.ways[direction].strokes > 0) course.ways[direction] = beginWay();
  course.awaited = null;
  course.borneOut = null;
}

/**
 * Both directions laid over each other: their mean and the lower of the two by bin, as parts of the current. The way
 * out is read `later` bins further out, the way back as many further in.
 */
export function bothWays({ ways }: CourseMemory, later: number): { mean: Float64Array; least: Float64Array } {
  const [out, back] = [smooth(ways.extend.contrast), smooth(ways.retract.contrast)];
  const mean = new Float64Array(out.length);
  const least = new Float64Array(out.length);
  for (let bin = 0; bin < out.length; bin++) {
    const [a, b] = [out[bin + later] ?? 0, back[bin - later] ?? 0];
    mean[bin] = (a + b) / 2 / STEPS;
    least[bin] = Math.min(a, b) / STEPS;
  }
  return { mean, least };
}

/** Smoothed over three bins with weights 1, 2, 1: about as wide as what catches at one place. */
export function smooth(values: ArrayLike<number>): Float64Array {
  return Float64Array.from(
    { length: values.length },
    (_, bin) => ((values[bin - 1] ?? 0) + 2 * values[bin] + (values[bin + 1] ?? 0)) / 4,
  );
}

/** How one direction departs from its usual course at each bin, as a part of the current. */
export function contrastOf({ contrast }: WayCourse): Float64Array {
  return Float64Array.from(contrast, (value) => value / STEPS);
}

/** The most by which any bin departs in either direction, as a part of the current. */
export function highest({ ways }: CourseMemory): number {
  return Math.max(...ways.extend.contrast, ...ways.retract.contrast) / STEPS;
}
