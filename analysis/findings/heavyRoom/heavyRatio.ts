import type { RoomState } from '../../roomState.ts';
import type { FindingContext } from '../finding.ts';
import { allHeldAtOneValue } from '../sensorDoubt/cutLevel.ts';
import { overModel } from './heavyForModel.ts';
import { drawn, loadOf } from './heavyLoad.ts';

/** Far above what a healthy side stays under: more than cold and a crooked stand add to one near its rating. */
export const FAR_ABOVE = 1.2;
/** Fewer strokes tell nothing. */
const FEWEST = 3;

/** How many times as much a side draws as it is told against, heavy at `FAR_ABOVE`; null: too few strokes. */
export function heavyRatio(context: FindingContext, side: string): number | null {
  const { extend, retract } = context.state.heavy[side].amps;
  if (extend.length + retract.length < FEWEST) return null;
  return Math.max(ratioToDrive(context, side), ratioToModel(context, side));
}

/** Whether a room is heavy by its own rating, or by what its drive should need: nothing that others lent it has a say. */
export function isHeavyAlone(state: RoomState): boolean {
  return state.room.sides.some((side) => {
    const { extend, retract } = state.heavy[side].amps;
    return extend.length + retract.length >= FEWEST && ratioToDrive({ state }, side) >= FAR_ABOVE;
  });
}

/** Whether it is the model, more than rating or drive, that says a side is heavy. */
export function byModel(context: FindingContext, side: string): boolean {
  return ratioToModel(context, side) > ratioToDrive(context, side);
}

/** A room's own rating that is not exceeded stands against what others say: it was made for more than they need. */
function ratioToModel({ state }: FindingContext, side: string): number {
  const { ratedAmps } = state.room;
  const isWithinRating = ratedAmps !== null && drawn(state.heavy[side]).most <= ratedAmps;
  const over = overModel(state, side);
  return isWithinRating || over === null ? 0 : FAR_ABOVE * Math.exp(over);
}

/**
 * Without a rating the drive's guess is asked of the direction that takes less: weight on the racks is felt both ways, a seal
 * or a slope one way. Other rooms of the model excuse nothing: they may be as heavy, and no motor bears more for that.
 */
function ratioToDrive({ state }: Pick<FindingContext, 'state'>, side: string): number {
  const { ratedAmps } = state.room;
  const memory = state.heavy[side];
  if (ratedAmps !== null) return drawn(memory).most / ratedAmps;
  const { needed, overload } = loadOf(memory, state.room);
  return FAR_ABOVE * Math.max(needed, allHeldAtOneValue(state.cut[side]) ? 0 : overload);
}
