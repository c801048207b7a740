import type { Residual } from '../../baseline/judge.ts';
import { median } from '../../statistics/median.ts';
import type { FindingContext } from '../finding.ts';
import { isByWeakMagnets } from '../weakMagnets.ts';
import { MOST_STRONGER, quickerBy } from './quickerBySupply.ts';
import type { TravelMade } from './travelMade.ts';
import { squeezedOverCut, WHOLE_FITS_BETTER } from './wholeCourse.ts';

const DRAWN_SIGMAS = 2;
/** The courses of so many quick strokes in a row tell whether they were whole. */
const COURSES = 4;

/**
 * Whether the room went all the way, only faster than anything that was read accounts for: the latest quick strokes of this
 * direction hold the usual course from end to end. So goes a charger that nobody recorded, which holds its volts while the
 * room runs, but not when it stalls, where it gives all it can and the battery the rest; and so does a motor whose magnets
 * lost some of their field: it turns faster by no more than it draws more. `mayBeWhole`: it is short by enough to ask, and
 * does not lack its usual stop: one that does did not go all the way.
 */
export function isFasterOnly(
  context: FindingContext,
  { shortBy, by }: TravelMade,
  mayBeWhole: boolean,
): boolean {
  const { state, direction, residual } = context;
  const own = state.travel[direction];
  if (!mayBeWhole) {
    own.courses = [];
    return false;
  }
  if (isByWeakMagnets(context, shortBy)) return true;
  const ratio = squeezedOverCut(context, Math.exp(-shortBy));
  if (ratio !== null) own.courses = [...own.courses, ratio].slice(-COURSES);
  const byField = Math.max(0, ...state.room.sides.map((side) => mostDrawn(residual(side, 'runningAmps'))));
  const byCharger = by === 'time' ? 0 : mostByCharger(context);
  const isPossible = shortBy <= byField + byCharger;
  return isPossible && own.courses.length > 0 && median(own.courses) < WHOLE_FITS_BETTER;
}

/** How much more than usual a side may draw by what it was read, natural logarithm; 0 where that is none for sure. */
function mostDrawn(running: Residual | null): number {
  if (running === null) return 0;
  const doubt = DRAWN_SIGMAS * running.deviation;
  return running.rise > doubt ? running.rise + doubt : 0;
}

/** By how much a charger that nobody recorded may have quickened the room, natural logarithm. */
function mostByCharger(context: FindingContext): number {
  return quickerBy(context, Math.log(MOST_STRONGER));
}
