import { expect, test } from 'vitest';
import type { LiveSamples } from '../../../dashboards/src/api/types.ts';
import { takeSamples } from '../../../dashboards/src/live/runningStroke.ts';

const piece = (startsAtS: number, amps: number[]): LiveSamples => ({
  type: 'samples',
  roomId: '018f4d5e-0000-7000-8000-000000000001',
  strokeId: '018f4d5e-0000-7000-8000-000000000002',
  key: 'board-7-000131',
  seq: Math.round(10 * startsAtS),
  direction: 'extend',
  startedAt: '2026-05-02T15:00:00Z',
  side: 'front',
  rateHz: 10,
  startsAtS,
  amps,
});

test('pieces of a side follow one another, and one that comes again adds nothing', () => {
  const told = [piece(0, [1, 2]), piece(0.2, [3]), piece(0, [1, 2]), piece(0.2, [3]), piece(0.3, [4])];
  const [{ lines }] = told.reduce(takeSamples, [] as ReturnType<typeof takeSamples>);
  expect(lines).toHaveLength(1);
  expect(lines[0].values).toEqual([1, 2, 3, 4]);
  expect(lines[0].seconds.map((second) => Math.round(10 * second))).toEqual([0, 1, 2, 3]);
});
