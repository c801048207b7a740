import { expect, test } from 'vitest';
import { isCutOff } from '../../../../../analysis/findings/sensorDoubt/cutLevel.ts';
import type { CutMemory } from '../../../../../analysis/findings/sensorDoubt/cutMemory.ts';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { measureStroke } from '../../../../../analysis/measureStroke.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR, type Shape, sideOf, traceOf } from '../../support/handMade.ts';
import { directionOf, START_MS } from '../../support/strokeEvents.ts';

/** A start over a second or so, as a heavy room draws it. */
const HEAVY: Partial<Shape> = {
  runningAmps: 20,
  inrushAmps: 45,
  inrushTauS: 0.4,
  stopAmps: null,
  rateHz: 100,
  stepAmps: 0.3,
  noiseAmps: 0.02,
};
const DAY_MS = 86_400_000;

/** One stroke that reads nothing above `levelAmps`. */
function heldAt(levelAmps: number, index: number): StrokeEvent {
  const side = sideOf('main', { ...HEAVY, seed: index + 1 });
  const level = Math.round(levelAmps / 0.3) * 0.3;
  const held = { ...side, amps: side.amps.map((amps) => Math.min(level, amps)) };
  return {
    type: 'stroke',
    strokeId: `stroke-${index}`,
    atMs: START_MS + index * DAY_MS,
    direction: directionOf(index),
    ambientC: null,
    excluded: false,
    analysis: measureStroke(traceOf([held], directionOf(index)), ONE_MOTOR),
  };
}

/** After how many strokes of these levels the record is said to be cut off; null: never. */
function saidAfter(levels: readonly number[]): number | null {
  const { judgements } = foldAll(ONE_MOTOR, levels.map(heldAt));
  const at = judgements.findIndex(({ warnings }) =>
    warnings.some(({ kind, evidence }) => kind === 'sensor-doubt' && evidence.doubt === 'clipped'),
  );
  return at < 0 ? null : at + 1;
}

test('a sensor that always reads as far and no further is said to be cut off after three strokes', () => {
  expect(saidAfter([27, 27, 27, 27])).toBe(3);
  expect(saidAfter([100, 100, 27, 27, 27])).toBe(5);
});

test('one that is cut below the running current of each way, wherever that is, is cut off', () => {
  const levels = [100, 100, 18, 15.3, 18, 15.3, 18, 15.3];
  expect(saidAfter(levels)).toBe(7);
});

test.each([
  { name: 'now higher and now lower', levels: [30.6, 27, 29.1, 31.2, 27.9, 30, 28.2, 27] },
  { name: 'as high every other time, but higher between', levels: [27, 31.2, 27, 30.6, 27, 31.2, 27, 31.2] },
])('a start that is held level $name is not cut off by the sensor', ({ levels }) => {
  expect(levels.map((level, i) => heldAt(level, i).analysis.doubts?.map(({ doubt }) => doubt))).toEqual(
    levels.map(() => ['clipped']),
  );
  expect(saidAfter(levels)).toBeNull();
});

/** Whether the last of these strokes is cut, all of one level, held at these readings of a converter of 0.78 A a step. */
function isCutAt(readings: readonly number[]): boolean {
  const { analysis } = heldAt(27, 0);
  if (analysis.status !== 'done') throw new Error('it was measured');
  const memory: CutMemory = { latest: [] };
  const answers = readings.map((amps, index) => {
    const measured = { ...analysis.sides.main, held: { amps, noiseSteps: 0 } };
    return isCutOff(memory, measured, directionOf(index), true, false);
  });
  return answers[answers.length - 1];
}

test('crests of one level that a coarse sensor read highest at different steps are cut by none', () => {
  expect(isCutAt([30.4688, 30.4688, 30.4687])).toBe(true);
  expect(isCutAt([30.4688, 31.25, 28.125, 31.25])).toBe(false);
});

