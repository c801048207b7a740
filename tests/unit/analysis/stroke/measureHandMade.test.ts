import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { lagAtStops } from '../../../../analysis/stroke/lag.ts';
import { signOf } from '../../../../analysis/stroke/read/direction.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import {
  chargeOf,
  currentAt,
  evenTimes,
  lastingS,
  ONE_MOTOR,
  PLAIN,
  ROOM,
  type Shape,
  sideOf,
  traceOf,
} from '../support/handMade.ts';
import { done, measureShape } from '../support/measured.ts';

const RECORDS: readonly { readonly name: string; readonly changes: Partial<Shape> }[] = [
  { name: '10 Hz', changes: { rateHz: 10 } },
  { name: '25 Hz', changes: { rateHz: 25 } },
  { name: '50 Hz', changes: {} },
  { name: '200 Hz', changes: { rateHz: 200 } },
  { name: '1000 Hz', changes: { rateHz: 1000 } },
  { name: 'noise', changes: { noiseAmps: 0.15 } },
  { name: 'coarse steps', changes: { stepAmps: 0.5 } },
  { name: 'an offset of 2 A', changes: { offsetAmps: 2 } },
  { name: 'an offset of -2 A', changes: { offsetAmps: -2 } },
  {
    name: 'a weak and noisy side',
    changes: { runningAmps: 2, inrushAmps: 12, stopAmps: 11, noiseAmps: 0.1 },
  },
  { name: 'one heavy motor', changes: { runningAmps: 30, inrushAmps: 110, stopAmps: 100, noiseAmps: 0.4 } },
];

test.each(RECORDS)('reads level, stop, duration and charge of a plain stroke: $name', ({ changes }) => {
  const shape = { ...PLAIN, ...changes };
  const stepS = 1 / shape.rateHz;
  const found = measureShape(changes);
  const slack = shape.noiseAmps / 2 + shape.stepAmps / 2 + 0.02 * shape.runningAmps;
  expect(Math.abs(found.runningAmps - shape.runningAmps)).toBeLessThan(slack);
  expect(found.runningAmpsP90).toBeGreaterThanOrEqual(found.runningAmps);
  expect(found.runningAmpsP90 - shape.runningAmps).toBeLessThan(2 * shape.noiseAmps + slack);
  expect(found.endStopAmps).not.toBeNull();
  expect(Math.abs((found.endStopAmps ?? 0) / (shape.stopAmps ?? 1) - 1)).toBeLessThan(0.06);
  expect(Math.abs(found.durationS - shape.movingS)).toBeLessThan(Math.max(0.15, 2.5 * stepS));
  expect(Math.abs(found.chargeAs / chargeOf(shape) - 1)).toBeLessThan(0.03);
  expect(Math.abs((found.offsetAmps ?? 0) - shape.offsetAmps)).toBeLessThan(0.05 + shape.stepAmps / 2);
  expect([found.spikes, found.dips]).toEqual([[], []]);
});

test('a coarse sensor that flickers between two readings at rest is no motor that starts', () => {
  // 8 bits over 120 A, on a side that draws little.
  const shape = { stepAmps: 0.469, noiseAmps: 0.12, runningAmps: 4, inrushAmps: 12, stopAmps: 12 };
  for (let seed = 1; seed <= 40; seed++) {
    for (const offsetAmps of [-0.4, -0.29, -0.15, 0.1, 0.24, 0.33]) {
      const found = measureShape({ ...shape, idleBeforeS: 2, idleAfterS: 2, offsetAmps, seed });
      expect([found.durationS, offsetAmps, seed]).toEqual([expect.closeTo(20, 0), offsetAmps, seed]);
      expect(found.inrushAmps).toBeGreaterThan(8);
      expect(Math.abs((found.offsetAmps ?? 9) - offsetAmps)).toBeLessThan(0.15);
      expect(found.spikes).toEqual([]);
    }
  }
});

test('noise at the very end of a record, where fewer samples even it out, is no motor that still runs', () => {
  const amps = { runningAmps: 2.7, inrushAmps: 13, stopAmps: 13, noiseAmps: 0.18 };
  const shape = { ...amps, rateHz: 100, movingS: 10, stopS: 0.8 };
  for (let seed = 1; seed <= 4; seed++) {
    const side = sideOf('main', { ...shape, seed });
    // The last few samples happen to lie a little above the rest.
    side.amps.fill(0.21, -7);
    const { sides } = done(measureStroke(traceOf([side]), ONE_MOTOR));
    expect([sides.main.durationS, seed]).toEqual([expect.closeTo(10, 0), seed]);
    expect(sides.main.endStopAmps).not.toBeNull();
  }
});

