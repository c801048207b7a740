import type { Residual } from '../../baseline/judge.ts';
import { type FindingContext, isOpen, openOf } from '../finding.ts';
import { furthestDriven } from './furthestDriven.ts';

/** A motor that ran so shortly before is warm: its copper carries less, which is no travel. A guess, no source. */
const COOLED_MS = 20 * 60_000;

/**
 * How many turns the motors made (`turnsAs`), by the side that was driven furthest. Null where the supply was recorded, by which
 * the time tells more, where the motors were still warm, and where no side's turns can be held against what they were.
 */
export function countedTurns(context: FindingContext): Residual | null {
  const { state, analysis } = context;
  const { restedMs } = state.stay;
  const isWarm = restedMs !== null && restedMs >= 0 && restedMs < COOLED_MS;
  if (analysis.supplyVolts !== null || isWarm) return null;
  return furthestDriven(context, comparableSides(context), 'turnsAs');
}

/**
 * Sides whose turns can still be held against what they were. A side that is said to draw more may have lost some of its magnets'
 * field, and then turns as often for fewer ampere-seconds (`Ke` falls with the field). None where the sides are said to share the
 * load otherwise: the one that takes less may have a bad contact or winding.
 */
function comparableSides({ state }: FindingContext): string[] {
  const harder = openOf(state, 'rising-draw').map(({ side }) => side);
  const isUneven = isOpen(state, 'uneven-sides');
  return isUneven || harder.includes(null) ? [] : state.room.sides.filter((side) => !harder.includes(side));
}
