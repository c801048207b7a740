import { describe, expect, test } from 'vitest';
import type { RoomEvent } from '../../../../analysis/history.ts';
import { orderEvents } from '../../../../analysis/room/fold.ts';
import { changed } from '../support/contexts.ts';
import { foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { directionOf, serviceEvent, strokeEvents, type Told } from '../support/strokeEvents.ts';

const FROM = 30;
const MENDED = 50;
const STROKES = 90;

/** A room with a fault between two strokes; going out it takes a part of its time then and, where less, meets no stop. */
function mendedBy(fault: Partial<Told>, part: number, kind: 'adjusted' | 'retimed' | 'gear-replaced') {
  const hasFault = (i: number) => i >= FROM && i < MENDED;
  const strokes = strokeEvents(STROKES, ROOM, 4, (i) => (hasFault(i) ? fault : {})).map((event, i) =>
    hasFault(i) && part < 1 && directionOf(i) === 'extend'
      ? changed(event, { all: ({ durationS }) => ({ durationS: part * durationS, endStopAmps: null }) })
      : event,
  );
  const events: RoomEvent[] = [...strokes, serviceEvent(MENDED, kind)];
  return foldAll(ROOM, events.sort(orderEvents));
}

describe.each([
  { name: 'a travel that ended early', fault: {}, part: 0.8, said: 'short-travel' },
  { name: 'a rise', fault: { factors: [1.4, 1.4] }, part: 1, said: 'rising-draw' },
  { name: 'load that moved over', fault: { factors: [1.3, 0.75] }, part: 1, said: 'uneven-sides' },
  { name: 'a side that came late', fault: { lagS: 3 }, part: 1, said: 'late-side' },
  { name: 'a load that one side had lost', fault: { factors: [1.8, 0.2] }, part: 1, said: 'dropped-load' },
])('$name and was mended by work that makes a new normal', ({ fault, part, said }) => {
  test.each(['adjusted', 'retimed', 'gear-replaced'] as const)(
    'is over, and the room is judged on: %s',
    (kind) => {
      const { warnings, judgements } = mendedBy(fault, part, kind);
      expect(warnings.map((warning) => [warning.kind, warning.clearedAtMs !== null])).toEqual([[said, true]]);
      const latest = judgements.at(-1)?.expectations ?? [];
      expect(
        latest.filter(({ measure }) => measure === 'runningAmps').map(({ expected }) => expected),
      ).toEqual([expect.any(Number), expect.any(Number)]);
    },
  );
});
