import { mean, sampleStandardDeviation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { Random } from '../../../server/demo/simulator/random.ts';

test('gives the published sequence of xoshiro128** from the state 1, 2, 3, 4', () => {
  // Test vector of the authors' reference program, as carried by public ports of it.
  const random = Random.fromState(1, 2, 3, 4);
  expect(Array.from({ length: 10 }, () => random.bits())).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
  ]);
});

test('normal deviates have the mean and the spread that were asked for', () => {
  const random = new Random(9);
  const values = Array.from({ length: 20_000 }, () => random.normal(3, 2));
  expect(Math.abs(mean(values) - 3)).toBeLessThan((4 * 2) / Math.sqrt(20_000));
  expect(sampleStandardDeviation(values)).toBeCloseTo(2, 1);
});

test('a fork does not shift what its parent draws later', () => {
  const drawsMuch = new Random(4);
  const drawsNothing = new Random(4);
  const fork = drawsMuch.fork();
  for (let draw = 0; draw < 100; draw++) fork.bits();
  drawsNothing.fork();
  expect(drawsMuch.bits()).toBe(drawsNothing.bits());
});
