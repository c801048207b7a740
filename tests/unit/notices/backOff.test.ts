import { expect, test } from 'vitest';
import { backOffMs } from '../../../server/notices/backOff.ts';

const MINUTE_MS = 60_000;

test.each([
  { failures: 0, minutes: 1 },
  { failures: 1, minutes: 1 },
  { failures: 2, minutes: 4 },
  { failures: 3, minutes: 16 },
  { failures: 5, minutes: 256 },
  { failures: 6, minutes: 600 },
  // As often as it takes: a power of four that large is no number any more.
  { failures: 2000, minutes: 600 },
])('after $failures failures the next attempt is $minutes minutes away', ({ failures, minutes }) => {
  expect(backOffMs(failures)).toBe(minutes * MINUTE_MS);
});
