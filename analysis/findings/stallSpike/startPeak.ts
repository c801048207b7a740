import { comesAt } from '../../trace.ts';
import type { FindingContext } from '../finding.ts';
import { ONE_PLACE } from './isEchoOf.ts';

/**
 * In this first part of its way a motor may still be starting. A peak higher than this, over the running current and as
 * a part of it, is more than the end of a start. Guesses, no source.
 */
const STARTING_PART = 0.1;
const HIGHEST = 0.4;

/**
 * Whether a low peak is the end of a start that a controller lets rise slowly: it comes right after the start, and none
 * of the latest strokes in the other direction peaks there. `position`: along this stroke's own way; `place`: the same
 * along the travel. `height`: over the running current, as a part of it.
 */
export function isOfStart(
  { state, direction }: FindingContext,
  side: string,
  { position, place }: { readonly position: number; readonly place: number },
  height: number,
): boolean {
  if (comesAt(position, direction) > STARTING_PART || height > HIGHEST) return false;
  const others = (state.spikes.sides[side] ?? []).filter((stroke) => stroke.direction !== direction);
  return !others.some(({ positions }) => positions.some((other) => Math.abs(other - place) < ONE_PLACE));
}
