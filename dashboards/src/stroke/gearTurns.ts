import type { Room } from '../api/types.ts';

const MOST_TURNS = 200;

/** How far a room goes with one turn of its gear, metres: teeth times pitch. Null where the gear is not known. */
export function metresPerTurn({ gearTeeth, rackPitchMm }: Room): number | null {
  return gearTeeth === null || rackPitchMm === null ? null : (gearTeeth * rackPitchMm) / 1000;
}

/** The places, 0 to 1 and counted from fully in, at which the gear has made a whole turn more. */
export function gearTurns(room: Room): number[] {
  const turnMetres = metresPerTurn(room);
  if (turnMetres === null || room.travelMetres === null) return [];
  const count = Math.min(MOST_TURNS, Math.floor(room.travelMetres / turnMetres + 1e-9));
  return Array.from({ length: count }, (_, i) => ((i + 1) * turnMetres) / (room.travelMetres ?? 1));
}
