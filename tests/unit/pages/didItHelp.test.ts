import { expect, test } from 'vitest';
import type { ComparedGroup } from '../../../dashboards/src/api/types.ts';
import { outcomeOf } from '../../../dashboards/src/compare/didItHelp.ts';

/** A group whose running current changed so much, surely or not; null: too few strokes to tell. And its places. */
function groupOf(
  shift: number | null,
  levelIsSure = true,
  placesAmps: readonly number[] = [],
): ComparedGroup {
  return {
    side: 'front',
    direction: 'extend',
    strokesBefore: 4,
    strokesAfter: 4,
    shifts: [
      {
        measure: 'runningAmps',
        unit: 'A',
        before: 6,
        after: 5,
        shift,
        lower: 0,
        upper: 0,
        excludesZero: true,
      },
    ],
    levelIsSure,
    changedBins: placesAmps.map((shiftAmps, place) => ({
      from: place / 10,
      to: (place + 0.5) / 10,
      shiftAmps,
    })),
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

test.each([
  ['placeLess', -0.1, false, [-4.4]],
  // Relieved there, a side gives part of its load to the other.
  ['placeLess', 0.1, false, [-4.4, 0.8]],
  ['placeMore', -0.1, false, [2.5]],
  ['both', 0.1, false, [-2, 1.8]],
  ['same', 0.1, false, []],
  ['less', -0.6, true, [-0.6, 0.3]],
  ['both', -0.2, true, [3]],
  ['both', 0.2, true, [-4.4]],
] as const)(
  'single places come to %s: %d A of the whole, sure %s, and %j A',
  (outcome, shift, sure, places) => {
    expect(outcomeOf([groupOf(shift, sure, places)])).toBe(outcome);
  },
);
