import { expect, test } from 'vitest';
import type { SideMeasures } from '../../../../../analysis/measures.ts';
import { type Change, type Changes, contextsAfterLearning } from '../../support/contexts.ts';

const NO_REST: Changes = { all: () => ({ offsetAmps: null }) };

function reads(more: { running: number; stall?: number; longer?: number }): Change {
  return (measured) => ({
    runningAmps: measured.runningAmps + more.running,
    inrushAmps: measured.inrushAmps + (more.stall ?? 0),
    endStopAmps: (measured.endStopAmps ?? 0) + (more.stall ?? 0),
    durationS: measured.durationS * (more.longer ?? 1),
  });
}

/** A reversed current reads negative: what is added to its reading takes from its size. */
const bothWays =
  (amps: number): Change =>
  (measured, direction) => ({ runningAmps: measured.runningAmps + (direction === 'extend' ? amps : -amps) });

function zerosOf(change: Change, always: Changes = NO_REST): (number | undefined)[] {
  const strokes = contextsAfterLearning(5, () => ({ front: change }), {}, always);
  return strokes.map(({ zeros }) => zeros.get('front'));
}

test.each([
  { name: 'more one way and as much less the other', change: bothWays(1.8), amps: 1.8 },
  { name: 'less one way and as much more the other', change: bothWays(-1.8), amps: -1.8 },
  {
    name: 'as much more stalled as running, and is no slower',
    change: reads({ running: 4, stall: 4 }),
    amps: 4,
  },
])('without a rest, a side that reads $name has a moved zero by the fourth stroke', ({ change, amps }) => {
  const told = zerosOf(change);
  expect(told[0]).toBeUndefined();
  for (const zero of told.slice(3)) expect(Math.abs((zero ?? 0) - amps)).toBeLessThan(0.4);
});

test.each([
  { name: 'friction, both ways alike, the stall as ever', change: reads({ running: 4, longer: 1.12 }) },
  {
    name: 'friction, though the stall read more by chance',
    change: reads({ running: 4, stall: 4, longer: 1.12 }),
  },
  {
    name: 'friction whose start and stop are held low, so that the load seems to be all there is',
    change: reads({ running: 12, stall: 12, longer: 1.08 }),
  },
  {
    name: 'another scale',
    change: (measured: SideMeasures) => ({
      runningAmps: 1.5 * measured.runningAmps,
      endStopAmps: 1.5 * (measured.endStopAmps ?? 0),
    }),
  },
  { name: 'half an ampere', change: bothWays(0.5) },
])('$name is none', ({ change }) => {
  expect(zerosOf(change)).toEqual(Array(5).fill(undefined));
});

test('where a rest is seen the zero is taken off by measuring, and nothing is said', () => {
  expect(zerosOf(bothWays(1.8), { all: () => ({ offsetAmps: 1.8 }) })).toEqual(Array(5).fill(undefined));
});

test('where no stall is read, a start that reads as much more tells the zero, and one that stands tells friction', () => {
  const NO_STALL: Changes = { all: () => ({ offsetAmps: null, endStopAmps: null }) };
  const zeros = (inrush: number) =>
    contextsAfterLearning(
      6,
      () => ({
        front: (measured) => ({
          runningAmps: measured.runningAmps + 9,
          inrushAmps: measured.inrushAmps + inrush,
        }),
      }),
      {},
      NO_STALL,
    ).map(({ zeros: told }) => told.get('front'));
  for (const zero of zeros(9).slice(3)) expect(Math.abs((zero ?? 0) - 9)).toBeLessThan(1);
  expect(zeros(0)).toEqual(Array(6).fill(undefined));
});

test('a start that stands though running and end read as much more tells a load that the end follows, and no zero', () => {
  const held: Change = (measured) => ({
    runningAmps: measured.runningAmps + 6,
    endStopAmps: (measured.endStopAmps ?? 0) + 6,
  });
  expect(zerosOf(held)).toEqual(Array(5).fill(undefined));
});

test('an end that stands, held low by a clutch, tells a load, though the starts read as much more by chance', () => {
  const held: Change = (measured) => ({
    runningAmps: measured.runningAmps + 4,
    inrushAmps: measured.inrushAmps + 4,
  });
  const always: Changes = {
    all: ({ endStopAmps }) => ({ offsetAmps: null, endStopAmps: 0.6 * (endStopAmps ?? 0) }),
  };
  expect(zerosOf(held, always)).toEqual(Array(5).fill(undefined));
});

test('what the other side draws more of is a load that moved, though the start reads as much less: no zero', () => {
  const zeros = (borne: number) =>
    contextsAfterLearning(
      6,
      () => ({ front: reads({ running: -6, stall: -6 }), rear: reads({ running: borne }) }),
      {},
      { all: () => ({ offsetAmps: null, endStopAmps: null }) },
    ).map((stroke) => stroke.zeros.get('front'));
  expect(zeros(4)).toEqual(Array(6).fill(undefined));
  expect(zeros(0).some((zero) => zero !== undefined)).toBe(true);
});

test('what the other side draws less of is a load that moved, though start and stop read as much more: no zero', () => {
  const zeros = (shed: number) =>
    contextsAfterLearning(
      5,
      () => ({ front: reads({ running: 4, stall: 4 }), rear: reads({ running: -shed }) }),
      {},
      NO_REST,
    ).map((stroke) => stroke.zeros.get('front'));
  expect(zeros(3)).toEqual(Array(5).fill(undefined));
  expect(zeros(0).some((zero) => zero !== undefined)).toBe(true);
});

test('a start that is held as low as the motor runs follows the load, and tells no zero', () => {
  const zeros = (start: number) =>
    contextsAfterLearning(
      6,
      () => ({
        front: (measured) => ({
          runningAmps: measured.runningAmps + 4,
          inrushAmps: start * measured.runningAmps + 4,
        }),
      }),
      {},
      {
        all: (measured) => ({
          offsetAmps: null,
          endStopAmps: null,
          inrushAmps: start * measured.runningAmps,
        }),
      },
    ).map(({ zeros: told }) => told.get('front'));
  expect(zeros(1)).toEqual(Array(6).fill(undefined));
  expect(zeros(3).some((zero) => zero !== undefined)).toBe(true);
});
