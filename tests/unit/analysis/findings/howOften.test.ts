import { expect, test } from 'vitest';
import {
  type HowOftenOfSides,
  isOverSince,
  keepHowOften,
  noteWork,
} from '../../../../analysis/findings/howOften.ts';

const SIDE = 'rear';

/** How many quiet strokes it takes until what showed on these strokes is over; `worked`: before the quiet ones. */
function quietUntilOver(shown: readonly boolean[], fewest: number, worked: boolean): number {
  const sides: HowOftenOfSides = {};
  for (const is of shown) keepHowOften(sides, SIDE, true, [is]);
  if (worked) noteWork(sides, SIDE);
  for (let quiet = 1; quiet <= 100; quiet++) {
    keepHowOften(sides, SIDE, true, [false]);
    if (isOverSince(sides[SIDE], fewest)) return quiet;
  }
  throw new Error('it is never over');
}

const ALWAYS = Array(12).fill(true);
const EVERY_OTHER = Array.from({ length: 13 }, (_, i) => i % 2 === 0);
const NOW_AND_THEN = Array.from({ length: 21 }, (_, i) => i % 10 === 0);

test('what shows on every stroke is over after the fewest quiet ones', () => {
  expect(quietUntilOver(ALWAYS, 4, false)).toBe(4);
});

test('what shows now and then is waited for until it would hide as long once in a hundred times', () => {
  const quiet = quietUntilOver(EVERY_OTHER, 4, false);
  // 7 of 13 by Beta(1/2, 1/2): 6.5/14 · 7.5/15 · … · 13.5/21 = 0.0098, and with one fewer 0.015.
  expect(quiet).toBe(8);
  expect(quietUntilOver(NOW_AND_THEN, 4, false)).toBe(24);
});

test('what was seen on few strokes is known less well, and waited for longer', () => {
  // 2 of 3: 1.5/4 · 2.5/5 · … = 0.0089, where the rate itself, 2 of 4, would have 7.
  expect(quietUntilOver([true, false, true], 4, false)).toBe(12);
  expect(quietUntilOver(ALWAYS, 3, false)).toBe(3);
});

test('after work on the side fewer quiet strokes will do, and work elsewhere changes nothing', () => {
  expect(quietUntilOver(ALWAYS, 8, true)).toBe(3);
  expect(quietUntilOver(ALWAYS, 2, true)).toBe(2);
  expect(quietUntilOver(EVERY_OTHER, 8, true)).toBe(5);
  const sides: HowOftenOfSides = {};
  for (const is of ALWAYS) keepHowOften(sides, SIDE, true, [is]);
  const before = structuredClone(sides);
  noteWork(sides, 'front');
  expect(sides).toEqual(before);
  noteWork(sides, null);
  expect(sides).not.toEqual(before);
});

test('while nothing is said nothing is counted, and once it is, from the latest strokes on', () => {
  const sides: HowOftenOfSides = {};
  keepHowOften(sides, SIDE, false, [true, true]);
  expect(sides).toEqual({});
  keepHowOften(sides, SIDE, true, [false, true, false, true]);
  expect(sides[SIDE]).toMatchObject({ strokes: 3, shown: 2, quiet: 0 });
  expect(isOverSince(undefined, 4)).toBe(true);
});
