import type { SideMeasures } from '../measures.ts';

/**
 * A start may draw this many times what the stop draws. A motor draws most at standstill: V/R, less what its leads
 * lose. Copper that a long stroke warmed by forty degrees takes a seventh off that. If the start drew still more, a
 * clutch, a stop that gives way or a controller ended the way, and not the motor's standstill. A guess, no source.
 */
const MOST_START = 1.35;

/**
 * Whether the current at a side's stop may be its current at standstill, which depends on supply, copper and sensor,
 * not on the load.
 */
export function endsAtStandstill({ inrushAmps, endStopAmps }: SideMeasures): boolean {
  return endStopAmps !== null && inrushAmps < MOST_START * endStopAmps;
}
