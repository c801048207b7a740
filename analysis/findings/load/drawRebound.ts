import { type Channel, isReady } from '../../baseline/channel.ts';
import { regressors } from '../../baseline/conditions.ts';
import { MEASURE_NAMES } from '../../measures.ts';
import { nameSide } from '../../names.ts';
import { channelOf } from '../../roomState.ts';
import { bestCuts } from '../../statistics/changePoints.ts';
import { leastSquares } from '../../statistics/leastSquares.ts';
import { mannKendall } from '../../statistics/mannKendall.ts';
import { median } from '../../statistics/median.ts';
import { theilSen } from '../../statistics/theilSen.ts';
import type { Warning } from '../../warning.ts';
import { type Finding, type FindingAnswer, type FindingContext, NOTHING, openOf } from '../finding.ts';
import { hasMoved } from './loadShift.ts';
import type { Origin, ReboundMemory, StrokeRise } from './reboundMemory.ts';

const RUNNING = MEASURE_NAMES.indexOf('runningAmps');
const KEPT_BEFORE = 30;
/** Strokes after a service, a year of them, in which a climb may be laid to it. */
const KEPT_AFTER = 60;
const FIRST_AFTER = 4;
const LEAST_FALL = 0.06;
const LEAST_CLIMB = 0.06;
/** A season that nobody recorded climbs by itself. */
const UNRECORDED_CLIMB = 0.15;
/** What was said to rise and stands so many times as far above its fall came not back, but up: a guess, no source. */
const MOST_BACK = 2;
/** What a climb must be to be grave, natural logarithm, and what of it may be noise: one that rests there is told as one. */
const SERVICE_CLIMB = 0.2;
const STILL_SERVICE_CLIMB = 0.15;
const LEAST_SLOPE = 0.003;
const TIMES_FASTER = 1.5;
const LEAST_STROKES = 8;
const TREND_PROBABILITY = 0.001;

/** A service ends one stretch and begins another. */
export function noteService(memory: ReboundMemory, kind: string, side: string | null): void {
  if (memory.after !== null && memory.after.length > 0) memory.before = memory.after.slice(-KEPT_BEFORE);
  memory.after = [];
  memory.kind = kind;
  memory.side = side;
}

/** Takes a stroke into the memory; must come before the baseline learns from it. */
export function noteStroke(context: FindingContext): void {
  const memory = context.state.rebound;
  const rise = context.state.room.sides.map((side) => riseOf(context, side));
  if (rise.every((own) => own === null)) return;
  const { before, after } = memory;
  if (after === null) {
    before.push(rise);
    if (before.length > KEPT_BEFORE) before.shift();
    return;
  }
  if (after.length >= KEPT_AFTER) {
    // A later climb is laid to nothing any more; what was said goes on until the draw has come down again.
    if (openOf(context.state, 'draw-rebound').length === 0) return;
    after.splice(FIRST_AFTER, 1);
  }
  after.push(rise);
}

function riseOf(context: FindingContext, side: string): number | null {
  const channel = channelOf(context.state, side, context.direction);
  const measured = context.analysis.sides[side];
  if (channel === undefined || measured === undefined) return null;
  const origin = originOf(context.state.rebound, channel);
  if (origin === null) return null;
  const row = regressors(context.sideConditions(side), origin.weather);
  const expected = row.reduce((sum, x, i) => sum + x * origin.coefficients[i], 0);
  return Math.log(measured.runningAmps) - expected;
}

/** How far a side, or all of them together, lay above normal on the strokes before and after the work. */
interface Course {
  /** Null: of all sides together. */
  readonly side: string | null;
  readonly before: readonly number[];
  readonly after: readonly number[];
}

function courseOf({ state: { rebound, room } }: FindingContext, side: string | null): Course {
  const at = side === null ? -1 : room.sides.indexOf(side);
  const levelOf = (rise: StrokeRise) => {
    const known = (at < 0 ? rise : [rise[at]]).filter((own) => own !== null);
    return known.length === 0 ? [] : [known.reduce((sum, own) => sum + own, 0) / known.length];
  };
  return {
    side: at < 0 && room.sides.length === 1 ? room.sides[0] : side,
    before: rebound.before.flatMap(levelOf),
    after: rebound.after?.flatMap(levelOf) ?? [],
  };
}

function isLongEnough({ before, after }: Course): boolean {
  return before.length >= FIRST_AFTER && after.length >= LEAST_STROKES;
}

