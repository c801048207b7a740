import type { ColumnType, Generated } from 'kysely';
import type { Time, TimeByDefault, TimeOrNull } from './columns.ts';

export interface CoachTable {
  account_id: string;
  id: string;
  name: string;
  model: string | null;
  year: number | null;
  notes: string | null;
  /** The place of its most worrying room in the order of concern, kept by triggers. */
  concern: ColumnType<number, never, never>;
  created_at: TimeByDefault;
  updated_at: TimeByDefault;
  /** Not null: out of everybody's sight, and to be restored or removed. */
  deleted_at: TimeOrNull;
}

export interface RoomTable {
  account_id: string;
  id: string;
  coach_id: string;
  name: string;
  drive: 'in-wall' | 'through-frame' | 'cable' | 'other';
  sides: string[];
  travel_metres: number | null;
  gear_teeth: number | null;
  rack_pitch_mm: number | null;
  rated_amps: number | null;
  nominal_volts: Generated<number>;
  positive_direction: Generated<'extend' | 'retract'>;
  created_at: TimeByDefault;
  updated_at: TimeByDefault;
  /** Not null: out of everybody's sight, and to be restored or removed. */
  deleted_at: TimeOrNull;
}

export interface LoggerTable {
  account_id: string;
  id: string;
  coach_id: string;
  name: string;
  sensor: 'clamp' | 'shunt';
  token_hash: Buffer;
  /** Seconds to add to what its clock says. */
  clock_offset_s: Generated<number>;
  last_seen_at: TimeOrNull;
  created_at: TimeByDefault;
  updated_at: TimeByDefault;
}

export interface ServiceTable {
  account_id: string;
  id: string;
  room_id: string;
  kind: string;
  at: Time;
  side: string | null;
  notes: string | null;
  recorded_by: string | null;
  created_at: TimeByDefault;
  updated_at: TimeByDefault;
}
