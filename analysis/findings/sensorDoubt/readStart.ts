import { median } from '../../statistics/median.ts';
import type { FindingContext } from '../finding.ts';
import { SCALE_STROKES } from './scaleMemory.ts';
import { CLEAR_START, readsStop } from './stallRise.ts';

/** A start that stands so little above the running current is none at standstill: a controller lets it rise with the load. */
const LEAST_START = 1.5;

/** Whether a side's start tells nothing of what it draws at standstill, and no stall does. */
export function hasSoftStart(context: FindingContext, side: string): boolean {
  const { inrushAmps, runningAmps } = context.analysis.sides[side];
  return !readsStop(context, side) && inrushAmps < LEAST_START * runningAmps;
}

/** A start that rose by no more than this part of the running current's rise, so many deviations below it, stands against a scale. */
const STARTS_AS_EVER = { part: 0.3, sigmas: 2 };

/** Whether the latest starts, which stand far above the running current, draw what they did: a wrong scale reads them higher too. */
export function startsAsEver(
  { state, analysis, residual }: FindingContext,
  side: string,
  running: number,
): boolean {
  const { inrush } = state.scale[side];
  const { inrushAmps, runningAmps } = analysis.sides[side];
  const judged = residual(side, 'inrushAmps');
  if (judged === null || inrush.length < SCALE_STROKES || inrushAmps < CLEAR_START * runningAmps)
    return false;
  const rise = median(inrush);
  const isSure = running - rise > STARTS_AS_EVER.sigmas * judged.deviation;
  return isSure && rise < STARTS_AS_EVER.part * running;
}
