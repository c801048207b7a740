import { lagAtStops } from '../../stroke/lag.ts';
import { comesAt } from '../../trace.ts';
import type { FindingContext } from '../finding.ts';

/** The way begins within this part of the travel; a start that is high takes the first of it. */
const BEGINNING = 0.06;
/** Play takes its time at the speed of a motor without load: the side ends later by at least this part of it. A guess, no source. */
const LATER_PART = 0.5;
/** Two sides that end together are apart by less than this, seconds. */
const LEAST_S = 0.3;

/**
 * Whether a side that ran without load where its way begins only took up play there: it ends so much later than the other
 * one, and that is what there is to say of it. A side that lost its teeth for a part of the travel is without load there
 * on the way back as well.
 */
export function takesUpPlay(
  { state, analysis, direction, residual }: FindingContext,
  side: string,
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  const { sides } = state.room;
  const lagS = lagAtStops(analysis);
  if (sides.length !== 2 || lagS === null) return false;
  if (comesAt(direction === 'extend' ? from : to, direction) > BEGINNING) return false;
  const lag = residual(sides[0], 'lagS')?.rise ?? lagS;
  const later = side === sides[1] ? lag : -lag;
  return later > Math.max(LEAST_S, LATER_PART * (to - from) * analysis.sides[side].durationS);
}
