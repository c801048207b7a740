import { comesToStop, type DoneAnalysis, type SideMeasures } from '../measures.ts';
import type { RoomDescription } from '../trace.ts';
import { lastS } from './signal/interval.ts';

/** Sides whose currents end within this of each other may have been switched off together, seconds. */
export const SWITCHED_OFF_TOGETHER_S = 0.25;

/**
 * Seconds by which the last side comes to its end later than the first, less the pauses between; null with one side, and
 * where a side was not recorded.
 */
export function lagOf(sides: Record<string, SideMeasures>, room: RoomDescription): number | null {
  if (room.sides.length < 2 || room.sides.some((name) => sides[name] === undefined)) return null;
  const first = sides[room.sides[0]].phases;
  const last = sides[room.sides[room.sides.length - 1]].phases;
  return drivenTo(last) - drivenTo(first);
}

/** When a side came to its end, as if nobody had let go on the way. */
function drivenTo({ endStopStartS, endS, pauses }: SideMeasures['phases']): number {
  return (endStopStartS ?? endS) - lastS(pauses);
}

/**
 * The lag where it tells how the sides came to their stops: null also where they were switched off together, or almost so,
 * before either came to its stop, as by whoever lets go the switch on the way.
 */
export function lagAtStops(analysis: Pick<DoneAnalysis, 'sides' | 'lagS'>): number | null {
  const { lagS } = analysis;
  if (lagS === null || Math.abs(lagS) > SWITCHED_OFF_TOGETHER_S) return lagS;
  return comesToStop(analysis) ? lagS : null;
}
