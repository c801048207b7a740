import { nameSide } from '../../names.ts';
import { mannKendall } from '../../statistics/mannKendall.ts';
import type { Warning } from '../../warning.ts';
import { type Finding, type FindingAnswer, type FindingContext, NOTHING, openOf } from '../finding.ts';
import { hasMoved } from '../load/hasMoved.ts';
import {
  type Course,
  climbOf,
  courseOf,
  FIRST_AFTER,
  isFaster,
  isStep,
  LEAST_CLIMB,
  LEAST_FALL,
  slopeOf,
  stagesOf,
} from './workCourse.ts';

/** A season that nobody recorded climbs by itself; and so does a sound room by and by. */
const BY_ITSELF_CLIMB = 0.15;
/** What climbs by less with each stroke than wear is known by is one once it is more than that, natural logarithm. A guess. */
const SLOW_SLOPE = 0.002;
/** What a climb must be to be grave, natural logarithm, and what of it may be noise: one that rests there is told as one. */
const SERVICE_CLIMB = 0.2;
const STILL_SERVICE_CLIMB = 0.15;
/** Fewer strokes after the work show no climb: a guess, no source. */
const LEAST_STROKES = 8;
/** A climb that chance alone makes so seldom is one. */
const TREND_PROBABILITY = 0.001;

function isLongEnough({ before, after }: Course): boolean {
  return before.length >= FIRST_AFTER && after.length >= LEAST_STROKES;
}

/**
 * The current fell after a service and is climbing back faster than before it: of all sides together, or of one of them
 * while the others are as the work left them. Slopes by Theil and Sen, the climb by Mann and Kendall's test.
 */
export function drawRebound(context: FindingContext): FindingAnswer {
  const { state } = context;
  const [open] = openOf(state, 'draw-rebound');
  const course = open === undefined ? cameBack(context) : courseOf(context, open.side);
  if (course === null || !isLongEnough(course)) return NOTHING;
  if (open !== undefined && climbOf(course) < LEAST_CLIMB / 2) return { present: [], gone: [open] };
  return { present: [finding(context, course, open)], gone: [] };
}

/** What fell with the work and climbs back; null: nothing does. */
function cameBack(context: FindingContext): Course | null {
  const { side, after } = context.state.rebound;
  if (after === null) return null;
  const { sides } = context.state.room;
  if (side !== null || sides.length === 1) {
    const only = courseOf(context, side);
    return hasClimbed(only, leastClimb(context)) ? only : null;
  }
  // What comes back on one side is halved in the mean of both.
  const alone = sides.map((name) => courseOf(context, name)).find((own) => climbsAlone(context, own));
  if (alone !== undefined) return alone;
  const whole = courseOf(context, null);
  return hasClimbed(whole, leastClimb(context)) ? whole : null;
}

function leastClimb({ conditions }: FindingContext): number {
  return conditions[1] === null ? BY_ITSELF_CLIMB : LEAST_CLIMB;
}

/** Of one side alone: the others climbed by less than this part of what it did, and gave it nothing of their load. */
const SAME_PART = 0.5;

/** Weather, which nobody may have recorded, is the same for all sides: what one climbed more than the others is none. */
function climbsAlone(context: FindingContext, own: Course): boolean {
  if (!isLongEnough(own)) return false;
  const others = context.state.room.sides
    .filter((name) => name !== own.side)
    .map((name) => courseOf(context, name));
  if (!others.every(isLongEnough)) return false;
  const climb = climbOf(own);
  const climbs = others.map(climbOf);
  const most = Math.max(...climbs);
  if (most > SAME_PART * climb || hasMoved([climb, ...climbs])) return false;
  return hasClimbed(own, LEAST_CLIMB + Math.max(0, most));
}

function hasClimbed(course: Course, least: number): boolean {
  if (!isLongEnough(course)) return false;
  const { after } = course;
  const { old, low } = stagesOf(course);
  const climb = climbOf(course);
  const comesBack =
    (climb > least && isFaster(course)) || (climb > BY_ITSELF_CLIMB && isFaster(course, SLOW_SLOPE));
  if (!(old - low > LEAST_FALL && comesBack)) return false;
  const trend = mannKendall(after);
  return trend !== null && trend.p < TREND_PROBABILITY && !isStep(after);
}

function finding({ state }: FindingContext, course: Course, open: Warning | undefined): Finding {
  const { kind } = state.rebound;
  const { sides } = state.room;
  const { side, before, after } = course;
  const { old, low } = stagesOf(course);
  const climb = climbOf(course);
  const percent = Math.round(100 * Math.expm1(climb));
  const who = side === null || sides.length === 1 ? '' : ` of ${nameSide(side, sides)}`;
  const perStroke = (slope: number) => Math.round(1000 * slope) / 10;
  return {
    kind: 'draw-rebound',
    side,
    severity:
      climb > (open?.severity === 'service' ? STILL_SERVICE_CLIMB : SERVICE_CLIMB) ? 'service' : 'watch',
    headline: `The running current${who} fell after the room was ${kind === 'lubricated' || kind === 'cleaned' ? kind : 'worked on'}, and has climbed back by ${percent} % since, faster than before.`,
    evidence: {
      fellPercent: Math.round(-100 * Math.expm1(low - old)),
      climbedPercent: percent,
      // A climb that has come to rest was as fast as it was.
      percentPerStroke: open?.evidence.percentPerStroke ?? perStroke(slopeOf(after)),
      percentPerStrokeBefore:
        open?.evidence.percentPerStrokeBefore ?? perStroke(Math.max(0, slopeOf(before))),
    },
  };
}
