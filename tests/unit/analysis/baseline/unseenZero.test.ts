import { expect, test } from 'vitest';
import type { Direction } from '../../../../analysis/trace.ts';
import { changed } from '../support/contexts.ts';
import { foldAll, kindsOf } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { directionOf, strokeEvents } from '../support/strokeEvents.ts';

const FROM = 60;
const STROKES = 100;
/** Of motors that draw so little, about two amperes, a zero that wanders is a tenth. */
const SMALL = 0.25;
const AMPS = 8 * SMALL;

/** What is said of small motors of which no rest tells the zero, of which each side draws `times` from `FROM` on. */
function told(readsSign: boolean, times: (direction: Direction) => readonly number[]) {
  const factors = (i: number) => (i < FROM ? [1, 1] : times(directionOf(i))).map((of) => SMALL * of);
  const events = strokeEvents(STROKES, ROOM, 11, (i) => ({ factors: factors(i) })).map((event) =>
    changed(event, {
      all: (_, direction) => ({
        offsetAmps: null,
        sign: readsSign && direction === 'retract' ? -1 : 1,
      }),
    }),
  );
  return foldAll(ROOM, events).warnings;
}

const MOVED = [0.9, 1.1];
const HIGHER = [1, 1.13];

test('a load that moved alike both ways is said of a sensor that reads with its sign: its zero cannot have done it', () => {
  const [warning] = told(true, () => MOVED);
  expect(warning).toMatchObject({ kind: 'uneven-sides', side: ROOM.sides[1] });
  expect(Number(warning.firstStrokeId.slice(-6)) - FROM).toBeLessThanOrEqual(6);
});

test('and so is a draw that rose alike both ways', () => {
  expect(kindsOf(told(true, () => HIGHER))).toEqual(['rising-draw']);
});

test('a sensor without a sign may have a zero that did it', () => {
  expect(told(false, () => MOVED)).toEqual([]);
});

test('nor is a zero that moved taken for a load, where one way reads more by it and the other less', () => {
  const moved = 0.25 / AMPS;
  const zeroMoved = (direction: Direction) => [1, 1 + (direction === 'extend' ? moved : -moved)];
  expect(kindsOf(told(true, zeroMoved))).not.toContain('uneven-sides');
  expect(kindsOf(told(true, zeroMoved))).not.toContain('rising-draw');
});
