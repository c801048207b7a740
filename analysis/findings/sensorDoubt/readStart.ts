import { median } from '../../statistics/median.ts';
import type { FindingContext } from '../finding.ts';
import { isAsEver, isReadBeside } from './asEver.ts';
import { SCALE_STROKES } from './scaleMemory.ts';
import { readsStop } from './stallRise.ts';

/** A start below this many times the running current is no standstill: a controller lets it rise with the load. */
export const LEAST_START = 1.5;

/** Whether neither a side's start nor a stall tells what it draws at standstill. */
export function hasSoftStart(context: FindingContext, side: string): boolean {
  const { inrushAmps, runningAmps } = context.analysis.sides[side];
  return !readsStop(context, side) && inrushAmps < LEAST_START * runningAmps;
}

/** The standard deviation of the median of three, as a part of that of a single one. */
const MEDIAN_OF_THREE = 0.67;

/**
 * Whether the latest starts draw what they did although the running current changed by `running` (natural logarithm). A
 * sensor's scale multiplies whatever it reads, be it a standstill or a start that a controller holds low.
 */
export function startsAsEver(context: FindingContext, side: string, running: number): boolean {
  const { inrush } = context.state.scale[side];
  return startsTell(context, side, running) && isAsEver(median(inrush), running);
}

/**
 * Whether the latest starts are read well enough to speak for or against a scale, given such a change of the running
 * current.
 */
export function startsTell({ state, residual }: FindingContext, side: string, running: number): boolean {
  const judged = residual(side, 'inrushAmps');
  if (judged === null || state.scale[side].inrush.length < SCALE_STROKES) return false;
  return isReadBeside(MEDIAN_OF_THREE * judged.deviation, running);
}
