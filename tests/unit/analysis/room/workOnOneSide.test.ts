import { expect, test } from 'vitest';
import { orderEvents } from '../../../../analysis/room/fold.ts';
import { foldAll, kindsOf } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { serviceEvent, strokeEvents } from '../support/strokeEvents.ts';

const WORKED = 40;

test.each(ROOM.sides.flatMap((side) => [1, 2, 3].map((seed) => ({ side, seed }))))(
  'a new gear for the $side side makes a new normal of lag and share as well, whichever side is listed first (seed $seed)',
  ({ side, seed }) => {
    const isFirst = side === ROOM.sides[0];
    const strokes = strokeEvents(WORKED + 40, ROOM, seed, (i) =>
      // The new gear drives its side's end sooner, and takes a part of the other's load.
      i < WORKED ? {} : { lagS: isFirst ? 1.6 : -1.6, factors: isFirst ? [1.12, 0.97] : [0.97, 1.12] },
    );
    const events = [...strokes, serviceEvent(WORKED, 'gear-replaced', side)].sort(orderEvents);
    expect(kindsOf(foldAll(ROOM, events).warnings)).toEqual([]);
  },
);
