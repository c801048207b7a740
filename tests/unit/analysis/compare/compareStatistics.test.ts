import { expect, test } from 'vitest';
import { leavesZero, levelsOfRoom } from '../../../../analysis/compare/levelsOfRoom.ts';
import { permutedLimit } from '../../../../analysis/compare/permutedLimit.ts';
import { shiftInterval } from '../../../../analysis/compare/shiftInterval.ts';
import { strokeTable } from '../../../../analysis/compare/spanDifferences.ts';
import { USUAL_CORRELATION } from '../../../../analysis/compare/strokeCorrelation.ts';
import { dependenceFactors, strokeDependence } from '../../../../analysis/compare/strokeDependence.ts';
import { moderatedVariance, squaresWithin } from '../../../../analysis/statistics/moderatedVariance.ts';

const NOTHING_KNOWN = [{ squares: 0, degreesOfFreedom: 0 }];
const YEAR_MS = 365 * 86_400_000;

test('a moderated variance is the mean of both, weighted by their degrees of freedom', () => {
  // By hand: (4 x 0.05 + 2 x 0.2) / (4 + 2).
  const own = squaresWithin([1, 1.2], [3.1, 3.7]);
  expect(own.squares).toBeCloseTo(0.02 + 0.18, 12);
  expect(own.degreesOfFreedom).toBe(2);
  const prior = { variance: 0.05, degreesOfFreedom: 4 };
  const { variance, degreesOfFreedom } = moderatedVariance({ squares: 0.4, degreesOfFreedom: 2 }, prior);
  expect(variance).toBeCloseTo(0.1, 12);
  expect(degreesOfFreedom).toBe(6);
  expect(() =>
    moderatedVariance({ squares: 0, degreesOfFreedom: 0 }, { variance: 1, degreesOfFreedom: 0 }),
  ).toThrow(RangeError);
});

test("with two strokes a side the interval is Student's, by the spread that is given", () => {
  // t(6; 0.975) = 2.446912 (tables of Student's t), times the root of 0.1 (1/2 + 1/2).
  const values = { before: [0, 0.4], after: [1, 1.8], offsetOf: () => 0, unsure: 0 };
  const spread = { variance: 0.1, degreesOfFreedom: 6 };
  const alone = shiftInterval(values, { spread, dependence: 1 }, 0.95);
  expect(alone?.shift).toBeCloseTo(1.2, 12);
  expect((alone?.upper ?? 0) - 1.2).toBeCloseTo(2.446912 * Math.sqrt(0.1), 5);
  const alike = shiftInterval(values, { spread, dependence: 4 }, 0.95);
  expect(1.2 - (alike?.lower ?? 0)).toBeCloseTo(2 * 2.446912 * Math.sqrt(0.1), 5);
  expect(shiftInterval({ ...values, after: [] }, { spread, dependence: 1 }, 0.95)).toBeNull();
});

test('neighbouring strokes share part of their error: two a side, worked by hand', () => {
  // Long apart, correlations are 0.3, 0.15 and 0.075: the difference has 1 + 0.3 - 2 x 0.675 / 4 for 1, and the squares
  // about the means show (2 - 0.6) / 2 of the spread.
  const years = [0, 1, 2, 3].map((year) => year * YEAR_MS);
  const [factor] = dependenceFactors(years.slice(0, 2), years.slice(2), [USUAL_CORRELATION]);
  expect(factor).toBeCloseTo(0.9625 / 0.7, 9);
  expect(dependenceFactors([], years, [USUAL_CORRELATION])).toEqual([1]);
  expect(strokeDependence([1, 4], [0.75, 0.25])).toBeCloseTo(1.75, 12);
});

test('strokes of one stay before and of another after widen the interval more the closer together they were made', () => {
  const stay = (fromMs: number, gapMs: number) => [0, 1, 2].map((i) => fromMs + i * gapMs);
  const [close, loose] = [3_600_000, 5 * 86_400_000].map(
    (gapMs) => dependenceFactors(stay(0, gapMs), stay(YEAR_MS, gapMs), [USUAL_CORRELATION])[0],
  );
  expect(close).toBeGreaterThan(1.5 * loose);
  expect(loose).toBeGreaterThan(1);
});

test('the limit of a permutation test of eight strokes in one bin, worked by hand', () => {
  const table = strokeTable([1, 2, 3, 4, 5, 6, 7, 8].map((value) => [value]));
  // 5 % of 70 arrangements are 3: the largest that no more than those exceed is 4, 6, 7, 8 against 1, 2, 3, 5, which is
  // 3.5 over the root of 17.5 / 6.
  expect(permutedLimit(table, 4, NOTHING_KNOWN, 0.05)).toBeCloseTo(3.5 / Math.sqrt(17.5 / 6), 6);
  // 2.5 % are 1, and each has its mirror; three against three have 20 arrangements, and 5 % of those are 1.
  expect(permutedLimit(table, 4, NOTHING_KNOWN, 0.025)).toBeNull();
  const six = strokeTable([1, 2, 3, 4, 5, 6].map((value) => [value]));
  expect(permutedLimit(six, 3, NOTHING_KNOWN, 0.05)).toBeNull();
});

test('beside three others that stayed, a change is told by the spread where the ranks of five strokes reach too far', () => {
  const strokes = [-0.06, -0.03, 0, 0.03, 0.06];
  const spread = { spread: { variance: 0.055 ** 2, degreesOfFreedom: 20 }, dependence: 1 };
  const level = (shift: number) => ({
    values: { before: strokes, after: strokes.map((value) => value + shift), unsure: 0 },
    spread,
  });
  // All differences of such strokes span 0.12 either way; t(20; 0.995) = 2.8453 (tables) times 0.055 and the root of 2/5.
  const [fell, ...stayed] = levelsOfRoom([level(-0.11), level(0), level(0), level(0)], 0.04);
  expect(fell?.upper).toBeCloseTo(-0.11 + 2.8453 * 0.055 * Math.sqrt(0.4), 5);
  expect([fell, ...stayed].map(leavesZero)).toEqual([true, false, false, false]);
  const none = { values: { before: [], after: strokes, unsure: 0 }, spread };
  expect(levelsOfRoom([none], 0.04)).toEqual([null]);
});
