import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { evenTimes, ONE_MOTOR, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

const RATE_HZ = 20;
const NOISE_AMPS = 0.12;

/** A controller that starts softly: half of the current for a while, then all of it; a stall at the end. */
function softly(restS: number, seed: number) {
  const random = new Random(seed);
  const levelAt = (afterS: number) => {
    if (afterS < 0 || afterS >= 19) return 0;
    if (afterS < 0.2) return 1.8;
    if (afterS < 0.7) return 1.8 + 6.8 * (afterS - 0.2);
    return afterS < 18 ? 4 : 15;
  };
  const timesS = evenTimes(RATE_HZ, restS + 19);
  const amps = timesS.map((timeS) => levelAt(timeS - restS) + random.normal(0, NOISE_AMPS));
  return measureStroke(traceOf([{ side: 'main', timesS, amps }]), ONE_MOTOR);
}

test('the low level that a soft start begins with is neither rest nor noise, however short the rest before it', () => {
  for (const restS of [0.2, 0.3, 0.5, 1]) {
    for (let seed = 1; seed <= 20; seed++) {
      const analysis = softly(restS, seed);
      const { offsetAmps, noiseAmps = 9, runningAmps } = done(analysis).sides.main;
      expect(Math.abs(offsetAmps ?? 0)).toBeLessThan(0.2);
      expect(noiseAmps).toBeLessThan(2 * NOISE_AMPS);
      expect(Math.abs(runningAmps - 4)).toBeLessThan(0.15);
      expect(done(analysis).doubts).toEqual([]);
    }
  }
});

test('the first samples of a start that rises slowly, in a record without any rest before it, are no rest', () => {
  const starts = [
    [7, 1.5, 0.5, 4.75, 16, 21],
    [7.75, 1, 1.25, 9.5, 19, 23.25],
    [7.25, 1.75, 0, 1.25, 12.25, 18.5],
  ];
  for (const start of starts) {
    const running = Array.from({ length: 280 }, (_, i) => 18.5 + 0.25 * (i % 2));
    const amps = Float64Array.of(...start, ...running, 63, 100, 113, 114.25, 114.25, 114.25, 53.25, 0.25);
    const side = { side: 'main', timesS: amps.map((_, i) => i / 10), amps };
    const analysis = done(measureStroke(traceOf([side]), ONE_MOTOR));
    expect([analysis.sides.main.offsetAmps, analysis.doubts]).toEqual([null, []]);
  }
});
