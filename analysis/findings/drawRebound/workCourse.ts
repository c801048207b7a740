import { mean } from 'simple-statistics';
import { bestCuts } from '../../statistics/changePoints.ts';
import { leastSquares } from '../../statistics/leastSquares.ts';
import { median } from '../../statistics/median.ts';
import { theilSen } from '../../statistics/theilSen.ts';
import type { FindingContext } from '../finding.ts';
import type { StrokeRise } from './reboundMemory.ts';

/** So many strokes tell where the draw lay before the work, just after it, or lies now: their middle. A guess, no source. */
export const FIRST_AFTER = 4;
/** Work that took less off the draw, natural logarithm, left nothing to come back. A guess, no source. */
export const LEAST_FALL = 0.06;
/** A climb by less, natural logarithm, is none. A guess, no source. */
export const LEAST_CLIMB = 0.06;

/** A climb rises by at least so much with each stroke, natural logarithm, and so many times as fast as before the work. Guesses. */
const LEAST_SLOPE = 0.003;
const TIMES_FASTER = 1.5;

/** How far a side, or all of them together, lay above normal on the strokes before and after the work. */
export interface Course {
  /** Null: of all sides together. */
  readonly side: string | null;
  readonly before: readonly number[];
  readonly after: readonly number[];
}

/** The course of one side, or of the mean of all (null). */
export function courseOf({ state: { rebound, room } }: FindingContext, side: string | null): Course {
  const at = side === null ? -1 : room.sides.indexOf(side);
  const levelOf = (rise: StrokeRise) => {
    const known = (at < 0 ? rise : [rise[at]]).filter((own) => own !== null);
    return known.length === 0 ? [] : [mean(known)];
  };
  return {
    side: at < 0 && room.sides.length === 1 ? room.sides[0] : side,
    before: rebound.before.flatMap(levelOf),
    after: rebound.after?.flatMap(levelOf) ?? [],
  };
}

/** Natural logarithm, as all levels: where the draw lay before the work, just after it, and lies now. */
export function stagesOf({ before, after }: Course): { old: number; low: number; now: number } {
  return {
    old: median(before.slice(-FIRST_AFTER)),
    low: median(after.slice(0, FIRST_AFTER)),
    now: median(after.slice(-FIRST_AFTER)),
  };
}

/** How far the draw has climbed since it was lowest, natural logarithm. */
export function climbOf(course: Course): number {
  const { low, now } = stagesOf(course);
  return now - low;
}

/** Whether it climbs faster than it did before the work, and at least by so much with each stroke, natural logarithm. */
export function isFaster({ before, after }: Course, least = LEAST_SLOPE): boolean {
  return slopeOf(after) > Math.max(least, TIMES_FASTER * Math.max(0, slopeOf(before)));
}

/** A step explains what is left by a straight climb, but for this part, from so many strokes on each of its sides on. */
const STEP_LEAVES = 0.6;
const STEP_STROKES = 3;

/** Whether the levels went up from one stroke to the next rather than by and by: that is no climb, but a trouble of its own. */
export function isStep(levels: readonly number[]): boolean {
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

/** The rise with each stroke, natural logarithm, by Theil and Sen; 0 for too few strokes. */
export function slopeOf(levels: readonly number[]): number {
  if (levels.length < FIRST_AFTER) return 0;
  return (
    theilSen(
      Float64Array.from(levels, (_, i) => i),
      levels,
    )?.slope ?? 0
  );
}
