import { describe, expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { directionBySign } from '../../../../analysis/stroke/read/direction.ts';
import { longRest, withShortRest } from '../../../../analysis/stroke/rest/longRest.ts';
import { ONE_MOTOR, ROOM, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

const LOGGER: Partial<Shape> = { rateHz: 20, idleBeforeS: 0.5, idleAfterS: 0.5, noiseAmps: 0.1 };
const measured = (changes: Partial<Shape>) => {
  const trace = traceOf([sideOf('main', { ...LOGGER, ...changes })], null);
  return { analysis: done(measureStroke(trace, ONE_MOTOR)), direction: directionBySign(trace, ONE_MOTOR) };
};

describe('a rest is a rest however long it lasts', () => {
  const long: [string, Partial<Shape>][] = [
    ['in mid-stroke for ten minutes', { pauses: [{ atS: 9, forS: 600 }] }],
    ['in mid-stroke for five minutes', { pauses: [{ atS: 9, forS: 300 }] }],
    [
      'twice in mid-stroke for ten minutes',
      {
        pauses: [
          { atS: 5, forS: 600 },
          { atS: 14, forS: 600 },
        ],
      },
    ],
    ['before and after for ten minutes', { idleBeforeS: 600, idleAfterS: 600 }],
    ['before for half an hour', { idleBeforeS: 1800 }],
    ['after for half an hour', { idleAfterS: 1800 }],
  ];
  const sensors: [string, Partial<Shape>][] = [
    ['', {}],
    [', read the other way', { sign: -1 }],
    [', beside an offset above nothing', { offsetAmps: 0.5 }],
    [', beside an offset below nothing', { offsetAmps: -0.5 }],
    [', in coarse steps', { stepAmps: 0.25 }],
  ];
  test.each(
    long.flatMap(([when, rest]) => sensors.map(([how, sensor]) => [when + how, rest, sensor] as const)),
  )('%s', (_, rest, sensor) => {
    const { analysis, direction } = measured({ ...rest, ...sensor });
    const plain = measured(sensor);
    expect(direction).toBe(plain.direction);
    expect(analysis.doubts).toEqual([]);
    const [main, usual] = [analysis.sides.main, plain.analysis.sides.main];
    expect(main.phases.pauses).toHaveLength(rest.pauses?.length ?? 0);
    expect(main.durationS).toBeCloseTo(usual.durationS, 0);
    expect(Math.abs(main.runningAmps - usual.runningAmps)).toBeLessThan(0.1);
    expect(main.endStopAmps).toBeCloseTo(usual.endStopAmps ?? Number.NaN, 0);
  });

  test('of both sides of a room alike', () => {
    const pauses = [{ atS: 9, forS: 600 }];
    const sides = [
      sideOf('front', { ...LOGGER, pauses }),
      sideOf('rear', { ...LOGGER, pauses, runningAmps: 9, seed: 2 }),
    ];
    const analysis = done(measureStroke(traceOf(sides), ROOM));
    expect(analysis.doubts).toEqual([]);
    expect(analysis.share?.front).toBeCloseTo(8 / 17, 2);
    expect(analysis.lagS).toBeCloseTo(0, 1);
  });
});

describe('a stroke with a pause longer than its motion', () => {
  const pauses = [
    { atS: 5, forS: 30 },
    { atS: 14, forS: 30 },
  ];

  test('is one stroke up to its stop, and begins and ends as one without', () => {
    const [paused, plain] = [measured({ pauses }), measured({})].map(({ analysis }) => analysis.sides.main);
    expect(paused.durationS).toBeCloseTo(plain.durationS, 0);
    expect(paused.endStopAmps).toBeCloseTo(plain.endStopAmps ?? Number.NaN, 0);
    const inrushS = ({ phases }: typeof plain) => phases.inrushEndS - phases.startS;
    expect(inrushS(paused)).toBeCloseTo(inrushS(plain), 1);
  });

  test('is over where it met its stop, though it is pressed once more long after', () => {
    const run = sideOf('main', { ...LOGGER, idleAfterS: 60 });
    const amps = run.amps.map((value, i) => (run.timesS[i] > 70 && run.timesS[i] < 71 ? value + 38 : value));
    const { sides } = done(measureStroke(traceOf([{ ...run, amps }]), ONE_MOTOR));
    expect(sides.main.phases.endS).toBeCloseTo(21, 0);
  });
});

describe('what most of a record is', () => {
  const record = (...parts: readonly (readonly [count: number, amps: number])[]) =>
    Float64Array.from(parts.flatMap(([count, amps]) => new Array<number>(count).fill(amps)));

  test('is its rest where it is near nothing, at both ends too', () => {
    const values = record([900, 0.1], [90, 9], [900, 0.1]);
    expect(longRest(values)).toMatchObject({ level: 0.1, driven: 90 });
    const short = withShortRest(values, 20);
    expect(short.filter((value) => value === 9)).toHaveLength(90);
    expect(short).toHaveLength(180);
  });

  test.each([
    ['a motor that runs lightly up to a stall', record([40, 0], [900, 0.8], [60, 30], [40, 0])],
    ['a running current that a lost zero brought to nothing', record([60, -9], [1800, 0], [60, -9])],
    ['a rest far from nothing', record([900, -4], [90, 9], [900, -4])],
    ['no more than most of it', record([40, 0], [90, 9], [300, 0])],
  ])('is no rest to be shortened where it is %s', (_, values) => {
    expect(longRest(values)).toBeNull();
    expect(withShortRest(values, 20)).toBe(values);
  });

  test('keeps its length where nothing is driven for long', () => {
    const values = record([900, 0], [5, 9], [900, 0]);
    expect(withShortRest(values, 20)).toBe(values);
  });
});

test('a small motor that runs throughout its record is no rest, with some odd samples least of all', () => {
  const running = Float64Array.from({ length: 150 }, (_, i) => 0.75 + 0.1 * Math.sin(i));
  expect(longRest(running)).toBeNull();
  const odd = running.map((amps, i) => (i % 50 === 25 ? amps + 2 : amps));
  expect(longRest(odd)).toBeNull();
});

test('a motor that runs from the first sample on, until it stalls for long, is not at rest for most of the record', () => {
  const underWay: Partial<Shape> = {
    rateHz: 20,
    idleBeforeS: 0,
    movingS: 8.8,
    inrushAmps: 2.4,
    runningAmps: 2.4,
    stopAmps: 17,
    stopS: 1.3,
    idleAfterS: 0.3,
    noiseAmps: 0.04,
  };
  const { analysis } = measured(underWay);
  expect(analysis.doubts).toEqual([]);
  expect(analysis.sides.main.runningAmps).toBeCloseTo(2.4, 1);
  expect(analysis.sides.main.durationS).toBeCloseTo(8.8, 0);
});
