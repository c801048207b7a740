import { PROFILE_BINS } from '../../measures.ts';
import type { Direction } from '../../trace.ts';

/** How one way of a side departs from its usual course, smoothed over its latest strokes. */
export interface WayCourse {
  /** By bin, in ten thousandths of the current. */
  contrast: number[];
  strokes: number;
}

/** Where a side draws more than it used to. */
export interface GrownPlace {
  /** The bin of the travel; on the way out it shows so many bins further on, on the way back so many further back. */
  readonly bin: number;
  readonly later: number;
  /** 0 to 1 along the travel. */
  readonly position: number;
  /** Over three bins, as a part of the current. */
  readonly part: number;
}

/** What a side's strokes say together of where along the travel it draws more than it used to. */
export interface CourseMemory {
  readonly ways: Record<Direction, WayCourse>;
  /** What has grown, to be borne out by the next strokes: of each, how much of it it shows. */
  awaited: {
    readonly place: GrownPlace;
    readonly shown: { readonly direction: Direction; readonly part: number; readonly height: number }[];
  } | null;
  /** What they bore out, while it lasts: by how much they showed it, and how high it stands, as parts of the current. */
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
 * The weight of the newest stroke in the moving mean (S. W. Roberts, 1959): its variance settles at a seventh of one stroke's,
 * which is best against steps of about two deviations.
 */
const NEWEST = 0.25;
/** No single stroke says more than so much of a place, as a part of the current: several must agree. */
const MOST_OF_ONE = 0.15;
const STEPS = 10_000;

/** A part of the current as it counts: no more than a single stroke may say. */
export const drawnIn = (part: number): number => Math.max(-MOST_OF_ONE, Math.min(MOST_OF_ONE, part));

/** Takes one more stroke of a way in; `contrast`: see `courseContrast`. */
export function takeIn(way: WayCourse, contrast: Float64Array): void {
  way.strokes++;
  for (let bin = 0; bin < contrast.length; bin++) {
    const kept = way.contrast[bin];
    // Plus nothing: JSON has no negative zero.
    way.contrast[bin] = Math.round(kept + NEWEST * (STEPS * drawnIn(contrast[bin]) - kept)) + 0;
  }
}

/** A way whose usual course is not known says nothing, nor does what was told by it. */
export function forgetWay(course: CourseMemory, direction: Direction): void {
  if (course.ways[direction].strokes > 0) course.ways[direction] = beginWay();
  course.awaited = null;
  course.borneOut = null;
}

/** Both ways laid over each other, the way out read so many bins further on and the way in so many further back. */
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

/** Weighed over three bins, about as wide as what catches at one place. */
export function smooth(values: ArrayLike<number>): Float64Array {
  return Float64Array.from(
    { length: values.length },
    (_, bin) => ((values[bin - 1] ?? 0) + 2 * values[bin] + (values[bin + 1] ?? 0)) / 4,
  );
}

/** How a way departs from its usual course at each bin, as a part of the current. */
export function contrastOf({ contrast }: WayCourse): Float64Array {
  return Float64Array.from(contrast, (value) => value / STEPS);
}

/** The most by which any bin of either way departs. */
export function highest({ ways }: CourseMemory): number {
  return Math.max(...ways.extend.contrast, ...ways.retract.contrast) / STEPS;
}
