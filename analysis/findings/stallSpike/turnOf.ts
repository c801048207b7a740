import { travelPerTurnMetres } from '../../motor/gearMesh.ts';
import type { RoomDescription } from '../../trace.ts';

/** The part of the travel that the gear rolls off in one turn; null where its teeth, its pitch or the travel is not known. */
export function turnOf(room: RoomDescription): number | null {
  const { gearTeeth, rackPitchMm, travelMetres } = room;
  if (gearTeeth === null || rackPitchMm === null || travelMetres === null) return null;
  return travelPerTurnMetres(gearTeeth, rackPitchMm) / travelMetres;
}
