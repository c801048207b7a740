import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { ONE_MOTOR, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

/** A record at ten samples a second from the start to the stop, with a peak once per turn. */
const PEAKS: Partial<Shape> = {
  rateHz: 10,
  idleBeforeS: 0,
  idleAfterS: 0,
  movingS: 36,
  runningAmps: 10,
  inrushAmps: 30,
  stopAmps: null,
  noiseAmps: 0.05,
  bumps: Array.from({ length: 8 }, (_, turn) => ({ atS: 4 + 4 * turn, widthS: 0.6, amps: 12 })),
};

test('what a motor draws after the last of many peaks is no rest, where it draws as much between them', () => {
  const { doubts, sides } = done(measureStroke(traceOf([sideOf('main', PEAKS)]), ONE_MOTOR));
  expect(doubts).toEqual([]);
  expect(sides.main.offsetAmps).toBeNull();
  expect(sides.main.runningAmps).toBeCloseTo(10, 0);
});

test('a rest with a high zero is one, though the stroke has peaks', () => {
  const rested: Partial<Shape> = { ...PEAKS, idleBeforeS: 2, idleAfterS: 3, offsetAmps: 4 };
  const { sides } = done(measureStroke(traceOf([sideOf('main', rested)]), ONE_MOTOR));
  expect(sides.main.offsetAmps).toBeCloseTo(4, 0);
  expect(sides.main.runningAmps).toBeCloseTo(10, 0);
});
