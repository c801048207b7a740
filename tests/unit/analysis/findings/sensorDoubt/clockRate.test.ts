import { expect, test } from 'vitest';
import type { SideMeasures } from '../../../../../analysis/measures.ts';
import { type Change, changed, contextsAfterLearning } from '../../support/contexts.ts';
import { courseBy } from '../../support/courseBy.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

/** Seconds against the usual ones, and the usual course of the current as far as `placeOf` tells. */
function timed(times: number, placeOf: (at: number) => number = (at) => at): Change {
  return (measured) => ({ durationS: times * measured.durationS, profile: courseBy(measured, placeOf) });
}

const rates = (strokes: readonly { rate: number | null }[]) => strokes.map(({ rate }) => rate);

test.each([
  { name: 'take a quarter longer', change: timed(1.25), told: Math.log(1.25) },
  { name: 'take a fifth less, their course whole', change: timed(0.8), told: Math.log(0.8) },
  {
    name: 'lack a third out of their middle',
    change: timed(0.66, (at) => (at < 0.5 ? at * 0.66 : 1 - (1 - at) * 0.66)),
    told: Math.log(0.66),
  },
])('strokes that $name speak against the clock once two of each direction do', ({ change, told }) => {
  const strokes = contextsAfterLearning(5, () => ({ all: change }));
  expect(rates(strokes).slice(0, 3)).toEqual([null, null, null]);
  for (const { rate, doubtful } of strokes.slice(3)) {
    expect(rate).toBeCloseTo(told, 1);
    expect([...doubtful].sort()).toEqual(['front', 'rear']);
  }
});

test.each([
  { name: 'end early, at the beginning of their course', change: timed(0.7, (at) => at * 0.7) },
  { name: 'begin late, at the end of it', change: timed(0.7, (at) => 1 - (1 - at) * 0.7) },
  {
    name: 'take longer because they run harder',
    change: (measured: SideMeasures) => ({
      durationS: 1.25 * measured.durationS,
      runningAmps: 1.3 * measured.runningAmps,
    }),
  },
  {
    name: 'are short one way only',
    change: ((measured, direction) => ({
      durationS: measured.durationS * (direction === 'extend' ? 0.75 : 1),
    })) satisfies Change,
  },
])('strokes that $name do not', ({ change }) => {
  expect(rates(contextsAfterLearning(6, () => ({ all: change })))).toEqual(Array(6).fill(null));
});

test('a room that one side slows for long takes no longer by its clock: the side that lags least still runs later', () => {
  const slower: Change = ({ durationS }) => ({ durationS: 1.4 * durationS });
  const harder: Change = (measured) => ({
    durationS: 1.4 * measured.durationS,
    runningAmps: 1.4 * measured.runningAmps,
  });
  const strokes = contextsAfterLearning(30, () => ({ front: harder, rear: slower }));
  expect(rates(strokes)).toEqual(Array(30).fill(null));
});

test.each([
  {
    name: 'on another supply, which lowers the stall by less than it slows the room',
    stall: 0.92,
    rate: null,
  },
  { name: 'on the same supply', stall: 1, rate: Math.log(1.3) },
])('strokes that take almost a third longer $name, where nobody recorded it', ({ stall, rate }) => {
  const slower: Change = ({ durationS, inrushAmps, endStopAmps }) => ({
    durationS: 1.3 * durationS,
    inrushAmps: stall * inrushAmps,
    endStopAmps: stall * (endStopAmps ?? 0),
  });
  const [last] = contextsAfterLearning(6, () => ({ all: slower }), { volts: null }).slice(-1);
  if (rate === null) expect(last.rate).toBeNull();
  else expect(last.rate).toBeCloseTo(rate, 1);
});

test('strokes that hold as many samples as ever at twice the rate are told even without any course to tell by', () => {
  const flat =
    (rateHz: number): Change =>
    ({ runningAmps }) => ({
      rateHz,
      profile: Array<number>(64).fill(runningAmps),
    });
  const twice: Change = (measured, direction) => ({
    ...flat(100)(measured, direction),
    durationS: measured.durationS / 2,
  });
  const strokes = contextsAfterLearning(8, (i) => (i < 4 ? {} : { all: twice }), {}, { all: flat(50) });
  expect(rates(strokes).slice(0, 7)).toEqual(Array(7).fill(null));
  for (const { rate } of strokes.slice(7)) expect(rate).toBeCloseTo(-Math.log(2), 1);
});

test('once said it goes on over a stroke that is odd besides, and ends with the first that takes its usual time', () => {
  const odd: Change = (measured) => ({
    durationS: 1.25 * measured.durationS,
    runningAmps: 1.3 * measured.runningAmps,
  });
  const strokes = contextsAfterLearning(6, (i) => (i === 5 ? {} : { all: i === 4 ? odd : timed(1.25) }));
  expect(rates(strokes).map((rate) => rate !== null)).toEqual([false, false, false, true, true, false]);
});

test('strokes that take a fifth longer on a supply that nobody recorded, whose stall fell by less, are no clock', () => {
  const weak = { from: 40, until: 44 };
  const events = strokeEvents(60, ONE_MOTOR, 3, () => ({ volts: null, ambientC: null })).map((event, i) =>
    i < weak.from || i >= weak.until
      ? event
      : changed(event, {
          all: ({ durationS, inrushAmps, endStopAmps }) => ({
            durationS: 1.21 * durationS,
            inrushAmps: 0.92 * inrushAmps,
            endStopAmps: 0.92 * (endStopAmps ?? 0),
          }),
        }),
  );
  expect(foldAll(ONE_MOTOR, events).warnings).toEqual([]);
});

test.each([
  { name: 'a clutch holds at one current on every supply, are no clock', clutch: true, said: [] },
  { name: 'stall as ever, are one', clutch: false, said: ['clock'] },
])(
  'strokes that take a fifth longer on a supply that nobody recorded, whose ends $name',
  ({ clutch, said }) => {
    const events = strokeEvents(60, ONE_MOTOR, 3, () => ({ volts: null, ambientC: null })).map((event, i) => {
      // Some supplies of its first stays, and a battery that is no longer what it was.
      const slower = i < 40 ? [1, 0.95, 1.04, 0.98, 1.06][Math.floor(i / 4) % 5] : 1.21;
      return changed(event, {
        all: ({ durationS, inrushAmps, endStopAmps }) => ({
          durationS: slower * durationS,
          inrushAmps: clutch ? inrushAmps / slower : inrushAmps,
          endStopAmps: clutch ? 21 + (i % 3) / 20 : i < 40 ? (endStopAmps ?? 0) / slower : endStopAmps,
        }),
      });
    });
    expect(foldAll(ONE_MOTOR, events).warnings.map(({ evidence }) => evidence.doubt)).toEqual(said);
  },
);
