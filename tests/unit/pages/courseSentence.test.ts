import { expect, test } from 'vitest';
import type { Trend } from '../../../dashboards/src/api/types.ts';
import { readAs } from '../../../dashboards/src/reader.ts';
import { courseOf } from '../../../dashboards/src/small/course.ts';
import { courseSentence } from '../../../dashboards/src/small/courseSentence.ts';

readAs({ units: 'metric', timeZone: 'Europe/London', locale: 'en-GB' });

type Point = Trend['points'][number];

/** One stroke that drew `value` where `expected` was expected of it, and that stands at `adjusted` of a normal around 5 A. */
function sentence(part: Partial<Point>, only = false, inTrouble = false): string {
  const at = '2026-05-02T16:20:11.000Z';
  const point: Point = { strokeId: 'a', at, value: 5, expected: 5, adjusted: 5, beyond: false, ...part };
  const limits = { centre: 5, lower: 4.5, upper: 5.5 } as Trend['limits'];
  const trend: Trend = { limits, points: [point], services: [], forecast: null };
  return courseSentence(courseOf(trend, 'front', 0, true), { only, inTrouble });
}

test('tells the latest stroke by what was expected of it, as the sentence of its room does', () => {
  expect(sentence({ value: 5.6, expected: 5.55, adjusted: 5.01 })).toBe(
    'The front side drew 1% more than its normal the last time it went out. That is usual for it.',
  );
  expect(sentence({ value: 5.6, expected: 5.61, adjusted: 5.2 })).toMatch(/drew its normal current/);
  expect(sentence({ value: 8, expected: 5, beyond: true }, true)).toBe(
    'The motor drew 60% more than its normal the last time it went out. That is not usual for it.',
  );
});

test('calls nothing usual of a room that has a warning', () => {
  expect(sentence({ value: 5.6, expected: 5 }, false, true)).toBe(
    'The front side drew 12% more than its normal the last time it went out.',
  );
});

test('tells a side that is still learning from one that nothing was recorded of', () => {
  expect(sentence({ expected: null })).toBe('The front side has no normal yet.');
  const nothing: Trend = { limits: null, points: [], services: [], forecast: null };
  const unseen = courseOf(nothing, 'rear', 1, true);
  expect(courseSentence(unseen, { only: false, inTrouble: false })).toBe(
    'The rear side was not measured on these strokes.',
  );
});
