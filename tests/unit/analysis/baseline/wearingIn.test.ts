import { expect, test } from 'vitest';
import { foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const FAULT_FROM = 60;
const STROKES = 150;
/** What a room draws more for each degree colder. */
const PER_DEGREE = 0.004;

/** From spring to summer to autumn, two strokes a stay; the mean of a year is 16 °C. */
const degreesAt = (i: number) =>
  16 + 10 * Math.sin((2 * Math.PI * (i - 15)) / 120) + 2 * Math.sin(2.1 * Math.floor(i / 2));

/** A room that draws a fifth more when it is new, and wears in while spring turns to summer. */
function wornIn(seed: number, step: number) {
  return foldAll(
    ROOM,
    strokeEvents(STROKES, ROOM, seed, (i) => {
      const ambientC = degreesAt(i);
      const fault = i >= FAULT_FROM ? step : 1;
      const level = (1 + 0.2 * Math.exp(-i / 10)) * (1 - PER_DEGREE * (ambientC - 20)) * fault;
      return { ambientC, factors: [level, level] };
    }),
  );
}

test.each([1, 2, 3, 4])(
  'what wears in is not learnt as weather: a rise in its first autumn is said at once (seed %d)',
  (seed) => {
    const { warnings } = wornIn(seed, 1.15);
    expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['rising-draw', null]]);
    const strokes = Number(warnings[0].firstStrokeId.replace('stroke-', '')) - FAULT_FROM + 1;
    expect(strokes).toBeGreaterThan(0);
    expect(strokes).toBeLessThanOrEqual(6);
  },
);

test.each([1, 2, 3, 4])('and calls nobody in the years after (seed %d)', (seed) => {
  expect(wornIn(seed, 1).warnings).toEqual([]);
});
