import { expect, test } from 'vitest';
import type { ComparedGroup } from '../../../analysis/compare/compared.ts';
import { compareSentence } from '../../../analysis/compare/compareSentence.ts';

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
