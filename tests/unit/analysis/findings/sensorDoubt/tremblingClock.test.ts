import { expect, test } from 'vitest';
import { measureStroke } from '../../../../../analysis/measureStroke.ts';
import { Random } from '../../../../../server/demo/simulator/random.ts';
import { evenTimes, lastingS, ONE_MOTOR, PLAIN, sideOf, traceOf } from '../../support/handMade.ts';
import { done } from '../../support/measured.ts';

const STEP_S = 1 / PLAIN.rateHz;
const EVEN = evenTimes(PLAIN.rateHz, lastingS(PLAIN));

/** The usual stroke, its samples taken at even times and dated by the logger's own clock. */
function datedBy(clock: (timeS: number, index: number) => number) {
  const timesS = EVEN.map(clock);
  for (let i = 1; i < timesS.length; i++) timesS[i] = Math.max(timesS[i], timesS[i - 1] + 1e-6);
  return done(measureStroke(traceOf([{ ...sideOf('main', {}, EVEN), timesS }]), ONE_MOTOR));
}

test('a clock that trembles by as much as its step crowds many samples, and is as good as any', () => {
  const random = new Random(4);
  const { doubts, sides } = datedBy((timeS) => timeS + random.normal(0, 0.7 * STEP_S));
  expect(doubts).toEqual([]);
  expect(Math.abs(sides.main.runningAmps - PLAIN.runningAmps)).toBeLessThan(0.05);
});

test('a clock that stands still while the sensor goes on is in doubt', () => {
  const { doubts } = datedBy((timeS) => (timeS < 8 ? timeS : timeS < 8.4 ? 8 : timeS - 0.4));
  expect(doubts).toMatchObject([{ doubt: 'clock' }]);
});
