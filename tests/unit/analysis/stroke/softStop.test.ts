import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { evenTimes, ONE_MOTOR, PLAIN, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

/** Runs for 20 s, then draws more and more, up to `topAmps`, until it is let go after 5 s. */
function givingWay(topAmps: number, tauS: number) {
  const levelAt = (movedS: number) => {
    if (movedS < 0 || movedS >= 25) return 0;
    if (movedS < 20) return 8 + 32 * Math.exp(-movedS / 0.06);
    return topAmps - (topAmps - 8) * Math.exp(-(movedS - 20) / tauS);
  };
  const timesS = evenTimes(PLAIN.rateHz, 27);
  const amps = timesS.map((timeS) => levelAt(timeS - 1));
  return done(measureStroke(traceOf([{ side: 'main', timesS, amps }]), ONE_MOTOR)).sides.main;
}

test('rope or a seal that gives way for seconds before the motor stands is the end of the travel, and no part of it', () => {
  const { endStopAmps, durationS, profile } = givingWay(40, 1.5);
  expect(endStopAmps ?? 0).toBeGreaterThan(36);
  expect(durationS).toBeLessThan(22);
  expect(Math.max(...profile.map((amps) => amps ?? 0))).toBeLessThan(24);
});

test('a room that works a little harder for seconds at its end has come to no stall', () => {
  expect(givingWay(16, 1.5).endStopAmps).toBeNull();
});