test.each([25, 50, 200, 1000])('the inrush is the highest sample of the start, at %i Hz', (rateHz) => {
  const { timesS, amps } = sideOf('main', { rateHz, offsetAmps: 1 });
  const highest = Math.max(...amps.filter((_, i) => timesS[i] < 3)) - 1;
  expect(measureShape({ rateHz, offsetAmps: 1 }).inrushAmps).toBeCloseTo(highest, 6);
});

test('without an end stop there is no stall current, and the stroke ends where the motor was switched off', () => {
  const found = measureShape({ stopAmps: null });
  expect(found.endStopAmps).toBeNull();
  expect(found.phases.endStopStartS).toBeNull();
  expect(found.durationS).toBeCloseTo(PLAIN.movingS, 0);
});

test('the phases stand where they were drawn', () => {
  const { phases } = measureShape();
  expect(phases.startS).toBeCloseTo(1, 1);
  expect(phases.inrushEndS).toBeGreaterThan(1.1);
  expect(phases.inrushEndS).toBeLessThan(2.6);
  expect(phases.endStopStartS).toBeCloseTo(21, 1);
  expect(phases.endS).toBeCloseTo(21.5, 1);
});

test('energy is charge times a steady supply, and null without one', () => {
  const supply = { timesS: Float64Array.of(0, 30), volts: Float64Array.of(12.5, 12.5) };
  const found = measureShape({}, { supply });
  expect(found.energyJ).toBeCloseTo(12.5 * found.chargeAs, 6);
  expect(measureShape().energyJ).toBeNull();
});

test('the 90th percentile sees a raised last fifth of the running time', () => {
  const bumps = [{ atS: 18, widthS: 3, amps: 6 }];
  const found = measureShape({ bumps });
  expect(found.runningAmps).toBeLessThan(8.5);
  expect(found.runningAmpsP90).toBeGreaterThan(10);
});

test.each([
  { name: 'one pause', pauses: [{ atS: 8, forS: 3 }] },
  {
    name: 'two pauses',
    pauses: [
      { atS: 5, forS: 1 },
      { atS: 12, forS: 4 },
    ],
  },
  { name: 'a short pause', pauses: [{ atS: 10, forS: 0.8 }] },
])('a stroke with a rest in it is one stroke: $name', ({ pauses }) => {
  for (const rateHz of [10, 50, 200]) {
    const found = measureShape({ pauses, rateHz, noiseAmps: 0.05 });
    expect(found.phases.pauses).toHaveLength(pauses.length);
    expect(Math.abs(found.durationS - PLAIN.movingS)).toBeLessThan(0.6);
    expect(found.spikes).toEqual([]);
    expect(found.dips).toEqual([]);
    expect(Math.abs(found.runningAmps - PLAIN.runningAmps)).toBeLessThan(0.2);
  }
});

test.each([
  { at: 0.25, direction: 'extend' as const },
  { at: 0.5, direction: 'retract' as const },
  { at: 0.8, direction: 'extend' as const },
  { at: 0.7, direction: 'retract' as const },
])('a peak is told with place, height and width: $at while it $direction s', ({ at, direction }) => {
  for (const rateHz of [25, 50, 200]) {
    const bumps = [{ atS: at * PLAIN.movingS, widthS: 0.3, amps: 6 }];
    const found = measureShape({ bumps, rateHz, noiseAmps: 0.05 }, { direction });
    expect(found.spikes).toHaveLength(1);
    const [spike] = found.spikes;
    const place = direction === 'extend' ? at : 1 - at;
    expect(Math.abs(spike.position - place)).toBeLessThan(0.01);
    expect(Math.abs(spike.amps - 14)).toBeLessThan(0.7);
    // A raised cosine is half as high over its own half width.
    expect(spike.widthS).toBeGreaterThan(0.2);
    expect(spike.widthS).toBeLessThan(0.55);
  }
});

test('a peak of a sixth of the running current is told; one of a tenth is how a current goes', () => {
  const peaks = (part: number) =>
    measureShape({ bumps: [{ atS: 9, widthS: 0.3, amps: part * PLAIN.runningAmps }], noiseAmps: 0.03 })
      .spikes;
  expect(peaks(1 / 6)).toHaveLength(1);
  expect(peaks(0.1)).toEqual([]);
});

test('noise that a logger without negative numbers shows by half at rest is said as it is', () => {
  for (let seed = 1; seed <= 10; seed++) {
    const side = sideOf('main', { runningAmps: 11, inrushAmps: 70, stopAmps: 75, noiseAmps: 2.9, seed });
    const unsigned = { ...side, amps: side.amps.map((amps) => Math.max(0, amps)) };
    const { doubts } = done(measureStroke(traceOf([unsigned]), ONE_MOTOR));
    expect(doubts.map(({ doubt }) => doubt)).toContain('noise');
  }
});

