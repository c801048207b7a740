import { mean } from 'simple-statistics';
import { hasOwnNormal } from '../../baseline/channel.ts';
import { channelOf } from '../../roomState.ts';
import { DIRECTIONS } from '../../trace.ts';
import { type FindingContext, openOf } from '../finding.ts';
import { courseContrast } from './courseContrast.ts';
import {
  beginCourse,
  type CourseMemory,
  contrastOf,
  drawnIn,
  forgetWay,
  type GrownPlace,
  highest,
  takeIn,
} from './courseMemory.ts';
import { grownPlace, heightIn, LEAST_PLACE, shownBy } from './grownPlace.ts';
import type { PatternFound } from './spikePattern.ts';

/**
 * The usual course must be known from this many strokes, and each direction's departure from it from this many more.
 */
const LEAST_LEARNT = 8;
const LEAST_OF_WAY = 2;
/**
 * A place that has grown is confirmed if of the next four strokes at least three, in both directions, show this part of
 * what the moving mean showed.
 */
const NEXT_STROKES = 4;
const LEAST_SHOWN = 3;
const SHOWN_PART = 0.5;
/** It lasts while the moving mean shows at least this part of what those strokes showed. */
const LASTS_PART = 0.4;
/** A stretch of the travel with a `rising-draw` warning explains a place this near it, parts of the travel. */
const NEAR_STRETCH = 0.1;

/**
 * The place of the travel at which a side lastingly draws more than it used to, though too gently for one stroke to
 * tell; null: there is none. `tells`: whether this stroke went over the whole way under its usual load; only then is it
 * taken in.
 *
 * It takes two steps, each from strokes of its own. First a moving mean of the strokes' departures from the usual
 * course stands out of the rest of the travel. Then of the next four strokes three show it, in both directions. Peaks
 * that come now here and now there pass the first step by chance, but not both.
 */
export function lastingPlace(context: FindingContext, side: string, tells: boolean): PatternFound | null {
  const { state, analysis, direction } = context;
  const course = state.spikes.courses[side] ?? beginCourse();
  state.spikes.courses[side] = course;
  const usual = channelOf(state, side, direction);
  if (usual === undefined || !hasOwnNormal(usual) || usual.values.length < LEAST_LEARNT) {
    forgetWay(course, direction);
    return null;
  }
  const contrast = tells ? courseContrast(analysis.sides[side].profile, usual.profile) : null;
  if (contrast !== null) {
    takeIn(course.ways[direction], contrast);
    if (course.borneOut === null) bearOut(context, course, contrast);
    else if (meanShown(course, course.borneOut.place) < LASTS_PART * course.borneOut.shown)
      course.borneOut = null;
  }
  if (course.borneOut === null) return null;
  const { place, height } = course.borneOut;
  return { pattern: 'same-place', position: place.position, strokes: LEAST_SHOWN, height };
}

function bearOut(context: FindingContext, course: CourseMemory, contrast: Float64Array): void {
  const { direction } = context;
  const { awaited } = course;
  if (awaited === null) {
    const place = placeOf(context, course);
    if (place !== null) course.awaited = { place, shown: [] };
    return;
  }
  const { place, shown } = awaited;
  const part = shownBy(place, contrast.map(drawnIn), direction);
  shown.push({ direction, part, height: heightIn(place, contrast, direction) });
  if (shown.length < NEXT_STROKES) return;
  course.awaited = null;
  const agree = shown.filter((stroke) => stroke.part >= SHOWN_PART * place.part);
  const isBothWays = DIRECTIONS.every((way) => agree.some((stroke) => stroke.direction === way));
  if (agree.length < LEAST_SHOWN || !isBothWays) return;
  const meanOf = (of: 'part' | 'height') => mean(agree.map((stroke) => stroke[of]));
  course.borneOut = { place, shown: meanOf('part'), height: meanOf('height') };
}

/** The place at which a side has grown, unless a stretch with a `rising-draw` warning explains it; else null. */
function placeOf(context: FindingContext, course: CourseMemory): GrownPlace | null {
  const { ways } = course;
  if (DIRECTIONS.some((way) => ways[way].strokes < LEAST_OF_WAY) || highest(course) < LEAST_PLACE)
    return null;
  const place = grownPlace(course);
  return place === null || isOfStretch(context, place.position) ? null : place;
}

function isOfStretch({ state }: FindingContext, place: number): boolean {
  return openOf(state, 'rising-draw').some(
    ({ position, evidence: { from, to } }) =>
      position !== null &&
      place > (from ?? position) - NEAR_STRETCH &&
      place < (to ?? position) + NEAR_STRETCH,
  );
}

/** How much both directions show at a place in their moving means, on average, as a part of the current. */
function meanShown({ ways }: CourseMemory, place: GrownPlace): number {
  return mean(DIRECTIONS.map((way) => shownBy(place, contrastOf(ways[way]), way)));
}
