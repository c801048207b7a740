import { expect, test } from 'vitest';
import type { ComparedGroup } from '../../../dashboards/src/api/types.ts';
import { profileScale } from '../../../dashboards/src/compare/profileScale.ts';

function groupOf(low: number | null, high: number | null): ComparedGroup {
  const band = { lower: [low], upper: [high] };
  const empty = { levelIsSure: false, changedBins: [], profileBefore: [], profileAfter: [], shifts: [] };
  const counted = { strokesBefore: 2, strokesAfter: 2 };
  return { side: 'front', direction: 'extend', ...counted, ...empty, bandBefore: band, bandAfter: band };
}

test.each([
  [4.1, 6.6, 4, 8],
  [3.2, 6.9, 2.5, 7.5],
  [0.2, 7.9, 0, 8],
  [15.8, 18.3, 15, 20],
  [0.4, 0.4, 0.4, 0.6],
])('currents of %f to %f A stand between %f and %f', (low, high, bottom, top) => {
  const scale = profileScale([groupOf(low, high)]);
  expect(scale.bottom).toBeLessThanOrEqual(low);
  expect(scale.top).toBeGreaterThanOrEqual(high);
  expect([scale.bottom, scale.top].map((end) => Math.round(end * 1000) / 1000)).toEqual([bottom, top]);
});

test('where nothing is known there is still a picture', () => {
  const { bottom, top } = profileScale([groupOf(null, null)]);
  expect(top).toBeGreaterThan(bottom);
});
