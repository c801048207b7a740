import { expect } from 'vitest';

/** Fails unless `actual` is within `tolerance` of `expected`, relative to `expected` (absolute where that is 0). */
export function near(actual: number, expected: number, tolerance: number, what = ''): void {
  const scale = expected === 0 ? 1 : Math.abs(expected);
  const error = Math.abs(actual - expected) / scale;
  expect(error <= tolerance, `${what} ${actual} against ${expected}: off by ${error}`).toBe(true);
}

/** `near` for every pair, and the same number of values. */
export function allNear(
  actual: ArrayLike<number>,
  expected: ArrayLike<number>,
  tolerance: number,
  what = '',
): void {
  expect(actual.length).toBe(expected.length);
  for (let i = 0; i < expected.length; i++) near(actual[i], expected[i], tolerance, `${what}[${i}]`);
}

/** Absolute agreement of every pair: for figures that a publication printed rounded. */
export function allWithin(
  actual: ArrayLike<number>,
  expected: ArrayLike<number>,
  tolerance: number,
  what = '',
): void {
  expect(actual.length).toBe(expected.length);
  for (let i = 0; i < expected.length; i++) {
    const error = Math.abs(actual[i] - expected[i]);
    expect(error <= tolerance, `${what}[${i}] ${actual[i]} against ${expected[i]}: off by ${error}`).toBe(
      true,
    );
  }
}
