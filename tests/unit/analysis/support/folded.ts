import type { Judgement, RoomEvent } from '../../../../analysis/history.ts';
import { advanceRoom, beginRoom, type RoomState } from '../../../../analysis/room/fold.ts';
import type { RoomDescription } from '../../../../analysis/trace.ts';
import type { Warning } from '../../../../analysis/warning.ts';

export interface Folded {
  readonly state: RoomState;
  readonly judgements: Judgement[];
  /** The latest form of every warning there ever was, in the order of opening. */
  readonly warnings: Warning[];
}

export const ROOM_ID = '01900000-0000-7000-8000-00000000000a';

/** Takes a history in its order through the fold; `between` may put the state away after each step. */
export function foldAll(
  room: RoomDescription,
  events: readonly RoomEvent[],
  between: (state: RoomState) => RoomState = (state) => state,
): Folded {
  let state = beginRoom(ROOM_ID, room);
  const warnings = new Map<string, Warning>();
  const judgements = events.map((event) => {
    const judgement = advanceRoom(state, event);
    for (const warning of judgement.warnings) warnings.set(warning.id, warning);
    state = between(state);
    return judgement;
  });
  return { state, judgements, warnings: [...warnings.values()] };
}

export const kindsOf = (warnings: readonly Warning[]): string[] => warnings.map(({ kind }) => kind);
