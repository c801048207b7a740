import { expect, test } from 'vitest';
import { coarseSpread, isTooCoarse, stepAmpsOf } from '../../../../analysis/baseline/coarseSteps.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { changed } from '../support/contexts.ts';
import { foldAll } from '../support/folded.ts';
import { ONE_MOTOR, PLAIN } from '../support/handMade.ts';
import { measureShape } from '../support/measured.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const BUMPS = [4, 9, 13, 17].map((atS, i) => ({ atS, widthS: 2.5, amps: 0.6 + 0.3 * i }));

test.each([0.1, 0.25, 0.5])(
  'the step of a converter of %d A shows in a profile of few levels',
  (stepAmps) => {
    const found = stepAmpsOf(measureShape({ ...PLAIN, stepAmps, bumps: BUMPS }));
    expect(found).toBeGreaterThan(0.4 * stepAmps);
    expect(found).toBeLessThan(1.1 * stepAmps);
  },
);

test('a fine sensor shows no step', () => {
  expect(stepAmpsOf(measureShape({ ...PLAIN, noiseAmps: 0.1, bumps: BUMPS }))).toBe(0);
});

test('a spread of some steps is told, with their error; one of a step is not', () => {
  const measured = measureShape({ ...PLAIN, stepAmps: 0.5, bumps: BUMPS });
  const step = stepAmpsOf(measured);
  expect(isTooCoarse(measured, 'spreadAmps', 1.5 * step)).toBe(true);
  expect(isTooCoarse(measured, 'spreadAmps', 4 * step)).toBe(false);
  expect(coarseSpread(measured, 'spreadAmps', 4 * step)).toBeCloseTo(0.15, 9);
  expect(coarseSpread(measured, 'runningAmps', 8)).toBe(0);
});

test('a spread that flickers by a step of the sensor is beyond no limit', () => {
  const random = new Random(5);
  const events = strokeEvents(120, ONE_MOTOR, 3).map((event) => {
    const course = 1.1 + 0.1 * random.normal(0, 1);
    return changed(event, {
      all: ({ profile }) => ({
        profile: profile.map((_, bin) => 0.5 * Math.round((8 + course * Math.sin((6 * bin) / 63)) / 0.5)),
      }),
    });
  });
  const spreads = foldAll(ONE_MOTOR, events).judgements.flatMap(({ expectations }) =>
    expectations.filter(({ measure, beyond }) => measure === 'spreadAmps' && beyond !== null),
  );
  expect(spreads.length).toBeGreaterThan(80);
  expect(spreads.filter(({ beyond }) => beyond)).toEqual([]);
});
