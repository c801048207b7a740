import fc from 'fast-check';
import { expect, test } from 'vitest';
import { differenceOfRank } from '../../../analysis/statistics/differenceOfRank.ts';

const values = fc.oneof(
  fc.array(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }), {
    minLength: 1,
    maxLength: 30,
  }),
  // Many equal ones, and some about nought.
  fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 1, maxLength: 30 }),
  fc.array(fc.constantFrom(0, 5e-324, -1e-300, 1e-12, 8.2, 8.3), { minLength: 1, maxLength: 30 }),
);
const ascending = (list: readonly number[]) => Float64Array.from(list).sort();

test('is the one that stands there when all differences are put in order', () => {
  fc.assert(
    fc.property(values, values, fc.nat(), (first, second, nth) => {
      const [x, y] = [ascending(first), ascending(second)];
      const all = Float64Array.from(Array.from(x).flatMap((a) => Array.from(y, (b) => a - b))).sort();
      const rank = 1 + (nth % all.length);
      expect(differenceOfRank(x, y, rank) - all[rank - 1]).toBe(0);
    }),
    { numRuns: 2000 },
  );
});

test('of a rank that none has is refused', () => {
  const [x, y] = [Float64Array.of(1, 2), Float64Array.of(3)];
  for (const rank of [0, 3, Number.NaN]) expect(() => differenceOfRank(x, y, rank)).toThrow(RangeError);
});
