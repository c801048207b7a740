import { expect, test } from 'vitest';
import { ReusedArray } from '../../../analysis/statistics/reusedArray.ts';

test('an array is used again, also by what needs a longer one, but no giant is kept', () => {
  const reused = new ReusedArray();
  const first = reused.ofLength(5000);
  expect(first).toHaveLength(5000);
  expect(reused.ofLength(10).buffer).toBe(first.buffer);
  const giant = reused.ofLength(1_000_000);
  expect(giant).toHaveLength(1_000_000);
  expect(reused.ofLength(10).buffer).toBe(first.buffer);
});

test('a copy is of the values alone, and leaves them as they are', () => {
  const reused = new ReusedArray();
  const values = Float64Array.of(3, 1, 2);
  const copy = reused.copyOf(values.subarray(1));
  expect([...copy]).toEqual([1, 2]);
  copy.sort().fill(0);
  expect([...values]).toEqual([3, 1, 2]);
});
