import { expect, test } from 'vitest';
import { isOfShortWay, sharedSwing, swingOf } from '../../../../../analysis/findings/stallSpike/swing.ts';
import { profileShape } from '../../../../../analysis/profileShape.ts';
import { Random } from '../../../../../server/demo/simulator/random.ts';

const BINS = 64;

/** A profile of 5 A with a slow course, a swing of so many periods over the travel, and noise. */
function profile(part: number, cycles: number, seed: number): number[] {
  const random = new Random(seed);
  return Array.from({ length: BINS }, (_, bin) => {
    const x = (bin + 0.5) / BINS;
    const course = 1 + 0.1 * Math.sin(2 * Math.PI * x);
    return 5 * course * (1 + part * Math.sin(2 * Math.PI * cycles * x + 1)) + random.normal(0, 0.05);
  });
}

test.each([
  { cycles: 5.4, turn: 1 / 5.4 },
  { cycles: 9.1, turn: null },
  { cycles: 14, turn: 1 / 14 },
])('a new swing of $cycles periods is found by its size and its period', ({ cycles, turn }) => {
  const found = swingOf(profile(0.15, cycles, 1), profile(0, cycles, 2), turn);
  expect(found?.part).toBeGreaterThan(0.13);
  expect(found?.part).toBeLessThan(0.17);
  expect(Math.abs((found?.cycles ?? 0) / cycles - 1)).toBeLessThan(0.04);
});

test('a swing that the side always had, or one too gentle to mean anything, is none', () => {
  expect(swingOf(profile(0.15, 7, 3), profile(0.15, 7, 4), 1 / 7)).toBeNull();
  expect(swingOf(profile(0.025, 7, 5), profile(0, 7, 6), 1 / 7)).toBeNull();
  expect(swingOf(profile(0.05, 7, 7), profile(0, 7, 8), null)).toBeNull();
});

test('a gentle one is found where it comes with the turns of a known gear', () => {
  expect(swingOf(profile(0.05, 7, 7), profile(0, 7, 8), 1 / 7)?.part).toBeCloseTo(0.05, 2);
});

test('the own ripple of a side over less than its way is no new one, another ripple is', () => {
  const shape = (part: number, cycles: number, phase: number) => (x: number) =>
    5 * (1 + part * Math.sin(2 * Math.PI * cycles * x + phase));
  const profileBy = (amps: (x: number) => number, from: number, to: number) =>
    Array.from({ length: BINS }, (_, bin) => amps(from + ((bin + 0.5) / BINS) * (to - from)));
  const [own, other] = [shape(0.1, 8, 1), shape(0.15, 5, 0)];
  const usual = profileBy(own, 0, 1);
  for (const length of [0.95, 0.9, 0.85]) {
    for (const inner of [0, 1 - length]) {
      const short = profileBy(own, inner, inner + length);
      expect(swingOf(short, usual, null)).not.toBeNull();
      expect(isOfShortWay(short, usual, null, 0.8)).toBe(true);
      expect(isOfShortWay(short, usual, null, 1)).toBe(false);
    }
  }
  const both = profileBy((x) => own(x) + other(x) - 5, 0, 1);
  expect(swingOf(both, usual, null)).not.toBeNull();
  expect(isOfShortWay(both, usual, null, 0.8)).toBe(false);
});

test('three of the latest four strokes must share it', () => {
  const swing = { cycles: 7, part: 0.2 };
  expect(sharedSwing([swing, null, swing, { cycles: 7.3, part: 0.2 }])?.strokes).toBe(3);
  expect(sharedSwing([swing, { cycles: 3, part: 0.2 }, null, swing])).toBeNull();
});

test('a profile tells its spread, slope, bulge and ripple', () => {
  const straight = Array.from({ length: BINS }, (_, bin) => 4 + (2 * (bin + 0.5)) / BINS);
  const shape = profileShape(straight);
  expect(shape?.spreadAmps).toBeCloseTo(1.6, 1);
  expect(shape?.slope).toBeCloseTo(4 / 3 / 5, 2);
  expect(shape?.bulge).toBeCloseTo(0, 2);
  expect(profileShape(profile(0.1, 8, 7))?.rippleAmps).toBeGreaterThan(0.4);
  expect(profileShape(profile(0.1, 8, 7).map((amps, bin) => (bin < 40 ? null : amps)))).toBeNull();
});
