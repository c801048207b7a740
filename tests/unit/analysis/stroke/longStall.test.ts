import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { ONE_MOTOR, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done, measureShape } from '../support/measured.ts';

/** Whoever holds the button on after the end stalls the motor for a good part of the record. */
const HELD: Partial<Shape> = {
  rateHz: 10,
  runningAmps: 10,
  inrushAmps: 30,
  inrushTauS: 0.15,
  stopAmps: 60,
  noiseAmps: 0.1,
  movingS: 15,
};

test.each([
  { name: 'no rest before, a rest after', idleBeforeS: 0, idleAfterS: 0.5, stopS: 2.5 },
  { name: 'no rest at all', idleBeforeS: 0, idleAfterS: 0, stopS: 2.5 },
  { name: 'a stall a third as long as the way', idleBeforeS: 0, idleAfterS: 0.6, stopS: 5 },
  { name: 'a rest before', idleBeforeS: 1, idleAfterS: 0, stopS: 2.5 },
  { name: 'rests at both ends', idleBeforeS: 1, idleAfterS: 1, stopS: 4 },
])('a long stall does not make a rest of the running current: $name', (rests) => {
  for (const runningAmps of [4, 10, 18]) {
    const shape = { ...HELD, ...rests, runningAmps };
    const { sides, doubts } = done(measureStroke(traceOf([sideOf('main', shape)]), ONE_MOTOR));
    expect(Math.abs(sides.main.runningAmps - runningAmps)).toBeLessThan(0.1 * runningAmps);
    expect(Math.abs(sides.main.durationS - 15)).toBeLessThan(0.6);
    expect(doubts).toEqual([]);
  }
});

test('nor does one of a weak supply, whose start fell between two samples', () => {
  for (let seed = 1; seed <= 30; seed++) {
    const rests = { idleBeforeS: 0, idleAfterS: 0, movingS: 13.4, stopS: 2 };
    const amps = { runningAmps: 7.2, inrushAmps: 10.6, inrushTauS: 0.05, stopAmps: 20, noiseAmps: 0.5 };
    const shape = { ...HELD, ...rests, ...amps, stepAmps: 0.117, seed };
    const { sides, doubts } = done(measureStroke(traceOf([sideOf('main', shape)]), ONE_MOTOR));
    expect(Math.abs(sides.main.runningAmps - 7.2)).toBeLessThan(0.5);
    expect(Math.abs(sides.main.durationS - 13.4)).toBeLessThan(0.6);
    expect(doubts).toEqual([]);
  }
});

test('a motor that runs lightly up to its stop in a record without rest is no pause before a start', () => {
  for (const stopS of [0.2, 0.3, 0.4, 0.5, 0.6, 0.8]) {
    const rise = { bumps: [{ atS: 11, widthS: 0.3, amps: 24 }], stopAmps: 27, stopS };
    const light = { rateHz: 125, movingS: 11, runningAmps: 2.6, inrushAmps: 24, inrushTauS: 0.3 };
    const shape = { ...light, ...rise, idleBeforeS: 0, idleAfterS: 0, noiseAmps: 0.05 };
    const { sides, doubts } = done(measureStroke(traceOf([sideOf('main', shape)]), ONE_MOTOR));
    expect(sides.main.offsetAmps).toBeNull();
    expect(Math.abs(sides.main.runningAmps - 2.6)).toBeLessThan(0.1);
    expect(doubts).toEqual([]);
  }
});

test('a motor that lost its load in a record without rest was driven all along, and is no pause either', () => {
  for (const stopS of [0.3, 0.5, 0.7, 0.9]) {
    const rise = { bumps: [{ atS: 8, widthS: 0.1, amps: 40 }], stopAmps: 47, stopS, stepAmps: 0.195 };
    const idle = { rateHz: 50, movingS: 8, runningAmps: 2.7, inrushAmps: 41, inrushTauS: 0.12 };
    const shape = { ...idle, ...rise, idleBeforeS: 0, idleAfterS: 0, noiseAmps: 0.05 };
    const { sides } = done(measureStroke(traceOf([sideOf('main', shape)]), ONE_MOTOR));
    expect(Math.abs(sides.main.runningAmps - 2.7)).toBeLessThan(0.2);
    expect(Math.abs(sides.main.durationS - 8)).toBeLessThan(0.3);
  }
});

test('nor does one whose start came before the record, and whose switch was held for seconds', () => {
  for (const stopS of [1, 2, 3, 5])
    for (const idleAfterS of [0, 0.04]) {
      const late = {
        rateHz: 50,
        movingS: 18,
        runningAmps: 11.4,
        inrushAmps: 15,
        inrushTauS: 0.1,
        stopAmps: 88,
        stopS,
      };
      const seal = {
        bumps: [
          { atS: 17.9, widthS: 0.5, amps: 6 },
          { atS: 9, widthS: 4, amps: 1.5 },
        ],
      };
      const shape = { ...late, ...seal, idleBeforeS: 0, idleAfterS, noiseAmps: 0.07, stepAmps: 0.073 };
      const { sides, doubts } = done(measureStroke(traceOf([sideOf('main', shape)]), ONE_MOTOR));
      expect(Math.abs(sides.main.runningAmps - 11.6)).toBeLessThan(0.6);
      expect(Math.abs((sides.main.endStopAmps ?? 0) - 88)).toBeLessThan(1);
      expect(doubts).toEqual([]);
    }
});

