import fc from 'fast-check';
import type { SideTrace, StrokeTrace } from '../../../../analysis/trace.ts';
import { PLAIN, type Shape, sideOf } from './handMade.ts';

/** Seeded, so that a failure in one run is one in every run; told as it came, since making it smaller takes minutes. */
export const SEEDED = { seed: 20_26, numRuns: 150, endOnFailure: true } as const;

const finite = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 });
const NAMES = ['front', 'rear', 'main', 'left', 'x'] as const;

/** Strictly rising times from steps of any sort. */
function timesOf(count: number): fc.Arbitrary<Float64Array> {
  const even = fc
    .constantFrom(0.0002, 0.001, 0.005, 0.02, 0.1, 1, 60)
    .map((stepS) => Float64Array.from({ length: count }, (_, i) => i * stepS));
  const uneven = fc
    .array(fc.double({ noNaN: true, min: 1e-4, max: 5 }), { minLength: count, maxLength: count })
    .map((steps) => {
      let now = 0;
      return Float64Array.from(steps, (step) => {
        now += step;
        return now;
      });
    });
  return fc.oneof({ weight: 3, arbitrary: even }, uneven);
}

/** Currents of every sort that a broken or hostile logger may send. */
function ampsOf(count: number): fc.Arbitrary<Float64Array> {
  const filled = (of: (i: number) => number) => Float64Array.from({ length: count }, (_, i) => of(i));
  const anyOf = (value: fc.Arbitrary<number>) =>
    fc.array(value, { minLength: count, maxLength: count }).map((values) => Float64Array.from(values));
  return fc.oneof(
    anyOf(finite),
    anyOf(fc.double({ noNaN: true, min: -20, max: 20 })),
    anyOf(fc.constantFrom(0, 1e-300, -1e-300, 1e-9, 1e9, -1e9, 8)),
    anyOf(fc.constantFrom(Number.NaN, 0, 8)),
    finite.map((value) => filled(() => value)),
    fc.constant(filled(() => 0)),
    finite.map((value) => filled((i) => (i % 2 === 0 ? value : -value))),
    fc.integer({ min: 0, max: count - 1 }).map((at) => filled((i) => (i === at || i === 0 ? 9 : Number.NaN))),
    finite.map((value) => filled((i) => value * i)),
    fc.integer({ min: 0, max: count }).map((from) => filled((i) => (i >= from ? 9 : 0))),
    fc
      .tuple(fc.integer({ min: 0, max: count }), finite)
      .map(([to, value]) => filled((i) => (i > count / 8 && i < to ? value : 0))),
  );
}

const hostileSide = (name: string): fc.Arbitrary<SideTrace> =>
  fc
    .oneof(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 12, max: 300 }))
    .chain((count) => fc.tuple(timesOf(count), ampsOf(count)))
    .map(([timesS, amps]) => ({ side: name, timesS, amps }));

/** A stroke that looks like one, of any size, rate and wiring. */
const shapedSide = (name: string): fc.Arbitrary<SideTrace> => shape.map((drawn) => sideOf(name, drawn));

const shape: fc.Arbitrary<Shape> = fc
  .record({
    rateHz: fc.constantFrom(10, 20, 50, 100),
    idleBeforeS: fc.double({ noNaN: true, min: 0, max: 2 }),
    idleAfterS: fc.double({ noNaN: true, min: 0, max: 2 }),
    movingS: fc.double({ noNaN: true, min: 0.2, max: 40 }),
    runningAmps: fc.double({ noNaN: true, min: 0.05, max: 40 }),
    ratio: fc.double({ noNaN: true, min: 1, max: 9 }),
    stops: fc.boolean(),
    noiseAmps: fc.double({ noNaN: true, min: 0, max: 0.4 }),
    offsetAmps: fc.double({ noNaN: true, min: -2, max: 2 }),
    sign: fc.constantFrom(1 as const, -1 as const),
    seed: fc.nat(),
  })
  .map(({ ratio, stops, ...drawn }) => ({
    ...PLAIN,
    ...drawn,
    inrushAmps: ratio * drawn.runningAmps,
    stopAmps: stops ? 0.9 * ratio * drawn.runningAmps : null,
  }));

const side = (name: string) => fc.oneof(hostileSide(name), shapedSide(name));

/** Any stroke of finite numbers and missed samples, with none, one or both sides of the room or strangers. */
export const anyStroke: fc.Arbitrary<StrokeTrace> = fc.record({
  direction: fc.constantFrom('extend' as const, 'retract' as const, null),
  sides: fc
    .uniqueArray(fc.constantFrom(...NAMES), { minLength: 1, maxLength: 3 })
    .chain((names) => fc.tuple(...names.map(side))),
  supply: fc.option(
    fc.integer({ min: 1, max: 40 }).chain((count) =>
      fc.record({
        timesS: timesOf(count),
        volts: fc
          .array(fc.oneof(fc.double({ noNaN: true, min: 0, max: 16 }), finite), {
            minLength: count,
            maxLength: count,
          })
          .map((volts) => Float64Array.from(volts)),
      }),
    ),
    { nil: null },
  ),
  ambientC: fc.option(fc.double({ noNaN: true, min: -60, max: 70 }), { nil: null }),
});
