import type { RoomEvent } from '../../../../analysis/history.ts';
import { foldAll } from './folded.ts';
import { ONE_MOTOR } from './handMade.ts';

/** Kind and direction of every warning that a room with one motor ever had. */
export const saidOf = (events: readonly RoomEvent[]) =>
  foldAll(ONE_MOTOR, events).warnings.map(({ kind, direction }) => [kind, direction]);
