import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { ROOM, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

/** Sixteen seconds of running, and nothing of what comes before and after it: a shape without start and stop. */
const TRIMMED: Partial<Shape> = {
  idleBeforeS: 0,
  idleAfterS: 0,
  movingS: 16,
  inrushAmps: 8,
  stopAmps: null,
  noiseAmps: 0.1,
};

test('a side that reads one level throughout while the other was seen to stand is no motor', () => {
  const front = { idleBeforeS: 1, idleAfterS: 1, movingS: 14, stopAmps: null };
  const trace = traceOf([
    sideOf('front', { ...front, noiseAmps: 0.1, inrushTauS: 0.3 }),
    sideOf('rear', { ...TRIMMED, runningAmps: 6, inrushAmps: 6, seed: 2 }),
  ]);
  const { sides, doubts, lagS, share } = done(measureStroke(trace, ROOM));
  expect(Object.keys(sides)).toEqual(['front']);
  expect(doubts).toMatchObject([{ side: 'rear', doubt: 'flat' }]);
  expect([lagS, share]).toEqual([null, null]);
});

test('where the record shows no start of either side, one level is that of an even travel', () => {
  const trace = traceOf([
    sideOf('front', { ...TRIMMED, movingS: 15.5, stopAmps: 38, stopS: 0.5 }),
    sideOf('rear', { ...TRIMMED, seed: 2 }),
  ]);
  const { sides, doubts } = done(measureStroke(trace, ROOM));
  expect(Object.keys(sides)).toEqual(['front', 'rear']);
  expect(doubts).toEqual([]);
});

test('where the record begins as the motors do, one level may be that of a motor that hardly turns', () => {
  const trace = traceOf([
    sideOf('front', {
      idleBeforeS: 0,
      idleAfterS: 0,
      movingS: 15.5,
      stopS: 0.5,
      noiseAmps: 0.1,
      inrushTauS: 0.3,
    }),
    sideOf('rear', { ...TRIMMED, runningAmps: 31, inrushAmps: 32, seed: 2 }),
  ]);
  expect(Object.keys(done(measureStroke(trace, ROOM)).sides)).toEqual(['front', 'rear']);
});
