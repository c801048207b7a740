import type { Selectable } from 'kysely';
import type { RoomTable } from '../migrations/thingTables.ts';
import type { StrokeToStore } from './strokeToStore.ts';

/** As JSON brings it. */
export type RoomRow = Omit<Selectable<RoomTable>, 'created_at' | 'updated_at' | 'deleted_at'>;

/** Tells what a room is now, and the name of that. */
export type LearnRoom = (room: RoomRow, measuredBy: string) => void;

/**
 * Measures strokes while their samples are at hand, which saves writing each twice and reading its samples again. It
 * need not: what it leaves, or was told too late, is measured once it is stored.
 */
export interface Measurer {
  /** The same strokes in the same order, with what they bring. */
  measure(strokes: readonly StrokeToStore[]): Promise<readonly StrokeToStore[]>;
  readonly learn: LearnRoom;
}
