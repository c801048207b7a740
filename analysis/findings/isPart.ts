import type { FindingContext } from './finding.ts';
import { isByWeakMagnets } from './weakMagnets.ts';

/** A stroke that took less of its time than this is a part of one, natural logarithm: a guess, no source. */
const WHOLE_STROKE = Math.log(0.75);

/** Whether a stroke was broken off, or goes on where one was: its current is that of a part of the travel only. */
export function isPart(context: Pick<FindingContext, 'state' | 'analysis' | 'residual'>): boolean {
  const { state, residual } = context;
  const times = state.room.sides.map((side) => residual(side, 'durationS')?.rise ?? null);
  const known = times.filter((time) => time !== null);
  const longest = Math.max(...known);
  return known.length > 0 && longest < WHOLE_STROKE && !isByWeakMagnets(context, -longest);
}
