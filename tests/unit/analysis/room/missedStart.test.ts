import { expect, test } from 'vitest';
import { changed } from '../support/contexts.ts';
import { foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const STROKES = 90;
const FROM = 40;
const EVERY = 9;

/** What is said of the front side's starts that, now and then from `FROM` on, are read as so many times the running current. */
function saidOf(times: number): (boolean | null)[] {
  const isOdd = (i: number) => i >= FROM && i % EVERY === 0;
  const events = strokeEvents(STROKES, ROOM, 9).map((event, i) =>
    isOdd(i) ? changed(event, { front: ({ runningAmps }) => ({ inrushAmps: times * runningAmps }) }) : event,
  );
  return foldAll(ROOM, events)
    .judgements.filter((_, i) => isOdd(i))
    .flatMap(({ expectations }) =>
      expectations
        .filter(({ measure, side }) => measure === 'inrushAmps' && side === 'front')
        .map(({ beyond }) => beyond),
    );
}

test('the peak of a start that its record missed is not held against the starts that were read', () => {
  expect(new Set(saidOf(1.1))).toEqual(new Set([null]));
});

test('a start that is read and stands much lower is beyond its limits', () => {
  expect(saidOf(2)[0]).toBe(true);
});
