import { median } from '../../statistics/median.ts';
import { type FindingContext, openOf } from '../finding.ts';
import { SCALE_STROKES } from './scaleMemory.ts';

/** By less than this nobody works harder, natural logarithm: a guess, no source. */
const LEAST = 0.12;
/** The load moved when the other side changed by this part of what this one did, the other way: a guess, no source. */
export const MOVED_PART = 0.35;

/** Whether the latest strokes show that another side works harder by what this one works less, or the other way round. */
export function loadMoved({ state }: FindingContext, side: string): boolean {
  const change = median(state.scale[side].running);
  return state.room.sides.some((other) => {
    const { running } = state.scale[other];
    if (other === side || running.length < SCALE_STROKES) return false;
    const against = -Math.sign(change) * median(running);
    return against > Math.max(LEAST, MOVED_PART * Math.abs(change));
  });
}

/** Whether another side works harder, as is said of it or as it shows: then this one gets easier by itself after all. */
export function shedsLoad(context: FindingContext, side: string): boolean {
  const isSaid = openOf(context.state, 'uneven-sides').some((open) => open.side !== side);
  return isSaid || loadMoved(context, side);
}
