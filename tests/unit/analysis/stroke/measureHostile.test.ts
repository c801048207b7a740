import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { PROFILE_BINS } from '../../../../analysis/measures.ts';
import { directionBySign } from '../../../../analysis/stroke/read/direction.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { anyStroke, SEEDED } from '../support/arbitrary.ts';
import { evenTimes, ONE_MOTOR, ROOM, sideOf, traceOf } from '../support/handMade.ts';
import { endlessIn } from '../support/measured.ts';

function positionsIn(side: {
  spikes: readonly { position: number }[];
  dips: readonly { position: number }[];
}) {
  return [...side.spikes, ...side.dips].map(({ position }) => position);
}

test('whatever finite numbers come, the answer is whole and finite, or says why not', () => {
  fc.assert(
    fc.property(anyStroke, fc.constantFrom(ROOM, ONE_MOTOR), (trace, room) => {
      const found = measureStroke(trace, room);
      expect(endlessIn(found)).toEqual([]);
      if (found.status === 'unusable') {
        expect(found.reason).toMatch(/^[A-Z].{20,}\.$/s);
        return;
      }
      for (const name of Object.keys(found.sides))
        expect(trace.sides.map(({ side }) => side)).toContain(name);
      expect(room.sides.some((name) => found.sides[name] !== undefined)).toBe(true);
      for (const side of Object.values(found.sides)) {
        expect(side.profile).toHaveLength(PROFILE_BINS);
        for (const position of positionsIn(side)) {
          expect(position).toBeGreaterThanOrEqual(0);
          expect(position).toBeLessThanOrEqual(1);
        }
        expect(side.durationS).toBeGreaterThan(0);
        expect(side.runningAmpsP90).toBeGreaterThanOrEqual(side.runningAmps);
        expect(side.roughness).toBeGreaterThanOrEqual(0);
        expect(side.noiseAmps).toBeGreaterThanOrEqual(0);
        const { startS, inrushEndS, endStopStartS, endS, pauses } = side.phases;
        const times = [startS, inrushEndS, endStopStartS ?? endS, endS];
        expect(times).toEqual([...times].sort((a, b) => a - b));
        for (const { fromS, toS } of pauses) expect(fromS >= startS && fromS < toS && toS <= endS).toBe(true);
        for (const spike of [...side.spikes, ...side.dips]) expect(spike.widthS).toBeGreaterThan(0);
      }
      if (found.share !== null) {
        const sum = Object.values(found.share).reduce((total, part) => total + part, 0);
        expect(sum).toBeCloseTo(1, 9);
      }
    }),
    SEEDED,
  );
});

test('measuring is pure: the same trace gives the same answer and is left as it was', () => {
  fc.assert(
    fc.property(anyStroke, (trace) => {
      const before = structuredClone(trace);
      const first = measureStroke(trace, ROOM);
      expect(trace).toEqual(before);
      expect(measureStroke(trace, ROOM)).toEqual(first);
      expect(JSON.parse(JSON.stringify(first))).toEqual(first);
    }),
    { ...SEEDED, numRuns: 40 },
  );
});

const WRONG = [
  { name: 'two samples', amps: [0, 9], reason: /too few samples/i },
  {
    name: 'nothing but zero',
    amps: Array(500).fill(0),
    reason: /none that reads any current|no motor current/i,
  },
  {
    name: 'one value throughout, small',
    amps: Array(500).fill(0.02),
    reason: /no motor current|any current/i,
  },
  {
    name: 'all missed but two',
    amps: Array.from({ length: 500 }, (_, i) => (i % 250 === 0 ? 9 : Number.NaN)),
    reason: /samples|missing/i,
  },
  {
    name: 'half of it missed',
    amps: Array.from({ length: 500 }, (_, i) => (i % 2 === 0 ? 9 : Number.NaN)),
    reason: /50 % of the samples are missing/,
  },
  {
    name: 'millions of amperes',
    amps: Array.from({ length: 500 }, (_, i) => (i > 100 && i < 400 ? 1e9 : 0)),
    reason: /larger than any such motor draws/,
  },
] as const;

