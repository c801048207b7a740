import { expect, test } from 'vitest';
import {
  H_SIGMAS,
  K_SIGMAS,
  LEAST_RUN,
  RUN_LENGTH_STROKES,
} from '../../../../analysis/findings/charts/chartDesign.ts';
import { chartStep } from '../../../../analysis/findings/charts/chartStep.ts';
import { cusumRunLength, studentObservations } from '../../../../analysis/statistics/runLength.ts';

const CHARTS = 6;
const STROKES_A_YEAR = 60;

test('the decision interval is the published one for its run length', () => {
  // R package spc 0.6.7, xcusum.crit(k = 1, L0 = 50000), one-sided.
  expect(H_SIGMAS).toBeCloseTo(4.6185518, 5);
  expect(cusumRunLength({ k: K_SIGMAS, h: H_SIGMAS }) / RUN_LENGTH_STROKES).toBeCloseTo(1, 6);
});

test('six charts together stay within one false warning in 20 room-years, with estimated spread too', () => {
  const perYear = (runLength: number) => (CHARTS * STROKES_A_YEAR) / runLength;
  const known = cusumRunLength({ k: K_SIGMAS, h: H_SIGMAS });
  expect(perYear(known)).toBeLessThan(0.05 / 6);
  const estimated = cusumRunLength({ k: K_SIGMAS, h: H_SIGMAS, observations: studentObservations(20) });
  expect(perYear(estimated)).toBeLessThan(0.05);
});

test('without the cap a step of two standard deviations takes as long as published', () => {
  // The same case of the same package: average run length at a shift of 2 k.
  expect(cusumRunLength({ k: K_SIGMAS, h: H_SIGMAS }, 2 * K_SIGMAS)).toBeCloseTo(5.365657, 4);
});

test('however large a rise is, only its third stroke calls it', () => {
  const called: boolean[] = [];
  let [sum, run] = [0, 0];
  for (let stroke = 1; stroke <= 4; stroke++) {
    const rise = Math.min(100, K_SIGMAS + H_SIGMAS / 2);
    [sum, run] = chartStep(sum, run, rise, { k: K_SIGMAS, h: H_SIGMAS });
    called.push(sum > H_SIGMAS && run >= LEAST_RUN);
  }
  expect(called).toEqual([false, false, true, true]);
});