test('nor is a side without load for most of a soft-started way rest, though its stall is long and high', () => {
  for (const stopS of [1, 2, 3])
    for (const idleAmps of [0.5, 1.5]) {
      const side = sideOf('main', {
        rateHz: 200,
        movingS: 28,
        runningAmps: 4.5,
        inrushAmps: 6,
        inrushTauS: 0.3,
        stopAmps: 24,
        stopS,
        noiseAmps: 0.08,
      });
      const amps = side.amps.map((read, i) => {
        const movedS = side.timesS[i] - 1;
        return movedS > 0.4 && movedS < 19 ? read - 4.5 + idleAmps : read;
      });
      const { sides } = done(measureStroke(traceOf([{ ...side, amps }]), ONE_MOTOR));
      expect(Math.abs(sides.main.offsetAmps ?? 9)).toBeLessThan(0.1);
      expect(Math.abs(sides.main.durationS - 28)).toBeLessThan(0.3);
    }
});

test('a zero that is far off is still read from the rests before and after', () => {
  const shape = { ...HELD, idleBeforeS: 2, idleAfterS: 2, stopS: 0.5, offsetAmps: 4 };
  const { sides } = done(measureStroke(traceOf([sideOf('main', shape)]), ONE_MOTOR));
  expect(Math.abs((sides.main.offsetAmps ?? 0) - 4)).toBeLessThan(0.2);
  expect(Math.abs(sides.main.runningAmps - 10)).toBeLessThan(0.5);
});

test('a motor that turns without load is read before a stall that is twenty times as high, and held for long', () => {
  const light = {
    runningAmps: 3.2,
    inrushAmps: 60,
    stopAmps: 76,
    inrushTauS: 0.1,
    noiseAmps: 0.2,
    stepAmps: 0.29,
  };
  for (let seed = 1; seed <= 20; seed++) {
    const found = measureShape({ ...light, rateHz: 12.5, movingS: 5.5, stopS: 0.9, seed });
    expect(Math.abs(found.runningAmps - 3.2)).toBeLessThan(0.3);
    expect(Math.abs(found.durationS - 5.5)).toBeLessThan(0.3);
    expect(Math.abs((found.endStopAmps ?? 0) / 76 - 1)).toBeLessThan(0.02);
  }
});

test('a short rest, then a side that runs lightly and stalls for long while the other is still on its way, is read from that rest', () => {
  for (const rateHz of [20, 50, 125]) {
    const light = {
      movingS: 22,
      runningAmps: 2.2,
      inrushAmps: 4.7,
      inrushTauS: 0.2,
      stopAmps: 17.5,
      stopS: 4.5,
    };
    const shape = { ...light, rateHz, idleBeforeS: 0.85, idleAfterS: 0, noiseAmps: 0.1, stepAmps: 0.12 };
    const { sides, doubts } = done(measureStroke(traceOf([sideOf('main', shape)]), ONE_MOTOR));
    expect(Math.abs(sides.main.offsetAmps ?? 9), `${rateHz} Hz`).toBeLessThan(0.1);
    expect(Math.abs(sides.main.runningAmps - 2.2), `${rateHz} Hz`).toBeLessThan(0.1);
    expect(doubts).toEqual([]);
  }
});

test('a rest after the stall that is too short to tell the zero by does not hide the stall', () => {
  for (const offsetAmps of [0.2, 0.25, 0.3]) {
    const rests = { idleBeforeS: 0, idleAfterS: 0.3, movingS: 9, stopS: 1.3 };
    const amps = { runningAmps: 2.6, inrushAmps: 14, inrushTauS: 0.08, stopAmps: 13.5, noiseAmps: 0.05 };
    const shape = { ...HELD, ...rests, ...amps, rateHz: 20, offsetAmps };
    const { sides } = done(measureStroke(traceOf([sideOf('main', shape)]), ONE_MOTOR));
    expect(Math.abs((sides.main.endStopAmps ?? 0) - 13.7)).toBeLessThan(0.5);
    expect(Math.abs(sides.main.durationS - 9)).toBeLessThan(0.3);
  }
});

test('a motor that begins gently without a rest, runs lightly and stalls for long is read as driven from its start', () => {
  const rateHz = 20;
  for (let seed = 1; seed <= 20; seed++) {
    const random = new Random(seed);
    const runs = 13 * rateHz;
    const amps = Float64Array.from({ length: runs + Math.round(1.6 * rateHz) }, (_, i) => {
      const drawn = i < runs ? 2.2 * (1 - Math.exp(-i / rateHz)) : 18;
      return drawn + (i === 0 ? random.uniform(0, 0.6) : 0) + random.normal(0, 0.02);
    });
    const timesS = amps.map((_, i) => i / rateHz);
    const { sides, doubts } = done(measureStroke(traceOf([{ side: 'main', timesS, amps }]), ONE_MOTOR));
    expect(doubts).toEqual([]);
    expect(sides.main.runningAmps).toBeCloseTo(2.2, 0);
    expect(sides.main.phases.startS).toBeLessThan(0.5);
  }
});
