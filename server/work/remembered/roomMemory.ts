import type { RoomState } from '../../../analysis/room/fold.ts';
import { BoundedMap } from '../../boundedMap.ts';
import type { FoldStart, Place } from './foldStart.ts';

/** Some hundred kilobytes each. Of more rooms, those gone through longest ago are forgotten. */
const MOST_ROOMS = 64;

interface RememberedRoom extends Place {
  readonly saved: Place;
  readonly state: RoomState;
  /** Of the row with the results. Whoever goes through the room writes that row anew. */
  readonly resultsVersion: string;
}

/** Where going through a room's events began and ended, and what was kept on the way. */
interface GoneThrough {
  readonly from: FoldStart | null;
  readonly checkpoints: readonly Place[];
  readonly state: RoomState;
  /** Null: there were no events. */
  readonly end: Place | null;
}

/**
 * The states of rooms between two rounds of one worker, so that a busy room need not be put away and taken out again each time.
 * A state counts only while the room's results are the very ones that this worker wrote. Then every change of the room's history
 * since has moved its mark, and the state holds as long as the mark lies after it (`readDirtyRooms` asks). Losing it loses
 * nothing: the checkpoint before leads to the same.
 */
export class RoomMemory {
  readonly #rooms = new BoundedMap<string, RememberedRoom>(MOST_ROOMS);

  look(roomId: string): Pick<RememberedRoom, 'at' | 'resultsVersion'> | null {
    return this.#rooms.get(roomId) ?? null;
  }

  /** Gives it away: the fold changes it, and what comes of that is remembered only once it is written. */
  take(roomId: string): FoldStart | null {
    const room = this.#rooms.get(roomId);
    if (room === undefined) return null;
    this.#rooms.delete(roomId);
    const { at, events, saved, state } = room;
    return { at, events, saved, isRemembered: true, state: () => state };
  }

  forget(roomId: string): void {
    this.#rooms.delete(roomId);
  }

  /** What was found of the room, and is written: its state stands for it. */
  keep(roomId: string, found: GoneThrough, resultsVersion: string): void {
    const { end, state, from, checkpoints } = found;
    const saved = checkpoints.at(-1) ?? from?.saved;
    if (end === null || saved === undefined) return;
    this.#rooms.set(roomId, {
      at: end.at,
      events: end.events,
      // Without the state that a checkpoint holds.
      saved: { at: saved.at, events: saved.events },
      state,
      resultsVersion,
    });
  }
}
