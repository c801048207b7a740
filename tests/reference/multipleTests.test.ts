import { expect, test } from 'vitest';
import { holmRejections } from '../../analysis/statistics/holmRejections.ts';
import { published } from './values/read.ts';

const CASES = published<{ p: readonly number[] }, { holm: readonly number[] }>('multiple-tests');

test.each(CASES)('$id: each is rejected from its adjusted p-value on', ({ inputs: { p }, expected }) => {
  const rejectedAt = (rate: number) => holmRejections(p.length, rate, (index, level) => p[index] <= level);
  for (const adjusted of expected.holm.filter((each) => each < 1)) {
    for (const rate of [0.999 * adjusted, 1.001 * adjusted]) {
      expect(rejectedAt(rate).map((at) => at !== null)).toEqual(expected.holm.map((each) => each <= rate));
    }
  }
});

test('the level at which each was rejected is what was left for it', () => {
  const p = [0.04, 0.001, 0.02, 0.6];
  const rejectedAt = holmRejections(p.length, 0.06, (index, level) => p[index] <= level);
  expect(rejectedAt).toEqual([null, 0.015, 0.02, null]);
  expect(holmRejections(0, 0.05, () => true)).toEqual([]);
});
