import { expect, test } from 'vitest';
import type { SideMeasures } from '../../../../../analysis/measures.ts';
import { type Change, changed } from '../../support/contexts.ts';
import { cutCourse } from '../../support/courseBy.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

const FROM = 40;
const STROKES = 80;

/** What is said of a room of one motor whose strokes are changed from `FROM` on. */
const saidOf = (volts: number | null, change: Change) => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 4, () => ({ volts, ambientC: 20 })).map((event, i) =>
    i < FROM ? event : changed(event, { all: change }),
  );
  return foldAll(ONE_MOTOR, events).warnings.map(({ kind }) => kind);
};

/** A charger that nobody recorded holds its volts while the room runs; the stall it cannot feed, and that reads as ever. */
const onCharger = ({ durationS }: SideMeasures) => ({ durationS: 0.88 * durationS });

test('a room that runs faster on a charger calls nobody, though its stall tells nothing of it: its course is whole', () => {
  expect(saidOf(null, onCharger)).toEqual([]);
});

test('a room that a limit switch ends is quickened by a charger by more than the volts grow: what the winding takes does not', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 4, () => ({ volts: null, ambientC: 20 })).map((event, i) =>
    changed(event, {
      all: ({ durationS, inrushAmps }) => ({
        // A start that is read now at its peak and now beside it tells no turns.
        inrushAmps: inrushAmps * (0.9 + 0.15 * Math.sin(2.4 * i)),
        endStopAmps: null,
        durationS: i < FROM ? durationS : 0.82 * durationS,
      }),
    }),
  );
  expect(foldAll(ONE_MOTOR, events).warnings.map(({ kind }) => kind)).toEqual([]);
});

test('a room that takes as little time and shows a part of its course only ends its travel early', () => {
  const said = saidOf(null, (measured) => ({
    ...onCharger(measured),
    profile: cutCourse(measured, 0.88, 'extend'),
  }));
  expect(said).toEqual(['short-travel']);
});

test('a room that lacks its usual stop did not go all the way, however its course looks', () => {
  const said = saidOf(null, (measured, direction) =>
    direction === 'extend' ? { ...onCharger(measured), endStopAmps: null } : {},
  );
  expect(said).toEqual(['short-travel']);
});

test('where the supply is recorded no charger explains that strokes take less of their time', () => {
  expect(saidOf(12.6, onCharger)).toEqual(['short-travel']);
});

test.each([null, 12.6])(
  'magnets that lost some of their field make a motor draw more and turn faster (supply: %s): its travel is no shorter',
  (volts) => {
    const field = 0.8;
    const said = saidOf(volts, ({ runningAmps, runningAmpsP90, durationS, profile }) => ({
      runningAmps: runningAmps / field,
      runningAmpsP90: runningAmpsP90 / field,
      durationS: 0.86 * durationS,
      profile: profile.map((amps) => (amps === null ? null : amps / field)),
    }));
    expect(said).toEqual(['rising-draw']);
  },
);

test('a draw that reads a little less than the field took of the time is no other field: both are read with some doubt', () => {
  const said = saidOf(12.6, ({ runningAmps, runningAmpsP90, durationS, profile }) => ({
    runningAmps: 1.155 * runningAmps,
    runningAmpsP90: 1.155 * runningAmpsP90,
    durationS: 0.85 * durationS,
    profile: profile.map((amps) => (amps === null ? null : 1.155 * amps)),
  }));
  expect(said).toEqual(['rising-draw']);
});
