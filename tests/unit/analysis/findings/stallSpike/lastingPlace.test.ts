import { expect, test } from 'vitest';
import { courseContrast } from '../../../../../analysis/findings/stallSpike/courseContrast.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll, kindsOf } from '../../support/folded.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { directionOf, strokeEvents } from '../../support/strokeEvents.ts';

const LEARNT = 30;

interface Bump {
  readonly from: number;
  readonly to: number;
  readonly part: number;
}

/** What is said of peaks in a room that draws more between two places of each stroke, counted from when it had learnt its normal. */
function saidOf(strokes: number, bumpOf: (index: number) => Bump | null) {
  const events = strokeEvents(LEARNT + strokes, ONE_MOTOR, 4, (i) => ({ bump: bumpOf(i - LEARNT) }));
  const { warnings } = foldAll(ONE_MOTOR, events);
  return warnings
    .filter(({ kind }) => kind === 'stall-spike')
    .map(({ openedAtMs, clearedAtMs, ...said }) => ({
      ...said,
      opened: events.findIndex(({ atMs }) => atMs === openedAtMs) - LEARNT,
      cleared: events.findIndex(({ atMs }) => atMs === clearedAtMs) - LEARNT,
    }));
}

const CATCH: Bump = { from: 0.42, to: 0.45, part: 0.12 };

test('a place that catches too gently for any one stroke to tell is told by what they say together', () => {
  const [said, ...others] = saidOf(30, (i) => (i < 0 ? null : CATCH));
  expect(others).toEqual([]);
  expect(said).toMatchObject({ side: 'main', pattern: 'same-place', severity: 'watch' });
  expect(Math.abs((said.position ?? 0) - 0.4375)).toBeLessThan(0.015);
  expect(said.opened).toBeLessThanOrEqual(14);
  expect(said.cleared).toBeLessThan(0);
});

test('it is over some strokes after it no longer catches', () => {
  const mended = 24;
  const said = saidOf(60, (i) => (i < 0 || i >= mended ? null : CATCH));
  expect(said).toHaveLength(1);
  expect(said[0].cleared).toBeGreaterThan(mended + 6);
  expect(said[0].cleared).toBeLessThan(mended + 20);
});

test('peaks of single strokes that told a place also tell that it is over, and it is not said again', () => {
  const mended = 24;
  const peak = { position: 0.435, amps: 12, widthS: 0.4 };
  const isFaulty = (i: number) => i >= LEARNT && i < LEARNT + mended;
  const events = strokeEvents(LEARNT + 60, ONE_MOTOR, 4, (i) =>
    isFaulty(i) ? { bump: { ...CATCH, part: 0.3 }, spikes: [[peak]] } : {},
  );
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings.map(({ kind }) => kind)).toEqual(['stall-spike']);
  const cleared = events.findIndex(({ atMs }) => atMs === warnings[0].clearedAtMs);
  expect(cleared).toBeLessThan(LEARNT + mended + 8);
});

test('strokes that end before their end tell of no place', () => {
  const events = strokeEvents(LEARNT + 40, ONE_MOTOR, 4, (i) => (i < LEARNT + 10 ? {} : { bump: CATCH })).map(
    (event, i) =>
      i < LEARNT || directionOf(i) === 'retract'
        ? event
        : changed(event, {
            all: ({ durationS, chargeAs }) => ({ durationS: 0.86 * durationS, chargeAs: 0.86 * chargeAs }),
          }),
  );
  expect(kindsOf(foldAll(ONE_MOTOR, events).warnings)).toEqual(['short-travel']);
});

const PLACES = [0.2, 0.62, 0.34, 0.81, 0.48, 0.12, 0.71, 0.27, 0.55, 0.88];

test.each<{ name: string; bumpOf: (index: number) => Bump | null }>([
  {
    name: 'comes now here and now there',
    bumpOf: (i) => (i < 0 ? null : { ...CATCH, from: PLACES[i % 10], to: PLACES[i % 10] + 0.03 }),
  },
  {
    name: 'comes on one way alone',
    bumpOf: (i) => (i < 0 || directionOf(LEARNT + i) === 'extend' ? null : CATCH),
  },
  {
    name: 'is of a third of the travel',
    bumpOf: (i) => (i < 0 ? null : { from: 0.35, to: 0.68, part: 0.12 }),
  },
  { name: 'was always there', bumpOf: () => CATCH },
  {
    name: 'was always there and lies a little further on',
    bumpOf: (i) => (i < 0 ? CATCH : { ...CATCH, from: 0.45, to: 0.48 }),
  },
  {
    name: 'lies where seals are pressed',
    bumpOf: (i) => (i < 0 ? null : { from: 0.01, to: 0.04, part: 0.12 }),
  },
  { name: 'came once', bumpOf: (i) => (i === 3 ? { ...CATCH, part: 0.3 } : null) },
])('what a side draws more that $name is no place', ({ bumpOf }) => {
  expect(saidOf(40, bumpOf)).toEqual([]);
});

const flat = (amps: number) => new Array<number>(64).fill(amps);

test('a level, a slope and bumps that a level goes over leave nothing of the course', () => {
  const bumped = flat(5).map((amps, bin) => (bin === 30 ? amps + 2 : amps));
  const departs = (profile: readonly (number | null)[], usual: readonly (number | null)[]) =>
    Math.max(...(courseContrast(profile, usual) ?? []).map(Math.abs));
  expect(departs(flat(6), flat(5))).toBeCloseTo(0, 9);
  expect(
    departs(
      bumped.map((amps) => 1.3 * amps),
      bumped,
    ),
  ).toBeCloseTo(0, 9);
  expect(
    departs(
      bumped.map((amps) => amps - 1),
      bumped,
    ),
  ).toBeCloseTo(0, 9);
  expect(departs(bumped, flat(5))).toBeCloseTo(0.4, 9);
  expect(
    courseContrast(
      flat(5).map((amps, bin) => (bin < 40 ? null : amps)),
      flat(5),
    ),
  ).toBeNull();
});
