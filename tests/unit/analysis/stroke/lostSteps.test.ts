import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { median } from '../../../../analysis/statistics/median.ts';
import { lostSteps } from '../../../../analysis/stroke/signal/lostSteps.ts';
import type { SideTrace } from '../../../../analysis/trace.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { ONE_MOTOR, sideOf, traceOf } from '../support/handMade.ts';

const STEP_S = 0.02;
const steps = (count: number, of: (i: number) => number) =>
  Float64Array.from({ length: count }, (_, i) => of(i));

test.each([
  { name: 'every sample is there', of: () => STEP_S, lost: 0 },
  { name: 'the clock trembles by a third', of: (i: number) => STEP_S * (1 + 0.3 * Math.sin(7 * i)), lost: 0 },
  { name: 'one in ten is not there', of: (i: number) => (i % 10 === 0 ? 2 : 1) * STEP_S, lost: 100 },
  {
    name: 'four in a row are not there now and then',
    of: (i: number) => (i % 50 === 0 ? 5 : 1) * STEP_S,
    lost: 80,
  },
  { name: 'it sleeps while little happens', of: (i: number) => (i < 700 ? 1 : 10) * STEP_S, lost: 0 },
  {
    name: 'it writes down changes, whenever they come',
    of: (i: number) => STEP_S * (1 + 5 * ((i * 0.618) % 1) ** 2),
    lost: 0,
  },
  { name: 'nothing was recorded during a pause', of: (i: number) => (i === 500 ? 600 : 1) * STEP_S, lost: 0 },
])('$name', ({ of, lost }) => {
  const taken = steps(1000, of);
  expect(lostSteps(taken, median(taken))).toBe(lost);
});

/** The samples that chance spares, each with its time. */
function thinned({ side, timesS, amps }: SideTrace, lost: number): SideTrace {
  const random = new Random(9);
  const kept = Array.from(timesS.keys()).filter(() => random.uniform(0, 1) > lost);
  return {
    side,
    timesS: Float64Array.from(kept, (i) => timesS[i]),
    amps: Float64Array.from(kept, (i) => amps[i]),
  };
}

test('samples that a record of times leaves out are missed as those that it tells as such', () => {
  const [whole] = traceOf([sideOf('main', { noiseAmps: 0.1 })], 'extend').sides;
  const doubtsOf = (lost: number) => {
    const analysis = measureStroke(traceOf([thinned(whole, lost)], 'extend'), ONE_MOTOR);
    return (analysis.doubts ?? []).map(({ doubt }) => doubt);
  };
  expect(doubtsOf(0.05)).toEqual([]);
  expect(doubtsOf(0.22)).toEqual(['gaps']);
  expect(doubtsOf(0.4)).toEqual(['gaps']);
});

test('where nothing was recorded for a while it is told how long, and not that none of the samples are missing', () => {
  const [whole] = traceOf([sideOf('main', { noiseAmps: 0.1 })], 'extend').sides;
  const silent = {
    ...whole,
    timesS: whole.timesS.map((timeS) => (timeS > 10 ? timeS + 5 : timeS)),
  };
  const { doubts } = measureStroke(traceOf([silent], 'extend'), ONE_MOTOR);
  expect(doubts).toMatchObject([{ doubt: 'gaps', detail: 'For 5.0 s there is no sample at all.' }]);
});
