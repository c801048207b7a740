import { expect, test } from 'vitest';
import { courseContrast } from '../../../../../analysis/findings/stallSpike/courseContrast.ts';

const BINS = 64;
const PLACE = 30;
/** A course that is half as high again at one place. */
const course = Array.from({ length: BINS }, (_, bin) => (bin === PLACE ? 9 : 6));

function largest(contrast: Float64Array | null): number {
  return Math.max(...(contrast ?? [Number.NaN]).map(Math.abs));
}

test.each([
  { name: 'as it is', stroke: course },
  { name: 'on another supply or in the cold, which multiply it', stroke: course.map((amps) => 1.4 * amps) },
  { name: 'with friction all along, which adds to it', stroke: course.map((amps) => amps + 2) },
  { name: 'on a slope that grows along the way', stroke: course.map((amps, bin) => amps + 0.01 * bin) },
])('a usual course $name has no contrast', ({ stroke }) => {
  expect(largest(courseContrast(stroke, course))).toBeLessThan(0.01);
});

test('what is drawn more at one place stands out there by its part of the current, and nowhere else', () => {
  const stroke = course.map((amps, bin) => (bin === 10 ? 1.2 * amps : amps));
  const contrast = courseContrast(stroke, course);
  expect(contrast?.[10]).toBeCloseTo(0.2, 6);
  expect(largest(contrast?.filter((_, bin) => bin !== 10) ?? null)).toBe(0);
});

test('of a place that is high by itself only what neither friction nor a factor explains stands out', () => {
  const stroke = course.map((amps, bin) => (bin === PLACE ? amps + 1.2 : amps));
  // By a factor it would be 1.2 / 9, by friction 1.2 / 6 of the usual current: the smaller one counts.
  expect(courseContrast(stroke, course)?.[PLACE]).toBeCloseTo(1.2 / 9, 6);
});

test('a bin that one of the two lacks has none, and where most are lacking nothing is told', () => {
  const gaps = (fewest: number) => course.map((amps, bin) => (bin < fewest ? null : amps));
  expect(courseContrast(gaps(8), course)?.[3]).toBe(0);
  expect(courseContrast(course, gaps(8))?.[3]).toBe(0);
  expect(courseContrast(gaps(33), course)).toBeNull();
});
