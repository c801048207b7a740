import { expect, test } from 'vitest';
import type { ComparedGroup } from '../../../../analysis/compare/compared.ts';
import { compareSentence } from '../../../../analysis/compare/compareSentence.ts';

const NO_BAND = { lower: [], upper: [] };

/** A group whose running current went from 10 A by so much, with its interval; of its travel nothing is told. */
function group(shift: number, lower: number, upper: number): ComparedGroup {
  const excludesZero = lower > 0 || upper < 0;
  const running = { measure: 'runningAmps', unit: 'A', before: 10, after: 10 + shift };
  return {
    side: 'main',
    direction: 'extend',
    strokesBefore: 6,
    strokesAfter: 6,
    shifts: [{ ...running, shift, lower, upper, excludesZero }],
    levelIsSure: excludesZero,
    changedBins: [],
    profileBefore: [],
    profileAfter: [],
    bandBefore: NO_BAND,
    bandAfter: NO_BAND,
  };
}

test.each([
  [-2, -2.4, -0.8, 'Going out, the motor draws 20 % less than before (between 8 % and 24 % less).'],
  [1.5, 0.9, 2.1, 'Going out, the motor draws 15 % more than before (between 9 % and 21 % more).'],
  // 0.3 % rounds to nothing, which a sure change is not.
  [-0.2, -0.4, -0.03, 'Going out, the motor draws 2 % less than before (up to 4 % less).'],
])('a shift of %d A with an interval of %d to %d A', (shift, lower, upper, sentence) => {
  expect(compareSentence([group(shift, lower, upper)], ['main'])).toBe(sentence);
});

/** The same with places of the travel that changed, in one direction. */
function placed(
  [shift, lower, upper]: readonly [number, number, number],
  direction: ComparedGroup['direction'],
  changedBins: ComparedGroup['changedBins'],
): ComparedGroup {
  return { ...group(shift, lower, upper), direction, changedBins };
}
const LESS_THERE = [{ from: 0.45, to: 0.55, shiftAmps: -4.41 }];
const LEVEL_OPEN = [0.1, -0.5, 0.72] as const;

test('one place that both directions tell is told once, and with it that the whole is not told apart', () => {
  const groups = [
    placed(LEVEL_OPEN, 'extend', LESS_THERE),
    placed(LEVEL_OPEN, 'retract', [{ from: 0.44, to: 0.53, shiftAmps: -4.19 }]),
  ];
  expect(compareSentence(groups, ['main'])).toBe(
    'Between 44 % and 55 % of the way out, the motor draws 4.3 A less than before, going out and coming in: what held it back there is gone or less. As a whole, the running current is not told apart from before.',
  );
});

test('a sure change of the whole and one of a place stand beside each other; a place that is all of the travel is the whole', () => {
  const sure = [-0.3, -0.5, -0.2] as const;
  expect(compareSentence([placed(sure, 'extend', LESS_THERE)], ['main'])).toBe(
    'Going out, the motor draws 3 % less than before (between 2 % and 5 % less). Between 45 % and 55 % of the way out, the motor draws 4.4 A less than before, going out: what held it back there is gone or less.',
  );
  const all = [{ from: 0, to: 1, shiftAmps: -0.3 }];
  expect(compareSentence([placed(sure, 'extend', all)], ['main'])).toBe(
    'Going out, the motor draws 3 % less than before (between 2 % and 5 % less).',
  );
});

test('the two largest places are told, in the order of the travel, and how many more there are', () => {
  const places = [0.1, 0.3, 0.5, 0.7, 0.9].map((from, i) => ({ from, to: from + 0.05, shiftAmps: i - 2.2 }));
  expect(compareSentence([placed(LEVEL_OPEN, 'retract', places)], ['front', 'main'])).toBe(
    'Between 10 % and 15 % of the way out, the main side draws 2.2 A less than before, coming in; between 90 % and 95 % of the way out, the main side draws 1.8 A more than before, coming in, and 3 more places changed: what held it back is gone or less where it draws less, and something holds it back more where it draws more. As a whole, the running current is not told apart from before.',
  );
});

test('where nothing is told apart, it says how much may have changed unseen', () => {
  expect(compareSentence([group(...LEVEL_OPEN)], ['main'])).toBe(
    'The running current is not told apart from before the work, neither as a whole nor at any place of the travel: with these strokes a change of the whole by up to 8 % would not show.',
  );
});

test('a change that only its own interval tells is a hint, and says so', () => {
  const hint = (direction: ComparedGroup['direction']): ComparedGroup => ({
    ...group(-0.6, -1.09, -0.1),
    direction,
    levelIsSure: false,
  });
  expect(compareSentence([hint('extend'), placed(LEVEL_OPEN, 'retract', [])], ['main'])).toBe(
    'The running current is not told apart from before the work, neither as a whole nor at any place of the travel: with these strokes a change of the whole by up to 11 % would not show. Going out, the motor seems to draw 6 % less than before (between 1 % and 11 % less): a hint, not proof, for where so much is compared chance alone may come to as much.',
  );
  const sure = group(-2, -2.4, -0.8);
  expect(compareSentence([sure, hint('retract')], ['main'])).toBe(
    'Going out, the motor draws 20 % less than before (between 8 % and 24 % less). Coming in, the motor seems to draw 6 % less than before (between 1 % and 11 % less): a hint, not proof, for where so much is compared chance alone may come to as much.',
  );
});
