import { expect, test } from 'vitest';
import { supplyAtStop } from '../../../../analysis/stroke/supplyAtStop.ts';
import { evenTimes } from '../support/handMade.ts';
import { measureShape } from '../support/measured.ts';

/** 12.8 V at rest, 12.4 V while it runs, and 11 V while it stalls from 20 s to 20.6 s. */
const supplyAt = (rateHz: number) => {
  const timesS = evenTimes(rateHz, 22);
  return { timesS, volts: timesS.map((s) => (s < 1 || s > 20.6 ? 12.8 : s < 20 ? 12.4 : 11)) };
};
const STALL = { endStopStartS: 20, endS: 20.6 };

test.each([
  { rateHz: 5, volts: 11 },
  { rateHz: 10, volts: 11 },
  { rateHz: 100, volts: 11 },
  { rateHz: 2, volts: null },
])('of $rateHz readings a second those of the stall count', ({ rateHz, volts }) => {
  expect(supplyAtStop(supplyAt(rateHz), STALL)).toBe(volts);
});

test('there is none without a stop or a supply', () => {
  expect(supplyAtStop(supplyAt(10), { ...STALL, endStopStartS: null })).toBeNull();
  expect(supplyAtStop(null, STALL)).toBeNull();
});

test('a measured side has that of its own stall', () => {
  const plain = measureShape();
  const { endStopStartS, endS } = plain.phases;
  if (endStopStartS === null) throw new Error('It comes to a stop.');
  expect(plain.endStopVolts).toBeUndefined();
  const timesS = evenTimes(20, endS + 1);
  const volts = timesS.map((s) => (s < endStopStartS || s > endS ? 12.4 : 11.2));
  expect(measureShape({}, { supply: { timesS, volts } }).endStopVolts).toBe(11.2);
});
