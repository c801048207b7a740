import { expect, test } from 'vitest';
import { inSinglePrecision } from '../../../server/work/judging/inSinglePrecision.ts';

test('what single precision cannot hold becomes nothing where it is next to nothing, and no number where it is too large', () => {
  const sent = [null, 0, 8.5, -8.5, 1e-300, -1e-300, 1e300, Number.NaN, Number.POSITIVE_INFINITY];
  expect(sent.map(inSinglePrecision)).toEqual([null, 0, 8.5, -8.5, 0, 0, null, null, null]);
});
