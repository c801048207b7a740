import { expect, test } from 'vitest';
import { measureShape } from '../support/measured.ts';

/** Rope that winds up: light at first, then more than the room runs with, until it breaks away. */
const WINDS_UP = [
  { atS: 0.45, widthS: 0.4, amps: -4 },
  { atS: 1.2, widthS: 0.45, amps: 4 },
];

test.each([12.5, 25, 50, 200])(
  'at %i samples a second what a room takes to break away belongs to its start, and is no jolt',
  (rateHz) => {
    const found = measureShape({ rateHz, bumps: WINDS_UP, noiseAmps: 0.1 });
    expect(found.spikes).toEqual([]);
    expect(Math.abs(found.runningAmps - 8)).toBeLessThan(0.1);
    expect(found.phases.inrushEndS - found.phases.startS).toBeGreaterThan(1);
    expect(found.phases.inrushEndS - found.phases.startS).toBeLessThan(2);
  },
);

test('so does a rise that follows while the start is still counted as one, with noise on its way up', () => {
  const level = [0.3, 0.5, 0.7, 0.9].map((atS) => ({ atS, widthS: 0.2, amps: 3 }));
  const quick = [{ atS: 0.12, widthS: 0.1, amps: -2 }, ...level];
  for (const seed of [1, 2, 3, 4, 5, 6]) {
    const shape = { rateHz: 64, inrushAmps: 14, inrushTauS: 0.04, bumps: quick, noiseAmps: 0.3, seed };
    expect(measureShape(shape).spikes, `seed ${seed}`).toEqual([]);
  }
});

test('a jolt soon after the start, once the room has settled, is one', () => {
  const [spike, ...more] = measureShape({ bumps: [{ atS: 2, widthS: 0.3, amps: 5 }], noiseAmps: 0.1 }).spikes;
  expect(more).toEqual([]);
  expect(Math.abs(spike.position - 0.1)).toBeLessThan(0.02);
});

test('a room that runs harder all along its first part has broken away at once', () => {
  const heavy = measureShape({ bumps: [{ atS: 0, widthS: 9, amps: 4 }], movingS: 30 });
  expect(heavy.phases.inrushEndS - heavy.phases.startS).toBeLessThan(1.6);
});
