import { expect, test } from 'vitest';
import { wholeStrokes } from '../../../../analysis/baseline/wholeStrokes.ts';
import { MEASURE_INDEX, MEASURE_NAMES } from '../../../../analysis/measures.ts';

/** Strokes that took so many seconds; null: not known. */
function strokes(...seconds: readonly (number | null)[]): (number | null)[][] {
  return seconds.map((durationS) => {
    const values: (number | null)[] = MEASURE_NAMES.map(() => null);
    values[MEASURE_INDEX.durationS] = durationS === null ? null : Math.log(durationS);
    return values;
  });
}

test.each([
  { name: 'one that was broken off', times: [20, 21, 6, 20.5], whole: [true, true, false, true] },
  {
    name: 'both parts of one that was broken off',
    times: [20, 12, 8, 21],
    whole: [true, false, false, true],
  },
  {
    name: 'none of a room that takes a fifth longer in the cold',
    times: [20, 24, 20, 24],
    whole: [true, true, true, true],
  },
  { name: 'none whose time is not known', times: [20, null, 6], whole: [true, true, false] },
  { name: 'none where no time is known', times: [null, null], whole: [true, true] },
])('a part of a stroke: $name', ({ times, whole }) => {
  expect(wholeStrokes(strokes(...times))).toEqual(whole);
});