test.each(WRONG)('says in plain words why a record is of no use: $name', ({ amps, reason }) => {
  const trace = traceOf([
    { side: 'main', timesS: evenTimes(50, amps.length / 50), amps: Float64Array.from(amps) },
  ]);
  const found = measureStroke(trace, ONE_MOTOR);
  expect(found).toMatchObject({ status: 'unusable', reason: expect.stringMatching(reason) });
  expect(found.doubts?.length).toBeGreaterThan(0);
});

test('a switch that was only tapped is of no use either, and speaks against no sensor', () => {
  const amps = Float64Array.from({ length: 500 }, (_, i) => (i > 200 && i < 220 ? 9 : 0));
  const trace = traceOf([{ side: 'main', timesS: evenTimes(50, 10), amps }]);
  const reason = expect.stringMatching(/less than a second/);
  const direction = 'extend';
  expect(measureStroke(trace, ONE_MOTOR)).toEqual({ status: 'unusable', reason, doubts: [], direction });
});

test('a stroke without any side, or with strangers only, is unusable and says so', () => {
  expect(measureStroke(traceOf([]), ROOM).status).toBe('unusable');
  expect(measureStroke(traceOf([], null), ROOM).status).toBe('unusable');
  expect(measureStroke(traceOf([sideOf('neither')]), ROOM).status).toBe('unusable');
});

test('a side that drew nothing is said, and the other is measured all the same', () => {
  const dead = { ...sideOf('rear'), amps: sideOf('rear').amps.map(() => 0.03) };
  const found = measureStroke(traceOf([sideOf('front'), dead]), ROOM);
  expect(found).toMatchObject({ status: 'done', share: null, lagS: null });
  expect(found.doubts).toEqual([expect.objectContaining({ side: 'rear', doubt: 'flat' })]);
});

test('the direction by sign never throws and never depends on the order of the sides', () => {
  fc.assert(
    fc.property(anyStroke, (trace) => {
      const found = directionBySign(trace, ROOM);
      expect(['extend', 'retract', null]).toContain(found);
      expect(directionBySign({ sides: trace.sides.toReversed() }, ROOM)).toBe(found);
    }),
    SEEDED,
  );
});

test('a clamp that was left off has no say in the direction, whatever its zero and its noise', () => {
  const random = new Random(28);
  const driven = (sign: number, i: number) => (i < 25 || i > 600 ? 0 : sign * (i < 35 ? 14 : 4));
  for (const [sign, direction] of [
    [1, 'extend'],
    [-1, 'retract'],
  ] as const) {
    for (const zero of [-0.3, 0, 0.04, 0.3]) {
      for (const noise of [0.01, 0.1, 0.4]) {
        const amps = (current: (i: number) => number) =>
          Float64Array.from({ length: 640 }, (_, i) => zero + current(i) + random.normal(0, noise));
        const timesS = evenTimes(50, 12.8);
        const off = { side: 'rear', timesS, amps: amps(() => 0) };
        const on = { side: 'front', timesS, amps: amps((i) => driven(sign, i)) };
        expect(directionBySign({ sides: [on, off] }, ROOM)).toBe(direction);
      }
    }
  }
});

test('two sides that are driven against each other tell no direction, be one of them easier', () => {
  const timesS = evenTimes(50, 12.8);
  const driven = (amps: number) =>
    Float64Array.from({ length: 640 }, (_, i) => (i < 25 || i > 600 ? 0 : i < 35 ? 3 * amps : amps));
  for (const less of [4, 2, 1.5]) {
    const sides = [
      { side: 'front', timesS, amps: driven(4) },
      { side: 'rear', timesS, amps: driven(-less) },
    ];
    expect(directionBySign({ sides }, ROOM)).toBeNull();
  }
});
