import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { measureStroke } from '../../../../../analysis/measureStroke.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR, sideOf, traceOf } from '../../support/handMade.ts';
import { directionOf, START_MS } from '../../support/strokeEvents.ts';

const DAY_MS = 86_400_000;
/** The room draws now less and now more, so that what a reading at rest must pass to be said moves about it. */
const DRAWN_AMPS = [9.2, 9.3, 9.2, 10.6, 10.4, 10.5, 10.7, 10.4, 10.6, 10.5];

function strokeAt(index: number, offsetAmps: number): StrokeEvent {
  const runningAmps = DRAWN_AMPS[index % DRAWN_AMPS.length];
  const side = sideOf('main', { runningAmps, offsetAmps, noiseAmps: 0.05, seed: index + 1 });
  return {
    type: 'stroke',
    strokeId: `stroke-${index}`,
    atMs: START_MS + index * DAY_MS,
    direction: directionOf(index),
    ambientC: null,
    excluded: false,
    analysis: measureStroke(traceOf([side], directionOf(index)), ONE_MOTOR),
  };
}

const zerosSaid = (offsets: readonly number[]) =>
  foldAll(
    ONE_MOTOR,
    offsets.map((amps, index) => strokeAt(index, amps)),
  ).warnings.map(({ evidence, firstStrokeId, clearedAtMs }) => ({
    doubt: evidence.doubt,
    firstStrokeId,
    lasts: clearedAtMs === null,
  }));

const OFF = Array.from({ length: 40 }, () => 1.5);

test('a zero that is off is said once for as long as the sensor at rest reads most of that', () => {
  expect(zerosSaid(OFF)).toEqual([{ doubt: 'offset', firstStrokeId: 'stroke-1', lasts: true }]);
});

test('and is over once most of it is gone, though the sensor never reads nothing at all', () => {
  expect(zerosSaid([...OFF, ...OFF.map(() => 0.5)])).toEqual([
    { doubt: 'offset', firstStrokeId: 'stroke-1', lasts: false },
  ]);
});

test('noise is said once for as long as most of it lasts, though what it must pass moves about it', () => {
  const strokes = DRAWN_AMPS.concat(DRAWN_AMPS, DRAWN_AMPS).map((runningAmps, index): StrokeEvent => {
    const side = sideOf('main', { runningAmps, noiseAmps: index < 4 ? 1.2 : 0.9, seed: index + 1 });
    return {
      ...strokeAt(index, 0),
      analysis: measureStroke(traceOf([side], directionOf(index)), ONE_MOTOR),
    };
  });
  const said = foldAll(ONE_MOTOR, strokes).warnings.map(({ evidence, clearedAtMs }) => [
    evidence.doubt,
    clearedAtMs,
  ]);
  expect(said).toEqual([['noise', null]]);
});