test('one sample that stands alone in a quick record is a crackle, and two are a peak', () => {
  for (const rateHz of [50, 100, 200]) {
    const side = sideOf('main', { rateHz, noiseAmps: 0.05 });
    const peaksWith = (samples: number) => {
      const amps = side.amps.slice();
      const at = Math.round(11 * rateHz);
      for (let i = at; i < at + samples; i++) amps[i] += 12;
      return done(measureStroke(traceOf([{ ...side, amps }]), ONE_MOTOR)).sides.main.spikes.length;
    };
    expect([peaksWith(0), peaksWith(1), peaksWith(Math.ceil(0.06 * rateHz))]).toEqual([0, 0, 1]);
  }
});

test('a fall of the load is a dip, not a spike', () => {
  const found = measureShape({ bumps: [{ atS: 9, widthS: 0.35, amps: -5 }] });
  expect(found.spikes).toEqual([]);
  expect(found.dips).toHaveLength(1);
  expect(found.dips[0].position).toBeCloseTo(0.45, 1);
  expect(found.dips[0].amps).toBeLessThan(4);
});

test('the profile is the level by place, and a retract shows the same places as an extend', () => {
  const bumps = [{ atS: 5, widthS: 2, amps: 4 }];
  const mirrored = [{ atS: 15, widthS: 2, amps: 4 }];
  const out = measureShape({ bumps }).profile;
  const back = measureShape({ bumps: mirrored }, { direction: 'retract' }).profile;
  expect(out).toHaveLength(64);
  out.forEach((amps, bin) => {
    const other = back[bin];
    if (amps !== null && other !== null) expect(Math.abs(amps - other)).toBeLessThan(0.5);
  });
  expect(out[16]).toBeGreaterThan(11);
  expect(out[40]).toBeCloseTo(8, 1);
});

test('irregular times give what even times give', () => {
  const random = new Random(5);
  const even = evenTimes(50, lastingS(PLAIN));
  const times = even.map((timeS) => timeS + random.uniform(0, 0.015));
  const [a, b] = [measureShape(), measureShape({}, { times })];
  expect(b.runningAmps / a.runningAmps).toBeCloseTo(1, 2);
  expect(b.durationS).toBeCloseTo(a.durationS, 1);
  expect(b.chargeAs / a.chargeAs).toBeCloseTo(1, 1);
  const thinning = even.filter((timeS, i) => (timeS < 10 ? true : i % 4 === 0));
  const c = measureShape({}, { times: thinning });
  expect(c.runningAmps / a.runningAmps).toBeCloseTo(1, 2);
  expect(Math.abs(c.durationS - a.durationS)).toBeLessThan(0.3);
});

test('missed samples change nothing but the count of them', () => {
  const random = new Random(9);
  const side = sideOf('main', { bumps: [{ atS: 10, widthS: 0.3, amps: 6 }] });
  const amps = side.amps.map((value, i) => {
    const running = i > 150 && i < 1000;
    return running && random.chance(0.05) ? Number.NaN : value;
  });
  const whole = done(measureStroke(traceOf([side]), ONE_MOTOR)).sides.main;
  const holed = done(measureStroke(traceOf([{ ...side, amps }]), ONE_MOTOR)).sides.main;
  expect(holed.runningAmps).toBeCloseTo(whole.runningAmps, 2);
  expect(holed.chargeAs / whole.chargeAs).toBeCloseTo(1, 2);
  expect(holed.spikes).toHaveLength(1);
  expect(holed.spikes[0].position).toBeCloseTo(whole.spikes[0].position, 2);
});

test('the sign of the current tells the direction, as the room is wired', () => {
  const backwards = { ...ONE_MOTOR, positiveDirection: 'retract' as const };
  const rows = [
    [1, ONE_MOTOR, 'extend'],
    [-1, ONE_MOTOR, 'retract'],
    [1, backwards, 'retract'],
    [-1, backwards, 'extend'],
  ] as const;
  for (const [sign, room, direction] of rows) {
    for (const offsetAmps of [-1.5, 0, 1.5]) {
      const trace = traceOf([sideOf('main', { sign, offsetAmps, noiseAmps: 0.05 })], null);
      const found = done(measureStroke(trace, room));
      expect(found.direction).toBe(direction);
      expect(found.sides.main.runningAmps).toBeCloseTo(PLAIN.runningAmps, 1);
    }
  }
});