/** Natural logarithm, as all levels: where the draw lay before the work, just after it, and lies now. */
function stagesOf({ before, after }: Course): { old: number; low: number; now: number } {
  return {
    old: median(before.slice(-FIRST_AFTER)),
    low: median(after.slice(0, FIRST_AFTER)),
    now: median(after.slice(-FIRST_AFTER)),
  };
}

function climbOf(course: Course): number {
  const { low, now } = stagesOf(course);
  return now - low;
}

function originOf(memory: ReboundMemory, channel: Channel): Origin | null {
  const key = `${channel.side}|${channel.direction}`;
  const fit = channel.fits[RUNNING];
  if (memory.origin[key] === undefined && isReady(channel) && fit !== null)
    memory.origin[key] = { coefficients: fit.coefficients, weather: channel.weather };
  return memory.origin[key] ?? null;
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
    return hasClimbed(context, only, leastClimb(context)) ? only : null;
  }
  // What comes back on one side is halved in the mean of both.
  const alone = sides.map((name) => courseOf(context, name)).find((own) => climbsAlone(context, own));
  if (alone !== undefined) return alone;
  const whole = courseOf(context, null);
  return hasClimbed(context, whole, leastClimb(context)) ? whole : null;
}

function leastClimb({ conditions }: FindingContext): number {
  return conditions[1] === null ? UNRECORDED_CLIMB : LEAST_CLIMB;
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
  return hasClimbed(context, own, LEAST_CLIMB + Math.max(0, most));
}

function hasClimbed({ state }: FindingContext, course: Course, least: number): boolean {
  if (!isLongEnough(course)) return false;
  const { after } = course;
  const { old, low } = stagesOf(course);
  const climb = climbOf(course);
  if (!(old - low > LEAST_FALL && climb > least && isFaster(course))) return false;
  const trend = mannKendall(after);
  if (trend === null || trend.s <= 0 || trend.p >= TREND_PROBABILITY) return false;
  const isOwnRise = openOf(state, 'rising-draw').length > 0 && climb > MOST_BACK * (old - low);
  return !isOwnRise && !isStep(after);
}

function isFaster({ before, after }: Course): boolean {
  return slopeOf(after) > Math.max(LEAST_SLOPE, TIMES_FASTER * Math.max(0, slopeOf(before)));
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
    direction: null,
    position: null,
    pattern: null,
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

/** How many strokes a climb after a service may take to show itself before it counts as a rise of its own. */
const HELD_STROKES = 16;

/** Whether the draw fell with the latest service and climbs again: then a rise of these sides is not yet one of its own. */
export function mayRebound(context: FindingContext, risen: readonly string[]): boolean {
  const { side, after } = context.state.rebound;
  if (after === null || (side !== null && risen.some((other) => other !== side))) return false;
  if (isComingBack(courseOf(context, side))) return true;
  return risen.length > 0 && risen.every((name) => isComingBack(courseOf(context, name)));
}

/** A climb that shows itself is held for longer, as long as it is not plainly above where the work took it from. */
function isComingBack(course: Course): boolean {
  const { before, after } = course;
  if (before.length < FIRST_AFTER || after.length === 0 || isStep(after)) return false;
  const { old, low, now } = stagesOf(course);
  return (
    old - low > LEAST_FALL && (after.length <= HELD_STROKES || (now < old + LEAST_CLIMB && isFaster(course)))
  );
}

/** A step explains what is left by a straight climb, but for this part, from so many strokes on each of its sides on. */
const STEP_LEAVES = 0.6;
const STEP_STROKES = 3;

/** Whether the levels went up from one stroke to the next rather than by and by: that is no climb, but a trouble of its own. */
function isStep(levels: readonly number[]): boolean {
  const step = bestCuts(levels, 1, STEP_STROKES);
  const climb = leastSquares(
    levels.map((_, i) => [1, i]),
    levels,
  );
  if (step === null || climb === null) return false;
  const [at] = step.cuts;
  const isUp = median(levels.slice(at)) > median(levels.slice(0, at));
  return isUp && step.sumOfSquares < STEP_LEAVES * climb.residualSumOfSquares;
}

function slopeOf(levels: readonly number[]): number {
  if (levels.length < FIRST_AFTER) return 0;
  return (
    theilSen(
      Float64Array.from(levels, (_, i) => i),
      levels,
    )?.slope ?? 0
  );
}
