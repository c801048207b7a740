import { median } from '../../statistics/median.ts';
import { type FindingContext, openOf } from '../finding.ts';
import { SCALE_STROKES } from './scaleMemory.ts';

/** A side works harder if it draws more by at least this, natural logarithm: a guess, no source. */
const LEAST = 0.12;
/** The load moved if the other side changed the other way by at least this part of this one's change: a guess, no source. */
export const MOVED_PART = 0.35;

/** Whether the latest strokes show that another side works harder while this one works less. */
export function loadMoved({ state }: FindingContext, side: string): boolean {
  const change = median(state.scale[side].running);
  return state.room.sides.some((other) => {
    const { running } = state.scale[other];
    if (other === side || running.length < SCALE_STROKES) return false;
    const against = -Math.sign(change) * median(running);
    return against > Math.max(LEAST, MOVED_PART * Math.abs(change));
  });
}

/** Whether another side works harder, by an open warning or by its strokes: then this one really has less to do. */
export function shedsLoad(context: FindingContext, side: string): boolean {
  const isSaid = openOf(context.state, 'uneven-sides').some((open) => open.side !== side);
  return isSaid || loadMoved(context, side);
}
