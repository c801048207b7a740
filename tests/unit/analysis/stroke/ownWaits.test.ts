import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { ROOM, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

/** The front side as told, beside a rear one that goes on all the while. */
function frontOf(changes: Partial<Shape>) {
  const analysis = measureStroke(
    traceOf([sideOf('front', changes), sideOf('rear', { rateHz: changes.rateHz })]),
    ROOM,
  );
  return done(analysis).sides.front;
}

test.each([10, 25, 50, 200])(
  'at %i samples a second a side that its controller lets wait starts anew, and that is no jolt',
  (rateHz) => {
    const pauses = [
      { atS: 6, forS: 0.3 },
      { atS: 13, forS: 0.4 },
    ];
    for (const noiseAmps of [0, 0.15]) {
      const front = frontOf({ rateHz, noiseAmps, pauses });
      expect(front.spikes).toEqual([]);
      expect(Math.abs(front.runningAmps - 8)).toBeLessThan(0.1);
      expect(front.roughness).toBeLessThan(0.2);
      expect(front.phases.pauses).toEqual([]);
    }
  },
);

test.each([25, 50, 200])(
  'at %i samples a second a motor that was let wait for less than it takes to slow down starts low, and that is no jolt either',
  (rateHz) => {
    const pauses = [6, 9.5, 13].map((atS) => ({ atS, forS: 0.08 }));
    for (const noiseAmps of [0, 0.1]) {
      const front = frontOf({ rateHz, noiseAmps, pauses, inrushAmps: 10, inrushTauS: 0.2 });
      expect(front.spikes).toEqual([]);
      expect(front.roughness).toBeLessThan(0.2);
      expect(front.phases.pauses).toEqual([]);
    }
  },
);

test('a gear that slips leaves its motor the current without load, and its jolt as it catches is one', () => {
  const bumps = [
    { atS: 9.8, widthS: 0.2, amps: -6.5 },
    { atS: 10.1, widthS: 0.15, amps: 12 },
  ];
  const { spikes } = frontOf({ bumps });
  expect(spikes).toHaveLength(1);
  expect(Math.abs(spikes[0].position - 0.5)).toBeLessThan(0.02);
});

test.each([10, 25])(
  'a wait of one sample of a logger of %i a second, which holds a little of what was drawn before, is one',
  (rateHz) => {
    const bumps = [
      { atS: 10, widthS: 0.02, amps: -7.2 },
      { atS: 10 + 1 / rateHz, widthS: 0.6 / rateHz, amps: 6 },
    ];
    expect(frontOf({ rateHz, bumps }).spikes).toEqual([]);
    // What a motor draws without load is more.
    const slipped = [{ ...bumps[0], amps: -6.4 }, bumps[1]];
    expect(frontOf({ rateHz, bumps: slipped }).spikes).toHaveLength(1);
  },
);

test('a jolt that no rest goes before is one', () => {
  expect(frontOf({ bumps: [{ atS: 10, widthS: 0.15, amps: 12 }] }).spikes).toHaveLength(1);
});

test.each([0.3, 0.8, 2])(
  'after a pause of the whole room a side that starts anew %f s after the other has not jolted',
  (laterS) => {
    const slowStart = { inrushTauS: 0.4, inrushAmps: 24 };
    const front = sideOf('front', { ...slowStart, pauses: [{ atS: 10, forS: 2 + laterS }] });
    const rear = sideOf('rear', { ...slowStart, pauses: [{ atS: 10, forS: 2 }] });
    const { sides } = done(measureStroke(traceOf([front, rear]), ROOM));
    expect([sides.front.spikes, sides.rear.spikes]).toEqual([[], []]);
    expect(Math.abs(sides.front.runningAmps - 8)).toBeLessThan(0.2);
  },
);

test.each([20, 50, 200])(
  'at %i samples a second what an idling side draws between the stops of its controller is told along the way',
  (rateHz) => {
    const pauses = Array.from({ length: 33 }, (_, stop) => ({ atS: 1 + 0.55 * stop, forS: 0.2 }));
    const front = frontOf({ rateHz, noiseAmps: 0.05, runningAmps: 2.5, inrushAmps: 16, pauses });
    const known = front.profile.filter((amps) => amps !== null);
    expect(known.length).toBeGreaterThan(front.profile.length / 2);
    expect(Math.max(...known)).toBeLessThan(3.2);
    expect(Math.abs(front.runningAmps - 2.5)).toBeLessThan(0.3);
    expect(front.spikes).toEqual([]);
  },
);
