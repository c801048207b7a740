import { expect, test } from 'vitest';
import { beginChannel } from '../../../../analysis/baseline/channel.ts';
import { BY_SEASON, type Conditions } from '../../../../analysis/baseline/conditions.ts';
import { PRIORS, UNSEASONABLE_C } from '../../../../analysis/baseline/priors.ts';
import { unrecordedSpread } from '../../../../analysis/baseline/unrecordedSpread.ts';
import { DAY_MS } from '../../../../analysis/history.ts';
import { MEASURE_INDEX } from '../../../../analysis/measures.ts';

/** What weather that nobody recorded does to a stroke a month after its normal, where a degree of the season does so much. */
function spreadWith(perDegree: number): number {
  const channel = beginChannel('main', 'extend');
  channel.fits[MEASURE_INDEX.runningAmps] = {
    coefficients: [2, 0, perDegree],
    covariance: Array.from({ length: 9 }, () => 0),
    scale: 0.02,
    degreesOfFreedom: 12,
  };
  const conditions: Conditions = [0, null, -5, null];
  return unrecordedSpread(channel, { measure: 'runningAmps', conditions, atMs: 30 * DAY_MS }, BY_SEASON);
}

const { mean, spread } = PRIORS.runningAmps.perDegree;
const AS_A_RULE = UNSEASONABLE_C * Math.hypot(mean, spread);

test('a room that goes with the season more than others do follows a cold week as much', () => {
  expect(spreadWith(-0.012)).toBeCloseTo(UNSEASONABLE_C * 0.012, 12);
  expect(spreadWith(0.012)).toBeCloseTo(UNSEASONABLE_C * 0.012, 12);
});

test('one that hardly does is allowed what any room is', () => {
  expect(spreadWith(-0.001)).toBeCloseTo(AS_A_RULE, 12);
});
