import type { RoomState } from '../../../analysis/room/fold.ts';
import { unpackState } from './packedState.ts';

/** A point in a room's history: after all events up to a time. */
export interface Place {
  readonly at: Date;
  /** How many events lie behind it. */
  readonly events: number;
}

/** Where going through a room's events begins, with all that came before it. */
export interface FoldStart extends Place {
  /** The latest checkpoint up to there. */
  readonly saved: Place;
  /** Known from the round before and stored nowhere: `saved` lies further back. */
  readonly isRemembered: boolean;
  /** The state there, for the fold to change: to be asked for once. */
  readonly state: () => RoomState;
}

export function startAtCheckpoint({ at, events, state }: Place & { readonly state: Buffer }): FoldStart {
  return {
    at,
    events,
    saved: { at, events },
    isRemembered: false,
    // Plain JSON by agreement of the fold.
    state: () => JSON.parse(unpackState(state)) as RoomState,
  };
}
