import { compareAnew, relearn } from '../baseline/learn.ts';
import { beginComings } from '../findings/comesBack.ts';
import { noteService } from '../findings/drawRebound/noteRebound.ts';
import { noteWork } from '../findings/howOften.ts';
import { NOT_APART } from '../findings/lateSide/lagMemory.ts';
import { restLoad } from '../findings/load/loadMemory.ts';
import { isNotNormal } from '../findings/notNormal.ts';
import type { Judgement, ServiceEvent } from '../history.ts';
import type { RoomState } from '../roomState.ts';
import { DIRECTIONS, type ServiceKind } from '../trace.ts';
import { lendNoMore } from './lendStroke.ts';

/** Work after which another current, also a higher one, is to be expected. */
const NEW_NORMAL: ReadonlySet<ServiceKind> = new Set([
  'gear-replaced',
  'block-replaced',
  'motor-replaced',
  'retimed',
  'adjusted',
]);

/**
 * Takes work on the room, or on one side of it, into the state. It opens a new baseline that starts from the old one's shape:
 * learnt anew after work that changes the mechanism, brought down to the next strokes after cleaning and the like. Of the sides
 * that were not worked on only what goes by the others is learnt anew. While a trouble is open, or the latest stroke
 * lay beyond its normal, the old normal stands, and the strokes after show whether the work helped.
 */
export function takeService(state: RoomState, event: ServiceEvent): Judgement {
  if (NEW_NORMAL.has(event.kind)) {
    lendNoMore(state, event.side);
    state.lag.together = 0;
  }
  if (!state.suspicious && !isNotNormal(state)) {
    if (NEW_NORMAL.has(event.kind)) state.lag.apart = NOT_APART;
    for (const channel of state.channels) {
      const isWorkedOn = event.side === null || channel.side === event.side;
      if (!NEW_NORMAL.has(event.kind)) channel.settling = isWorkedOn ? [] : channel.settling;
      else if (isWorkedOn) relearn(channel);
      else compareAnew(channel);
    }
  }
  restLoad(state.load);
  state.load.risings = beginComings();
  noteService(state.rebound, event.kind, event.side);
  noteWork(state.spikes.said, event.side);
  // A travel is the room's, whichever side the work was done on.
  noteWork(state.travel.said, null);
  for (const direction of DIRECTIONS) noteWork(state.dropped[direction], event.side);
  return { expectations: [], warnings: [] };
}
