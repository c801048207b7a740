import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { briefWaits } from '../../../../analysis/stroke/phases/briefWaits.ts';
import { ROOM, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

const STEP_S = 0.04;
/** A wait of 0.06 s that began within a sample and ended within the next, and the new start: as much more as was lacking. */
const WAIT = [2.4, 1.6, 13, 11.4, 9.8, 9, 8.4, 8.2];

/** Samples of a side that draws 8 A but for these, 0.8 s after the first. */
function drawing(...changes: readonly number[][]): Float64Array {
  const amps = new Float64Array(60).fill(8);
  changes.forEach((change, i) => {
    amps.set(change, 20 + 10 * i);
  });
  return amps;
}

const waitsOf = (amps: Float64Array, stepS = STEP_S) =>
  briefWaits({ timesS: amps.map((_, i) => i * stepS), stepS, amps, noiseAmps: 0.05 }, 0, amps.length).map(
    ({ fromS, toS }) => [Math.round(fromS / stepS), Math.round(toS / stepS)],
  );

test('a wait that falls between two samples is told by the charge that the new start gives back', () => {
  expect(waitsOf(drawing(WAIT))).toEqual([[20, 22]]);
  expect(waitsOf(drawing([6, 1.5, 12, 10.4, 9.2, 8.5, 8.2]))).toEqual([[20, 22]]);
  expect(waitsOf(drawing([4.5, 4, 9, 12.5, 10, 9, 8.4]))).toEqual([[20, 22]]);
  expect(waitsOf(drawing(WAIT, WAIT))).toEqual([
    [20, 22],
    [30, 32],
  ]);
  expect(waitsOf(drawing([1.2, 9.5, 1.3, 10, 1.2, 13, 12, 10.5, 9, 8.5]))).toEqual([[20, 25]]);
});

test('a jolt that asks for more than was lacking, one that rises, and a load that was let go for a moment are none', () => {
  expect(waitsOf(drawing([2.4, 1.6, 24, 20, 16, 12, 9, 8.4]))).toEqual([]);
  expect(waitsOf(drawing([2.4, 1.6, 9, 10, 12, 10, 9, 8]))).toEqual([]);
  expect(waitsOf(drawing([2.4, 1.6]))).toEqual([]);
  expect(waitsOf(drawing([12, 11, 9.5, 8.5]))).toEqual([]);
  expect(waitsOf(drawing([2.4, 1.6, 1.6, 1.6, 1.6, 13, 11.4, 9.8, 9]))).toEqual([]);
});

test('a logger that is quick enough sees a wait itself', () => {
  expect(waitsOf(drawing(WAIT), 0.02)).toEqual([]);
});

test('the new starts after such waits are no jolts of the load', () => {
  const front = sideOf('front', { rateHz: 1 / STEP_S });
  const waited = front.amps.slice();
  for (const at of [6, 9.5, 13, 16]) waited.set(WAIT, Math.round(at / STEP_S));
  const { sides } = done(measureStroke(traceOf([{ ...front, amps: waited }, sideOf('rear', {})]), ROOM));
  expect(sides.front.spikes).toEqual([]);
});
