import type { SideMeasures } from '../measures.ts';
import type { RoomDescription } from '../trace.ts';

/** Sides whose currents end within this of each other were switched off together. */
export const SWITCHED_OFF_TOGETHER_S = 0.25;

/**
 * Seconds by which the last side comes to its end later than the first; null with one side, where a side was not
 * recorded, and where the sides were switched off together before either came to its stop: that tells no lag.
 */
export function lagOf(sides: Record<string, SideMeasures>, room: RoomDescription): number | null {
  if (room.sides.length < 2 || room.sides.some((name) => sides[name] === undefined)) return null;
  const first = sides[room.sides[0]].phases;
  const last = sides[room.sides[room.sides.length - 1]].phases;
  const lagS = (last.endStopStartS ?? last.endS) - (first.endStopStartS ?? first.endS);
  const stopped = first.endStopStartS !== null || last.endStopStartS !== null;
  return stopped || Math.abs(lagS) > SWITCHED_OFF_TOGETHER_S ? lagS : null;
}