test('a smooth crest that a coarse sensor reads in steps is no cut', () => {
  for (let amps = 3; amps < 5; amps += 0.07) {
    const crest: Partial<Shape> = {
      runningAmps: 9,
      inrushAmps: 9,
      bumps: [{ atS: 0.3, widthS: 0.3, amps }],
      stopAmps: null,
      rateHz: 200,
      stepAmps: 0.47,
    };
    const trace = traceOf([sideOf('main', crest)]);
    expect([amps, measureStroke(trace, ONE_MOTOR).doubts]).toEqual([amps, []]);
    const cut = trace.sides.map((side) => ({
      ...side,
      amps: side.amps.map((value) => Math.min(11.28, value)),
    }));
    expect(measureStroke({ ...trace, sides: cut }, ONE_MOTOR).doubts).toMatchObject([{ doubt: 'clipped' }]);
  }
});

test('a current that a controller holds at its limit is no cut where the sensor still shows its noise', () => {
  const start: Partial<Shape> = { ...HEAVY, inrushAmps: 70, stopAmps: 60, stopS: 0.8, noiseAmps: 0 };
  const doubtsOf = (steps: (index: number) => number) => {
    const side = sideOf('main', start);
    const held = side.amps.map((amps, i) => (amps < 36 ? amps : 36 - 0.3 * steps(i)));
    return measureStroke(traceOf([{ ...side, amps: held }]), ONE_MOTOR).doubts;
  };
  expect(doubtsOf((i) => (i % 7 === 0 ? 1 : 0))).toEqual([]);
  expect(doubtsOf(() => 0)).toMatchObject([{ doubt: 'clipped' }]);
});

test('a cut within the noise of the running current is one, though its noise takes some readings no more than a step below', () => {
  const noisy: Partial<Shape> = { runningAmps: 4.05, noiseAmps: 0.15, rateHz: 10, stepAmps: 0.05 };
  for (let seed = 1; seed <= 12; seed++) {
    const side = sideOf('main', { ...noisy, seed });
    const cut = { ...side, amps: side.amps.map((amps) => Math.min(4.1, amps)) };
    const { doubts = [] } = measureStroke(traceOf([cut]), ONE_MOTOR);
    expect([seed, doubts]).toMatchObject([seed, [{ doubt: 'clipped' }]]);
  }
});

/** A stroke whose logger woke after the start, on a supply that differs, and reads nothing above `levelAmps`. */
function wokenLate(levelAmps: number, index: number): StrokeEvent {
  const stopAmps = 60 * (1 + 0.04 * Math.sin(index));
  const side = sideOf('main', {
    ...HEAVY,
    stopAmps,
    stopS: 0.7,
    noiseAmps: 0.1,
    stepAmps: 0.03,
    seed: index + 1,
  });
  const from = side.timesS.findIndex((timeS) => timeS > 2);
  const held = {
    side: 'main',
    timesS: side.timesS.slice(from),
    amps: side.amps.slice(from).map((amps) => Math.min(levelAmps, amps)),
  };
  const analysis = measureStroke(traceOf([held], directionOf(index)), ONE_MOTOR);
  return { ...heldAt(100, index), analysis };
}

test('a stall that reads one low level from a stroke on, while the room runs as ever, is cut off though no start shows it', () => {
  const told = (levelOf: (index: number) => number) =>
    foldAll(
      ONE_MOTOR,
      Array.from({ length: 36 }, (_, index) => wokenLate(levelOf(index), index)),
    ).warnings;
  expect(told((index) => (index < 24 ? 100 : 32))).toMatchObject([
    { kind: 'sensor-doubt', side: 'main', firstStrokeId: 'stroke-26', evidence: { doubt: 'clipped' } },
  ]);
  expect(told(() => 100)).toEqual([]);
});

test('a stall that is cut to little more than the running current is no end of travel that comes late, but a cut', () => {
  const soft: Partial<Shape> = {
    ...HEAVY,
    inrushAmps: 9,
    stopAmps: 60,
    stopS: 1,
    noiseAmps: 0.1,
    stepAmps: 0.03,
  };
  const events = Array.from({ length: 30 }, (_, index) => {
    const side = sideOf('main', { ...soft, seed: index + 1 });
    const level = index < 24 ? 100 : 23.01;
    const held = { ...side, amps: side.amps.map((amps) => Math.min(level, amps)) };
    return {
      ...heldAt(100, index),
      analysis: measureStroke(traceOf([held], directionOf(index)), ONE_MOTOR),
    };
  });
  expect(foldAll(ONE_MOTOR, events).warnings).toMatchObject([
    { kind: 'sensor-doubt', firstStrokeId: 'stroke-26', evidence: { doubt: 'clipped' } },
  ]);
});

