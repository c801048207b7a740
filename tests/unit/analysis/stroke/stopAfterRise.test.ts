import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { ONE_MOTOR, PLAIN, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

const SEEDS = Array.from({ length: 20 }, (_, index) => index + 1);

/** What is read of a motor that works harder, seconds before its end already, by this part of its running current. */
function harderAtEnd(part: number, shape: Partial<Shape>) {
  const { movingS, runningAmps } = PLAIN;
  const atEnd = { atS: movingS, widthS: 5, amps: part * runningAmps };
  const { sides } = done(
    measureStroke(traceOf([sideOf('main', { ...PLAIN, ...shape, bumps: [atEnd] })]), ONE_MOTOR),
  );
  return { ...sides.main, stoppedS: (sides.main.phases.endStopStartS ?? 0) - PLAIN.idleBeforeS };
}

test.each([
  { part: 0.35, stopAmps: 14.4, noiseAmps: 0.1, rateHz: 25 },
  { part: 0.4, stopAmps: 15.2, noiseAmps: 0.3, rateHz: 50 },
  { part: 0.47, stopAmps: 16, noiseAmps: 0.1, rateHz: 10 },
])(
  'a stop is where the current leaps, however much it rose on the last of the way: $part',
  ({ part, ...shape }) => {
    for (const seed of SEEDS) {
      const { endStopAmps, stoppedS } = harderAtEnd(part, { ...shape, seed });
      expect(Math.abs((endStopAmps ?? 0) - shape.stopAmps)).toBeLessThan(0.5);
      expect(Math.abs(stoppedS - PLAIN.movingS)).toBeLessThan(0.2);
    }
  },
);

test('a motor that works harder and harder until a limit switch lets it go comes to no stop', () => {
  for (const seed of SEEDS)
    expect(harderAtEnd(0.5, { stopAmps: null, noiseAmps: 0.3, seed }).endStopAmps).toBeNull();
});
