import type { Selectable } from 'kysely';
import { type Kysely, sql } from 'kysely';
import type { RoomDescription } from '../../analysis/trace.ts';
import type { RoomTable, Tables } from '../../migrations/tables.ts';

export interface RoomToAnalyse {
  readonly accountId: string;
  readonly roomId: string;
  readonly description: RoomDescription;
  /** Changes with every change of the room, so that what was made of an older description can be told. */
  readonly version: string;
}

export async function readRoom(
  db: Kysely<Tables>,
  accountId: string,
  roomId: string,
): Promise<RoomToAnalyse | null> {
  const row = await db
    .selectFrom('rooms')
    .selectAll()
    .select(sql<string>`xmin::text`.as('version'))
    .where('account_id', '=', accountId)
    .where('id', '=', roomId)
    .executeTakeFirst();
  return row ? { accountId, roomId, description: describeRoom(row), version: row.version } : null;
}

/** The room as the analysis knows it. */
export function describeRoom(row: Omit<Selectable<RoomTable>, 'name'>): RoomDescription {
  return {
    drive: row.drive,
    sides: row.sides,
    travelMetres: row.travel_metres,
    gearTeeth: row.gear_teeth,
    rackPitchMm: row.rack_pitch_mm,
    ratedAmps: row.rated_amps,
    nominalVolts: row.nominal_volts,
    positiveDirection: row.positive_direction,
  };
}
