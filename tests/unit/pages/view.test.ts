import { expect, test } from 'vitest';
import { isWhole, moved, zoomed } from '../../../dashboards/src/charts/plot/view.ts';

const WHOLE = { min: 0, max: 100 };

test.each([
  // About its middle, unless a place is told.
  [{ min: 20, max: 60 }, 0.5, undefined, { min: 30, max: 50 }],
  // The place under the fingers stays where it is: a quarter of the way along before and after.
  [{ min: 20, max: 60 }, 0.5, 30, { min: 25, max: 45 }],
  // Wider than the whole it is the whole, and at an edge it stops there with its full width.
  [{ min: 20, max: 60 }, 4, undefined, { min: 0, max: 100 }],
  [{ min: 0, max: 40 }, 1.5, undefined, { min: 0, max: 60 }],
  [{ min: 60, max: 100 }, 1.5, undefined, { min: 40, max: 100 }],
  // Closer than a thousandth nobody can read.
  [{ min: 50, max: 50.2 }, 0.1, undefined, { min: 50.05, max: 50.15 }],
])('%j, %f times as wide, is %j', (view, part, at, expected) => {
  const found = zoomed(view, WHOLE, part, at);
  expect(found.min).toBeCloseTo(expected.min, 10);
  expect(found.max).toBeCloseTo(expected.max, 10);
});

test('moves by a part of its own width, and at an edge keeps that width', () => {
  expect(moved({ min: 20, max: 60 }, WHOLE, 0.5)).toEqual({ min: 40, max: 80 });
  expect(moved({ min: 20, max: 60 }, WHOLE, -0.25)).toEqual({ min: 10, max: 50 });
  expect(moved({ min: 50, max: 90 }, WHOLE, 0.5)).toEqual({ min: 60, max: 100 });
  expect(moved({ min: 10, max: 50 }, WHOLE, -0.5)).toEqual({ min: 0, max: 40 });
});

test('is the whole where only rounding parts them', () => {
  expect(isWhole({ min: 0, max: 99.95 }, WHOLE)).toBe(true);
  expect(isWhole({ min: 0, max: 99 }, WHOLE)).toBe(false);
});
