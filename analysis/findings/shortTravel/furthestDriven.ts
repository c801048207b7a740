import type { Residual } from '../../baseline/judge.ts';
import type { MeasureName } from '../../measures.ts';
import type { FindingContext } from '../finding.ts';

/** A room may come to run easier and be quicker for it, but by no more than this: a travel cut short is no such drift. */
const MOST_QUICKER = 0.03;

/** The one of these sides that was driven furthest, by a measure: it tells how far the room went. Null where none has it. */
export function furthestDriven(
  { residual }: Pick<FindingContext, 'residual'>,
  sides: readonly string[],
  measure: MeasureName,
): Residual | null {
  const judged = sides.map((side) => residual(side, measure)).filter((each) => each !== null);
  return judged.length === 0 ? null : judged.reduce((a, b) => (longerBy(b) > longerBy(a) ? b : a));
}

/** By how much longer than expected a side was driven, natural logarithm. */
export function longerBy({ rise, fromReference }: Pick<Residual, 'rise' | 'fromReference'>): number {
  return Math.min(rise, fromReference + MOST_QUICKER);
}
