import { expect, test } from 'vitest';
import type { ComparedGroup } from '../../../dashboards/src/api/types.ts';
import { outcomeOf } from '../../../dashboards/src/compare/didItHelp.ts';

/** A group whose running current changed so much, surely or not; null: too few strokes to tell. */
function groupOf(shift: number | null, excludesZero = true): ComparedGroup {
  return {
    side: 'front',
    direction: 'extend',
    strokesBefore: 4,
    strokesAfter: 4,
    shifts: [
      { measure: 'runningAmps', unit: 'A', before: 6, after: 5, shift, lower: 0, upper: 0, excludesZero },
    ],
    changedBins: [],
    profileBefore: [],
    profileAfter: [],
    bandBefore: { lower: [], upper: [] },
    bandAfter: { lower: [], upper: [] },
  };
}

test.each([
  ['less', [-1.3, -1.4]],
  ['more', [0.4]],
  ['mostlyLess', [-1.3, -1.4, 0.1]],
  ['more', [0.9, -0.1]],
  ['both', [-1, 0.8]],
] as const)('sure changes come to %s: %j', (outcome, shifts) => {
  expect(outcomeOf(shifts.map((shift) => groupOf(shift)))).toBe(outcome);
});

test('a change within its uncertainty is none, and none that is known is not the same', () => {
  expect(outcomeOf([groupOf(-2, false), groupOf(1, false)])).toBe('same');
  expect(outcomeOf([groupOf(-2, false), groupOf(0.3)])).toBe('more');
  expect(outcomeOf([groupOf(null, false)])).toBe('unknown');
  expect(outcomeOf([])).toBe('unknown');
});
