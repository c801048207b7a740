import { expect, test } from 'vitest';
import { limitsOf } from '../../../../../analysis/room/fold.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

/** The normal of the running current and the middle of its limits, as parts of `level`. */
function partsOf(level: number, factorAt: (stroke: number) => number, strokes: number, seed: number) {
  const events = strokeEvents(strokes, ROOM, seed, (i) => ({ factors: [factorAt(i), factorAt(i)] }));
  const [found] = limitsOf(foldAll(ROOM, events).state).filter(
    ({ measure, side, direction }) =>
      measure === 'runningAmps' && side === ROOM.sides[0] && direction === 'extend',
  );
  return { normal: found.normal / level, centre: found.limits.centre / level };
}

test.each([1, 2, 3])(
  'a rise is counted from where it began, not from how far the limits followed it (seed %i)',
  (seed) => {
    const { normal, centre } = partsOf(8, (i) => 1 + Math.max(0, i - 40) * 0.0015, 100, seed);
    expect(Math.abs(normal - 1)).toBeLessThan(0.015);
    expect(centre).toBeGreaterThan(1.015);
  },
);

test.each([1, 2, 3])('of a room that has come to run easier, from there (seed %i)', (seed) => {
  const { normal, centre } = partsOf(8, (i) => (i < 40 ? 1 : 0.93), 100, seed);
  expect(normal).toBe(centre);
  expect(normal).toBeLessThan(0.96);
});
