import { type Channel, isReady } from '../baseline/channel.ts';
import { regressors } from '../baseline/conditions.ts';
import { MEASURE_NAMES } from '../measures.ts';
import { channelOf } from '../room/state.ts';
import { bestCuts } from '../statistics/changePoints.ts';
import { leastSquares } from '../statistics/leastSquares.ts';
import { mannKendall } from '../statistics/mannKendall.ts';
import { median } from '../statistics/median.ts';
import { theilSen } from '../statistics/theilSen.ts';
import { type FindingAnswer, type FindingContext, NOTHING, openOf } from './finding.ts';
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

/** How far the side that was worked on lay above normal on strokes before and after the work, or the mean of all sides. */
function levels({ state: { rebound, room } }: FindingContext): { before: number[]; after: number[] | null } {
  const { before, after, side } = rebound;
  const at = side === null ? -1 : room.sides.indexOf(side);
  const levelOf = (rise: StrokeRise) => {
    const known = (at < 0 ? rise : [rise[at]]).filter((own) => own !== null);
    return known.length === 0 ? [] : [known.reduce((sum, own) => sum + own, 0) / known.length];
  };
  return { before: before.flatMap(levelOf), after: after?.flatMap(levelOf) ?? null };
}

function originOf(memory: ReboundMemory, channel: Channel): Origin | null {
  const key = `${channel.side}|${channel.direction}`;
  const fit = channel.fits[RUNNING];
  if (memory.origin[key] === undefined && isReady(channel) && fit !== null)
    memory.origin[key] = { coefficients: fit.coefficients, weather: channel.weather };
  return memory.origin[key] ?? null;
}

/**
 * The current fell after a service and is climbing back faster than before it. Slopes by Theil and Sen, the climb by
 * Mann and Kendall's test.
 */
export function drawRebound(context: FindingContext): FindingAnswer {
  const { state } = context;
  const { kind } = state.rebound;
  const { before, after } = levels(context);
  const [open] = openOf(state, 'draw-rebound');
  if (after === null || after.length < LEAST_STROKES || before.length < FIRST_AFTER) return NOTHING;
  const low = median(after.slice(0, FIRST_AFTER));
  const fall = median(before.slice(-FIRST_AFTER)) - low;
  const climb = median(after.slice(-FIRST_AFTER)) - low;
  if (open !== undefined && climb < LEAST_CLIMB / 2) return { present: [], gone: [open] };
  const slope = slopeOf(after);
  const earlier = Math.max(0, slopeOf(before));
  const faster = slope > Math.max(LEAST_SLOPE, TIMES_FASTER * earlier);
  const least = context.conditions[1] === null ? UNRECORDED_CLIMB : LEAST_CLIMB;
  const trend = mannKendall(after);
  const rises = trend !== null && trend.s > 0 && trend.p < TREND_PROBABILITY;
  if (open === undefined && !(fall > LEAST_FALL && climb > least && faster && rises)) return NOTHING;
  const isOwnRise = openOf(state, 'rising-draw').length > 0 && climb > MOST_BACK * fall;
  if (open === undefined && (isOwnRise || isStep(after))) return NOTHING;
  const percent = Math.round(100 * Math.expm1(climb));
  return {
    present: [
      {
        kind: 'draw-rebound',
        side: state.room.sides.length === 1 ? state.room.sides[0] : null,
        direction: null,
        position: null,
        pattern: null,
        severity: climb > 0.2 ? 'service' : 'watch',
        headline: `The running current fell after the room was ${kind === 'lubricated' || kind === 'cleaned' ? kind : 'worked on'}, and has climbed back by ${percent} % since, faster than before.`,
        evidence: {
          fellPercent: Math.round(-100 * Math.expm1(-fall)),
          climbedPercent: percent,
          // A climb that has come to rest was as fast as it was.
          ...(open === undefined
            ? {
                percentPerStroke: Math.round(1000 * slope) / 10,
                percentPerStrokeBefore: Math.round(1000 * earlier) / 10,
              }
            : {
                percentPerStroke: open.evidence.percentPerStroke,
                percentPerStrokeBefore: open.evidence.percentPerStrokeBefore,
              }),
        },
      },
    ],
    gone: [],
  };
}

/** How many strokes a climb after a service may take to show itself before it counts as a rise of its own. */
const HELD_STROKES = 16;

/** Whether the draw fell with the latest service and climbs again: then a rise of these sides is not yet one of its own. */
export function mayRebound(context: FindingContext, risen: readonly string[]): boolean {
  const { side } = context.state.rebound;
  if (side !== null && risen.some((other) => other !== side)) return false;
  const { before, after } = levels(context);
  if (after === null || after.length > HELD_STROKES || before.length < FIRST_AFTER || isStep(after))
    return false;
  return median(before.slice(-FIRST_AFTER)) - median(after.slice(0, FIRST_AFTER)) > LEAST_FALL;
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