test.each([1, -1] as const)(
  'a record that begins in a start and ends in a stall has its sign: %i',
  (sign) => {
    const edge = [60, 28, 26, 12];
    const amps = [...edge, ...Array<number>(200).fill(10), ...edge.toReversed()].map((value) => sign * value);
    expect(signOf(Float64Array.from(amps))).toBe(sign);
  },
);

test('sides that disagree on the sign leave the direction untold, and are measured where it is given', () => {
  const sides = [sideOf('front'), sideOf('rear', { sign: -1 })];
  expect(measureStroke(traceOf(sides, null), ROOM).status).toBe('unusable');
  const found = done(measureStroke(traceOf(sides, 'retract'), ROOM));
  expect(found.sides.rear.runningAmps).toBeCloseTo(found.sides.front.runningAmps, 6);
});

/** Half a second of rest at the edge of a record is too short to believe so high a level, or a pause so high, by itself. */
test.each([
  { name: 'before the start', changes: { idleBeforeS: 0.5, idleAfterS: 0 } },
  { name: 'in a pause', changes: { idleBeforeS: 0, idleAfterS: 0, pauses: [{ atS: 8, forS: 2 }] } },
])('the rest of one side, $name, tells the zero of the other, as one switch drives both', ({ changes }) => {
  const low = { ...changes, runningAmps: 3, inrushAmps: 15, stopAmps: 14, noiseAmps: 0.05 };
  const rear = sideOf('rear', { ...low, offsetAmps: 1 });
  const alone = done(measureStroke(traceOf([rear]), ROOM));
  expect(alone.sides.rear.offsetAmps).toBeNull();
  const front = sideOf('front', { ...low, seed: 2 });
  const { rear: told } = done(measureStroke(traceOf([front, rear]), ROOM)).sides;
  expect(told.offsetAmps).toBeCloseTo(1, 1);
  expect(told.runningAmps).toBeCloseTo(3, 1);
});

test('share and lag say which side works harder and which comes later', () => {
  const sides = [sideOf('front', { runningAmps: 6 }), sideOf('rear', { runningAmps: 9, movingS: 21.5 })];
  const found = done(measureStroke(traceOf(sides), ROOM));
  expect(found.share?.front).toBeCloseTo(0.4, 2);
  expect(found.share?.rear).toBeCloseTo(0.6, 2);
  expect(Math.abs((found.lagS ?? 0) - 1.5)).toBeLessThan(0.1);
});

test.each([-0.2, -0.1, 0, 0.06, 0.2])(
  'sides that limit switches end %d s apart have that lag, as each end is seen; but the room learns none of it',
  (laterS) => {
    const limited = { stopAmps: null, idleAfterS: 1, noiseAmps: 0.05 };
    const sides = [sideOf('front', limited), sideOf('rear', { ...limited, movingS: 20 + laterS, seed: 2 })];
    const found = done(measureStroke(traceOf(sides), ROOM));
    expect(Math.abs((found.lagS ?? 9) - laterS)).toBeLessThan(0.04);
    expect(lagAtStops(found)).toBeNull();
  },
);

test('one side alone has no share and no lag', () => {
  const found = done(measureStroke(traceOf([sideOf('rear')]), ROOM));
  expect([found.share, found.lagS]).toEqual([null, null]);
  expect(Object.keys(found.sides)).toEqual(['rear']);
});

test('two hundred thousand samples at 1000 Hz are read like any other', () => {
  const shape = { ...PLAIN, movingS: 197.4, rateHz: 1000, noiseAmps: 0.1 };
  const found = measureShape(shape);
  expect(sideOf('main', shape).amps.length).toBeGreaterThan(199_000);
  expect(found.runningAmps).toBeCloseTo(8, 1);
  expect(Math.abs(found.durationS - shape.movingS)).toBeLessThan(0.2);
  expect(currentAt(shape, 100)).toBeCloseTo(8, 9);
});

test.each([
  {
    name: 'a room that runs near its stall, on a coarse sensor',
    cutAt: Number.POSITIVE_INFINITY,
    doubts: [],
  },
  { name: 'a sensor that reads no further than the start', cutAt: 24, doubts: ['clipped'] },
  { name: 'a sensor that reads no further than the running current', cutAt: 18, doubts: ['clipped'] },
])('the highest readings are doubted where a start was cut off: $name', ({ cutAt, doubts }) => {
  const heavy = { runningAmps: 20, inrushAmps: 27, inrushTauS: 0.4, stopAmps: 29, stepAmps: 0.8, stopS: 1 };
  const side = sideOf('main', heavy);
  const cut = { ...side, amps: side.amps.map((amps) => Math.min(cutAt, amps)) };
  const found = done(measureStroke(traceOf([cut]), ONE_MOTOR));
  expect(found.doubts.map(({ doubt }) => doubt)).toEqual(doubts);
});
