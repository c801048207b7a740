import type { FindingContext } from '../finding.ts';
import { type Course, courseOf, FIRST_AFTER, isFaster, isStep, LEAST_FALL, stagesOf } from './workCourse.ts';

/** How many strokes a climb after a service may take to show itself before it counts as a rise of its own. */
const HELD_STROKES = 16;

/** Whether the draw fell with the latest service and climbs again: then a rise of these sides is not yet one of its own. */
export function mayRebound(context: FindingContext, risen: readonly string[]): boolean {
  const { side, after } = context.state.rebound;
  if (after === null || (side !== null && risen.some((other) => other !== side))) return false;
  if (isComingBack(courseOf(context, side))) return true;
  return risen.length > 0 && risen.every((name) => isComingBack(courseOf(context, name)));
}

/** A climb that shows itself is held for longer. */
function isComingBack(course: Course): boolean {
  const { before, after } = course;
  if (before.length < FIRST_AFTER || after.length === 0 || isStep(after)) return false;
  const { old, low } = stagesOf(course);
  return old - low > LEAST_FALL && (after.length <= HELD_STROKES || isFaster(course));
}
