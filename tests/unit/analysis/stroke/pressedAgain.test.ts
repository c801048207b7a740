import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import type { SideTrace } from '../../../../analysis/trace.ts';
import { ONE_MOTOR, PLAIN, ROOM, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

/** One record of a stroke and what was driven after it, each with its own idle time. */
function after(stroke: SideTrace, press: SideTrace): SideTrace {
  const beginsS = stroke.timesS[stroke.timesS.length - 1] + stroke.timesS[1] - stroke.timesS[0];
  return {
    side: stroke.side,
    timesS: Float64Array.of(...stroke.timesS, ...press.timesS.map((timeS) => beginsS + timeS)),
    amps: Float64Array.of(...stroke.amps, ...press.amps),
  };
}

const PRESS: Partial<Shape> = { idleBeforeS: 0.1, movingS: 0.2, stopS: 0.5, stopAmps: 37, idleAfterS: 0.5 };

function pressedAgain(side: string, stroke: Partial<Shape>, press: Partial<Shape> = {}): SideTrace {
  return after(sideOf(side, stroke), sideOf(side, { ...stroke, ...PRESS, ...press }));
}

test.each([10, 25, 100])(
  'at %i samples a second a stroke is over when its motor stalled, however often it is pressed again',
  (rateHz) => {
    const plain = done(measureStroke(traceOf([sideOf('main', { rateHz, noiseAmps: 0.1 })]), ONE_MOTOR));
    const once = pressedAgain('main', { rateHz, noiseAmps: 0.1 });
    const twice = after(once, sideOf('main', { ...PRESS, rateHz, noiseAmps: 0.1, seed: 2 }));
    for (const side of [once, twice]) {
      const { main } = done(measureStroke(traceOf([side]), ONE_MOTOR)).sides;
      expect(main.phases).toEqual(plain.sides.main.phases);
      expect(main.endStopAmps).toBeCloseTo(PLAIN.stopAmps ?? Number.NaN, 0);
      expect(main.spikes).toEqual([]);
    }
  },
);

test('one whose other side had met its stop sooner, and was let go sooner, is over all the same', () => {
  const front = pressedAgain('front', {});
  const rear = after(sideOf('rear', { movingS: 20.4, idleAfterS: 0.6 }), sideOf('rear', PRESS));
  const { sides } = done(measureStroke(traceOf([front, rear]), ROOM));
  for (const { phases, endStopAmps } of [sides.front, sides.rear]) {
    expect(phases.pauses).toEqual([]);
    expect(endStopAmps).toBeGreaterThan(36);
  }
  expect(sides.rear.phases.endS).toBeGreaterThan(sides.front.phases.endS);
});

test('a start over slack rope, which draws next to nothing for a while, is no stall', () => {
  const slack = { movingS: 0.5, runningAmps: 0.9, inrushAmps: 60, inrushTauS: 0.04, stopAmps: null };
  const start = sideOf('main', { ...slack, idleAfterS: 0.4, noiseAmps: 0.1 });
  const way = sideOf('main', { idleBeforeS: 0, inrushAmps: 8, noiseAmps: 0.1 });
  const { main } = done(measureStroke(traceOf([after(start, way)]), ONE_MOTOR)).sides;
  expect(main.durationS).toBeGreaterThan(19);
});

test('one whose room was let go short of its stop goes on, and meets it then', () => {
  const side = pressedAgain('main', { stopAmps: null }, { movingS: 1.5 });
  const { main } = done(measureStroke(traceOf([side]), ONE_MOTOR)).sides;
  expect(main.phases.pauses).toHaveLength(1);
  expect(main.phases.endStopStartS).toBeGreaterThan(PLAIN.idleBeforeS + PLAIN.movingS + PLAIN.idleAfterS);
});

test('one that stalled at an obstacle and then goes on was not over', () => {
  const side = after(sideOf('main', { movingS: 8 }), sideOf('main', { movingS: 12 }));
  const { main } = done(measureStroke(traceOf([side]), ONE_MOTOR)).sides;
  expect(main.durationS).toBeGreaterThan(19);
  expect(main.phases.pauses).toHaveLength(1);
});

test('a side that still moves when it is pressed again keeps the other in the stroke', () => {
  const front = pressedAgain('front', {});
  const rear = after(sideOf('rear', { stopAmps: null, movingS: 20.5 }), sideOf('rear', { movingS: 1 }));
  const { sides } = done(measureStroke(traceOf([front, rear]), ROOM));
  expect(sides.front.phases.pauses).toHaveLength(1);
  expect(sides.rear.phases.pauses).toHaveLength(1);
});
