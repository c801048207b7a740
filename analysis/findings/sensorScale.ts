import { median } from '../statistics/median.ts';
import type { FindingContext } from './finding.ts';

/** Rises of one side's running current and stall currents over the latest strokes, natural logarithm. */
export interface ScaleMemory {
  running: number[];
  inrush: number[];
  endStop: number[];
}

const LATEST = 3;
/** Scale changes smaller than this are within what seasons do. */
const LEAST = 0.12;
/** Of the running current's change, the stall currents show at least and at most so much. */
const LEAST_LIKE = 0.6;
const MOST_LIKE = 1.7;

/**
 * By how much a side's sensor seems to have changed its scale (natural logarithm); null: not told. Friction moves
 * the running current alone, since the current at standstill is V/R; a wrong scale moves inrush and stall alike.
 */
export function scaleChange(context: FindingContext, side: string): number | null {
  const memory = context.state.scale[side];
  if (memory === undefined) return null;
  const rises = { running: 'runningAmps', inrush: 'inrushAmps', endStop: 'endStopAmps' } as const;
  for (const key of ['running', 'inrush', 'endStop'] as const) {
    const judged = context.residual(side, rises[key]);
    if (judged === null) continue;
    memory[key].push(judged.rise);
    if (memory[key].length > LATEST) memory[key].shift();
  }
  if (context.residual(side, 'runningAmps') === null || memory.running.length === 0) return null;
  const running = median(memory.running);
  const stalls = [memory.inrush, memory.endStop]
    .filter((list) => list.length > 0)
    .map((list) => median(list));
  if (Math.abs(running) < LEAST || stalls.length === 0) return null;
  const alike = stalls.every((stall) => stall / running > LEAST_LIKE && stall / running < MOST_LIKE);
  return alike ? running : null;
}
