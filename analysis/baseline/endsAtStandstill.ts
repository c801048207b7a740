import type { SideMeasures } from '../measures.ts';

/**
 * A motor draws most where it stands: V/R less what its leads lose. Copper that a long stroke warmed by forty degrees takes a
 * seventh off that; a start that drew more than so many times the stop tells that a clutch, a stop that gives way or a
 * controller ends the way, and not the motor's own standstill. A guess, no source.
 */
const MOST_START = 1.35;

/** Whether what a side draws at its end may be its current at standstill, which tells of supply, copper and sensor, not of the load. */
export function endsAtStandstill({ inrushAmps, endStopAmps }: SideMeasures): boolean {
  return endStopAmps !== null && inrushAmps < MOST_START * endStopAmps;
}
