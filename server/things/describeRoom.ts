import type { Selectable } from 'kysely';
import type { RoomDescription } from '../../analysis/trace.ts';
import type { RoomTable } from '../../migrations/thingTables.ts';

type DescribedBy = Omit<Selectable<RoomTable>, 'name' | 'created_at' | 'updated_at' | 'deleted_at'>;

/** The room as the analysis knows it. */
export function describeRoom(row: DescribedBy) {
  return {
    drive: row.drive,
    sides: row.sides,
    travelMetres: row.travel_metres,
    gearTeeth: row.gear_teeth,
    rackPitchMm: row.rack_pitch_mm,
    ratedAmps: row.rated_amps,
    nominalVolts: row.nominal_volts,
    positiveDirection: row.positive_direction,
  } satisfies RoomDescription;
}
