import { expect, test } from 'vitest';
import type { Residual } from '../../../../../analysis/baseline/judge.ts';
import { coldAllowance, unseenWeather } from '../../../../../analysis/findings/unseen.ts';
import { contextOf } from '../../../../../analysis/room/context.ts';
import { judgeStroke } from '../../../../../analysis/room/judgeStroke.ts';
import { Random } from '../../../../../server/demo/simulator/random.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

/** What a room is judged by of which nobody records the temperature and whose stalls scatter by so much, natural logarithm. */
function contextWith(spread: number) {
  const random = new Random(5);
  const events = strokeEvents(60, ONE_MOTOR, 5, () => ({ ambientC: null })).map((event) =>
    changed(event, { all: () => ({ endStopAmps: 30 * Math.exp(random.normal(0, spread)) }) }),
  );
  const last = events[events.length - 1];
  const { state } = foldAll(ONE_MOTOR, events);
  const { analysis } = last;
  if (analysis.status !== 'done') throw new TypeError('a stroke that can be used is expected here');
  return contextOf(state, last, analysis, judgeStroke(state, last, analysis));
}

/** What weather may do besides, as a part of what it may do where no stall tells of it. */
function leftBy(spread: number): number {
  const context = contextWith(spread);
  const cold = coldAllowance(context);
  const judged = context.residual('main', 'runningAmps');
  if (cold === null || judged === null) throw new TypeError('a stall that tells of cold is expected here');
  return unseenWeather(judged, { ...cold, allowed: 0 }) / judged.unrecorded;
}

test('a stall as ever, of a supply that nobody read at the end, leaves most of the weather open: a cold battery hides it', () => {
  expect(leftBy(0.02)).toBeGreaterThan(0.7);
  expect(leftBy(0.02)).toBeLessThan(1);
});

test('the worse a stall is read, the less it tells of the weather', () => {
  expect(leftBy(0.03)).toBeGreaterThan(leftBy(0.02));
});

test('what is known beforehand and what the stall reads count by their variances', () => {
  // Only `unrecorded` is asked for.
  const judged = { unrecorded: 0.03 } as Residual;
  expect(unseenWeather(judged, { allowed: 0, error: 0.04 })).toBeCloseTo(0.024, 12);
  expect(unseenWeather(judged, null)).toBe(0.03);
});
