import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import type { DoneAnalysis, SideMeasures } from '../../../../analysis/measures.ts';
import type { SideTrace, StrokeTrace } from '../../../../analysis/trace.ts';
import { SEEDED } from '../support/arbitrary.ts';
import { ROOM, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

const RUNS = { ...SEEDED, numRuns: 40 };

/** Strokes as real loggers record them: rest on both ends, a start, a level, sometimes a stop, a pause, a peak. */
const ordinarySide: fc.Arbitrary<Partial<Shape>> = fc
  .record({
    movingS: fc.double({ noNaN: true, min: 8, max: 40 }),
    runningAmps: fc.double({ noNaN: true, min: 2, max: 12 }),
    ratio: fc.double({ noNaN: true, min: 3, max: 7 }),
    stops: fc.boolean(),
    noiseAmps: fc.double({ noNaN: true, min: 0.01, max: 0.2 }),
    seed: fc.nat(),
    bumpAt: fc.option(fc.double({ noNaN: true, min: 0.2, max: 0.8 }), { nil: null }),
    pauseAt: fc.option(fc.double({ noNaN: true, min: 0.2, max: 0.8 }), { nil: null }),
  })
  .map(({ ratio, stops, bumpAt, pauseAt, ...drawn }) => ({
    ...drawn,
    idleBeforeS: 1.5,
    idleAfterS: 1.5,
    inrushAmps: ratio * drawn.runningAmps,
    stopAmps: stops ? 0.9 * ratio * drawn.runningAmps : null,
    bumps:
      bumpAt === null ? [] : [{ atS: bumpAt * drawn.movingS, widthS: 0.4, amps: 1.2 * drawn.runningAmps }],
    pauses: pauseAt === null ? [] : [{ atS: pauseAt * drawn.movingS, forS: 2 }],
  }));

const ordinary: fc.Arbitrary<StrokeTrace> = fc
  .tuple(
    fc.constantFrom(8, 16, 64, 128),
    ordinarySide,
    ordinarySide,
    fc.constantFrom('extend' as const, 'retract' as const),
  )
  .map(([rateHz, front, rear, direction]) =>
    traceOf([sideOf('front', { ...front, rateHz }), sideOf('rear', { ...rear, rateHz })], direction),
  );

const measured = (trace: StrokeTrace): DoneAnalysis => done(measureStroke(trace, ROOM));

function withSides(trace: StrokeTrace, change: (side: SideTrace) => SideTrace): StrokeTrace {
  return { ...trace, sides: trace.sides.map(change) };
}

function expectNear(a: number | null, b: number | null, what = '', tolerance = 1e-6): void {
  expect(a === null, what).toBe(b === null);
  expect(Math.abs((a ?? 0) - (b ?? 0)), what).toBeLessThanOrEqual(tolerance * Math.max(1, Math.abs(a ?? 0)));
}

/** Compares two sides whose currents differ by a factor alone. */
function expectScaled(one: SideMeasures, other: SideMeasures, factor: number, tolerance = 1e-6): void {
  for (const name of ['inrushAmps', 'runningAmps', 'runningAmpsP90', 'chargeAs', 'roughness'] as const) {
    expectNear(other[name], factor * one[name], name, tolerance);
  }
  const stop = one.endStopAmps === null ? null : factor * one.endStopAmps;
  expectNear(other.endStopAmps, stop, 'endStopAmps', tolerance);
  expectNear(other.durationS, one.durationS, 'durationS', tolerance);
  // In steps of 10 µA, of which each may be half a one off.
  const steps = 0.5e-5 * (1 + factor) + tolerance;
  one.profile.forEach((amps, bin) => {
    expectNear(other.profile[bin], amps === null ? null : factor * amps, 'profile', steps);
  });
  expect(other.spikes).toHaveLength(one.spikes.length);
  one.spikes.forEach((spike, i) => {
    expectNear(other.spikes[i].position, spike.position, 'position', tolerance);
    expectNear(other.spikes[i].amps, factor * spike.amps, 'spike', tolerance);
  });
}

test('twice the current is twice every current, and the same places, times and shares', () => {
  fc.assert(
    fc.property(ordinary, fc.double({ noNaN: true, min: 0.5, max: 4 }), (trace, factor) => {
      const one = measured(trace);
      const other = measured(
        withSides(trace, (side) => ({ ...side, amps: side.amps.map((value) => factor * value) })),
      );
      for (const side of ROOM.sides) expectScaled(one.sides[side], other.sides[side], factor);
      for (const side of ROOM.sides) expectNear(other.share?.[side] ?? null, one.share?.[side] ?? null);
      expectNear(other.lagS, one.lagS);
    }),
    RUNS,
  );
});

test('a clamp that is off by up to two amperes at rest reads the same stroke', () => {
  fc.assert(
    fc.property(ordinary, fc.double({ noNaN: true, min: -2, max: 2 }), (trace, offset) => {
      const one = measured(trace);
      const other = measured(
        withSides(trace, (side) => ({ ...side, amps: side.amps.map((value) => value + offset) })),
      );
      for (const side of ROOM.sides) {
        // Which samples count as rest may differ by one or two: a thousandth, no more.
        expectScaled(one.sides[side], other.sides[side], 1, 0.001);
        expectNear(other.sides[side].offsetAmps, (one.sides[side].offsetAmps ?? 0) + offset, 'offset', 0.001);
      }
    }),
    RUNS,
  );
});

test('when the logger began changes nothing but the times of the phases', () => {
  fc.assert(
    fc.property(ordinary, fc.integer({ min: -40, max: 4000 }), (trace, eighths) => {
      const one = measured(trace);
      // Eighths of a second at rates of powers of two: the sums are exact, so that no rounding decides a tie.
      const laterS = eighths / 8;
      const other = measured(
        withSides(trace, (side) => ({ ...side, timesS: side.timesS.map((time) => time + laterS) })),
      );
      for (const side of ROOM.sides) {
        expectScaled(one.sides[side], other.sides[side], 1);
        expectNear(other.sides[side].phases.startS, one.sides[side].phases.startS + laterS);
      }
      expectNear(other.lagS, one.lagS);
    }),
    RUNS,
  );
});

test('the order in which the sides were sent changes nothing', () => {
  fc.assert(
    fc.property(ordinary, (trace) => {
      const swapped = { ...trace, sides: trace.sides.toReversed() };
      const [one, other] = [measured(trace), measured(swapped)];
      expect(other.sides).toEqual(one.sides);
      expect([other.share, other.lagS, other.supplyVolts]).toEqual([one.share, one.lagS, one.supplyVolts]);
    }),
    RUNS,
  );
});

test('reversed polarity is the same stroke when the direction is given', () => {
  fc.assert(
    fc.property(ordinary, (trace) => {
      const reversed = withSides(trace, (side) => ({ ...side, amps: side.amps.map((value) => -value) }));
      const [one, other] = [measured(trace), measured(reversed)];
      for (const side of ROOM.sides) expectScaled(one.sides[side], other.sides[side], 1);
    }),
    RUNS,
  );
});

test('the other direction mirrors every place and leaves every amount', () => {
  fc.assert(
    fc.property(ordinary, (trace) => {
      const other = measured({ ...trace, direction: trace.direction === 'extend' ? 'retract' : 'extend' });
      const one = measured(trace);
      for (const side of ROOM.sides) {
        const mirrored = [...other.sides[side].spikes].reverse();
        expectNear(other.sides[side].runningAmps, one.sides[side].runningAmps);
        expect(mirrored).toHaveLength(one.sides[side].spikes.length);
        mirrored.forEach((spike, i) => {
          expectNear(1 - spike.position, one.sides[side].spikes[i].position);
        });
      }
    }),
    RUNS,
  );
});

test('measuring leaves a record as it was, and nothing behind for the next one', () => {
  fc.assert(
    fc.property(ordinary, ordinary, (trace, next) => {
      const recorded = structuredClone(trace);
      const first = measureStroke(trace, ROOM);
      measureStroke(next, ROOM);
      expect(measureStroke(trace, ROOM)).toEqual(first);
      expect(trace).toEqual(recorded);
    }),
    RUNS,
  );
});
