import { expect, test } from 'vitest';
import { changed } from '../support/contexts.ts';
import { foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const STROKES = 80;
const FROM = 40;

/** How often a side's turns lie beyond their limits where, from `FROM` on, it draws so many times as much when it stalls. */
function beyondOf(timesOf: (stay: number) => number): number {
  const events = strokeEvents(STROKES, ROOM, 9).map((event, i) =>
    changed(event, {
      front: () => ({
        endStopAmps: (38 + 0.2 * Math.sin(i)) * (i < FROM ? 1 : timesOf(Math.floor(i / 2))),
      }),
    }),
  );
  const { judgements } = foldAll(ROOM, events);
  const turns = judgements.flatMap(({ expectations }) =>
    expectations.filter(({ measure, side }) => measure === 'turnsAs' && side === 'front'),
  );
  return turns.filter(({ beyond }) => beyond === true).length;
}

test('a side that stalls alone where the ground stands crooked, on more of the supply, is not beyond its limits', () => {
  expect(beyondOf((stay) => (stay % 3 === 0 ? 1.09 : 1))).toBe(0);
});

test('turns that no ground accounts for are beyond their limits', () => {
  expect(beyondOf(() => 1.3)).toBeGreaterThan(30);
});
