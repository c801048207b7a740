import type { Residual } from '../baseline/judge.ts';
import { LEAST_START } from '../findings/sensorDoubt/readStart.ts';
import type { SideMeasures } from '../measures.ts';

/**
 * Whether a record missed the peak of its start: it began after it, or none of its samples fell into it. A motor that stands
 * draws V/R, several times what it runs with; where its starts are read as a rule, one that stands no higher than the load was
 * not. `start`: the inrush against its baseline, null where it has none.
 */
export function hasMissedStart(
  { inrushAmps, runningAmps }: Pick<SideMeasures, 'inrushAmps' | 'runningAmps'>,
  start: Residual | null,
): boolean {
  if (start === null) return false;
  const least = LEAST_START * runningAmps;
  return inrushAmps < least && start.expected > least && start.residual < -start.ownLimit;
}
