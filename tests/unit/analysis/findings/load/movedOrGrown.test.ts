import { expect, test } from 'vitest';
import type { Warning } from '../../../../../analysis/warning.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

const FROM = 60;

/** A room: what its sides take from `FROM` on, and what both take besides. */
function warningsOf(
  take: (stroke: number) => readonly [number, number],
  besides: (stroke: number) => number,
): Warning[] {
  const events = strokeEvents(170, ROOM, 4, (i) => {
    const [front, rear] = i < FROM ? [1, 1] : take(i - FROM);
    const both = i < FROM ? 1 : besides(i - FROM);
    return { factors: [front * both, rear * both] };
  });
  return foldAll(ROOM, events).warnings;
}

const saidOf = (warnings: readonly Warning[]) => warnings.map(({ kind, side }) => [kind, side]);

test('a side that takes more and more is told once, though both draw less for some strokes', () => {
  const warnings = warningsOf(
    (stroke) => [1 + 0.003 * stroke, 1],
    (stroke) => (stroke >= 60 && stroke < 75 ? 0.93 : 1),
  );
  expect(saidOf(warnings)).toEqual([['rising-draw', 'front']]);
});

test('a load that moved is told as that, though both draw more in the first strokes after', () => {
  const warnings = warningsOf(
    () => [1.12, 0.88],
    (stroke) => [1.04, 1.08, 1.06, 1.02][stroke] ?? 1,
  );
  expect(saidOf(warnings)).toEqual([['uneven-sides', 'front']]);
});