test.each([0.98, 1.01, 1.06, 1.2, 2])(
  'a record that is cut at %d times the running current is cut',
  (times) => {
    const noisy: Partial<Shape> = {
      ...HEAVY,
      inrushTauS: 0.15,
      stopAmps: 40,
      stopS: 0.6,
      stepAmps: 0.001,
      noiseAmps: 0.4,
    };
    for (const seed of [1, 2, 3, 4]) {
      const side = sideOf('main', { ...noisy, seed });
      const cut = side.amps.map((amps) => Math.min(times * 20, amps));
      const { doubts } = measureStroke(traceOf([{ ...side, amps: cut }]), ONE_MOTOR);
      expect(doubts, `seed ${seed}`).toMatchObject([{ doubt: 'clipped' }]);
    }
  },
);

/** What is said of a room whose every stroke is of this shape and reads nothing above its level. */
function toldOf(shape: Partial<Shape>, levels: readonly number[]) {
  const events = levels.map((level, index) => {
    const side = sideOf('main', { ...shape, seed: index + 1 });
    const held = { ...side, amps: side.amps.map((amps) => Math.min(level, amps)) };
    return {
      ...heldAt(100, index),
      analysis: measureStroke(traceOf([held], directionOf(index)), ONE_MOTOR),
    };
  });
  return foldAll(ONE_MOTOR, events).warnings;
}

const SHORT_STALL: Partial<Shape> = {
  runningAmps: 9,
  inrushAmps: 12,
  inrushTauS: 0.15,
  stopAmps: 28,
  stopS: 0.28,
  rateHz: 25,
  noiseAmps: 0.08,
  stepAmps: 0.001,
};

test('a few samples of the very same value at each stall, amid noise of many steps, are the end of a range', () => {
  const levels = Array.from({ length: 12 }, (_, index) => (index < 4 ? 100 : 17.313));
  expect(toldOf(SHORT_STALL, levels)).toMatchObject([
    { kind: 'sensor-doubt', firstStrokeId: 'stroke-6', clearedAtMs: null, evidence: { doubt: 'clipped' } },
  ]);
});

test('a start and a stall of one level in steps as coarse as the noise are V/R, which the supply moves', () => {
  const shape: Partial<Shape> = {
    ...SHORT_STALL,
    runningAmps: 8,
    inrushAmps: 60,
    stopAmps: 60,
    stopS: 0.4,
    rateHz: 40,
    noiseAmps: 0.01,
    stepAmps: 0.1,
  };
  const levels = [19.3, 19.2, 19.1, 19.2, 19.3, 19.1, 19.2, 19.2, 18.9, 19.1, 19.2, 19.3, 19.1, 19.1, 19.2];
  expect(toldOf(shape, levels)).toEqual([]);
  expect(toldOf(shape, [...levels, ...levels.map(() => 19.2)])).toMatchObject([
    { kind: 'sensor-doubt', clearedAtMs: null, evidence: { doubt: 'clipped' } },
  ]);
});

test('a stall that reads one and the same value from the first stroke on is no motor near its stall, but a range', () => {
  const shape: Partial<Shape> = {
    ...SHORT_STALL,
    runningAmps: 4.9,
    inrushAmps: 8,
    stopAmps: 23,
    noiseAmps: 0.04,
    stepAmps: 0.05,
  };
  const told = toldOf(
    shape,
    Array.from({ length: 12 }, () => 8.6),
  );
  expect(told.map(({ kind, evidence }) => [kind, evidence.doubt])).toEqual([['sensor-doubt', 'clipped']]);
});

test('a rest between two steps of a converter shows no noise by which a level that a controller holds would be a cut', () => {
  const shape: Partial<Shape> = {
    ...SHORT_STALL,
    runningAmps: 2.9,
    inrushAmps: 4.2,
    inrushTauS: 0.4,
    stopAmps: 7.1,
    rateHz: 50,
    noiseAmps: 0.013,
    stepAmps: 0.156,
    offsetAmps: 0.078,
  };
  const uncut = Array.from({ length: 24 }, () => 100);
  expect(toldOf(shape, uncut)).toEqual([]);
});
