import { expect, test } from 'vitest';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { START_MS, strokeEvents } from '../../support/strokeEvents.ts';

/** What is said of a history some of whose strokes are told to have begun at one moment, the last of them still later. */
function saidOf(together: (index: number) => boolean, strokes = 40) {
  const events = strokeEvents(strokes, ROOM, 11).map((event, index) =>
    together(index) ? { ...event, atMs: START_MS + 20 * 43_200_000 } : event,
  );
  return foldAll(ROOM, events).warnings.map(({ kind, side, evidence, firstStrokeId, clearedAtMs }) => ({
    kind,
    side,
    doubt: evidence.doubt,
    firstStrokeId,
    lasts: clearedAtMs === null,
  }));
}

test('a clock that gives stroke after stroke one and the same moment is doubted once, for as long as it does', () => {
  const said = { kind: 'sensor-doubt', side: null, doubt: 'clock', firstStrokeId: 'stroke-000025' };
  expect(saidOf((index) => index >= 20)).toEqual([{ ...said, lasts: true }]);
  expect(saidOf((index) => index >= 20 && index < 32)).toEqual([{ ...said, lasts: false }]);
});

test('two loggers that tell twice of one stroke have no clock that stands', () => {
  expect(saidOf((index) => index >= 20 && index < 24)).toEqual([]);
});
