import { expect, test } from 'vitest';
import { profileShape } from '../../../../analysis/profileShape.ts';

const BINS = 64;

test('a profile without any of its first third tells no slope', () => {
  const profile = Array.from({ length: BINS }, (_, bin) => (bin < 22 ? null : 8));
  expect(profileShape(profile)).toBeNull();
});

test('slope and bulge are parts of the mean current, by thirds of the travel', () => {
  const profile = Array.from({ length: 63 }, (_, bin) => (bin < 21 ? 6 : bin < 42 ? 9 : 9));
  expect(profileShape(profile)?.slope).toBeCloseTo(3 / 8, 12);
  expect(profileShape(profile)?.bulge).toBeCloseTo(1.5 / 8, 12);
});
