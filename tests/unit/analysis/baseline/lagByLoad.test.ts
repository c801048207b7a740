import { expect, test } from 'vitest';
import { unexplainedLag } from '../../../../analysis/baseline/lagByLoad.ts';
import { orderEvents } from '../../../../analysis/room/fold.ts';
import { changed, remeasured } from '../support/contexts.ts';
import { foldAll, kindsOf } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { serviceEvent, strokeEvents } from '../support/strokeEvents.ts';

test.each([
  { name: 'the last side works harder and is later for it', moved: 1, harder: 0.2, left: 0 },
  { name: 'it is later than its load accounts for', moved: 2, harder: 0.1, left: 1.3 },
  { name: 'it works less and is later', moved: 1, harder: -0.2, left: 1 },
  { name: 'the first side works harder and is later for it', moved: -1, harder: -0.2, left: 0 },
  { name: 'nothing but the lag has moved', moved: -0.4, harder: 0, left: -0.4 },
])('$name', ({ moved, harder, left }) => {
  expect(unexplainedLag(moved, harder, 20)).toBeCloseTo(left, 12);
});

test('a side that is late by itself is said, one that its load makes late is not beyond its limits', () => {
  const late = strokeEvents(60, ROOM, 4, (i) => (i >= 40 ? { lagS: 1.5 } : {}));
  expect(kindsOf(foldAll(ROOM, late).warnings)).toEqual(['late-side']);
  const crooked = strokeEvents(44, ROOM, 4, (i) => (i >= 40 ? { lagS: 0.7, factors: [0.93, 1.07] } : {}));
  const beyond = foldAll(ROOM, crooked)
    .judgements.slice(40)
    .flatMap(({ expectations }) =>
      expectations.filter(({ measure }) => measure === 'lagS').map((lag) => lag.beyond),
    );
  expect(beyond).toEqual(Array(8).fill(false));
});

/** Strokes that end without a stop, the rear side so much later than the front, seconds; null: both at once. */
const switchedOff = (count: number, lagS: (index: number) => number | null) =>
  strokeEvents(count, ROOM, 4).map((event, index) =>
    remeasured(changed(event, { all: () => ({ endStopAmps: null }) }), () => ({ lagS: lagS(index) })),
  );

/** The sides are switched off together, and from a stroke on the front one is late by 0.8 s. */
const lateFrom = (onset: number, until = Number.POSITIVE_INFINITY) =>
  switchedOff(50, (index) => (index < onset || index >= until ? null : -0.8));

test('sides that were always switched off together, and no longer are, tell which one is late', () => {
  const { warnings } = foldAll(ROOM, lateFrom(40));
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['late-side', 'front']]);
});

/** Each side's own switch ends it, the rear's so much later than the front's, seconds, by the count of strokes. */
const ownSwitches = (lagS: (index: number) => number) =>
  switchedOff(60, (index) => lagS(index) + 0.03 * Math.sin(2.3 * index));

test('sides that end a little apart as ever are held against that, though no stop was read', () => {
  expect(
    foldAll(
      ROOM,
      ownSwitches(() => -0.2),
    ).warnings,
  ).toEqual([]);
  const { warnings } = foldAll(
    ROOM,
    ownSwitches((index) => (index < 40 ? -0.2 : 0.3)),
  );
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['late-side', 'rear']]);
});

test('and it is over once they are switched off together again', () => {
  const { warnings } = foldAll(ROOM, lateFrom(20, 35));
  expect(warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs !== null])).toEqual([
    ['late-side', true],
  ]);
});

test.each([
  { since: 6, said: ['late-side'] },
  { since: 0, said: [] },
])(
  'also while the room learns anew after work, once it was seen to end together: $since strokes after it',
  ({ since, said }) => {
    const adjusted = 14;
    const events = [...lateFrom(adjusted + since), serviceEvent(adjusted, 'adjusted')].sort(orderEvents);
    const { warnings } = foldAll(ROOM, events);
    expect(kindsOf(warnings)).toEqual(said);
    expect(warnings.every(({ clearedAtMs }) => clearedAtMs === null)).toBe(true);
  },
);

test('a side that is late stays said where what is left of the lag is as little as between sides that are switched off together', () => {
  const late = (index: number) => (index < 28 || index % 5 === 0 ? -0.35 : -0.2);
  const { warnings } = foldAll(
    ROOM,
    ownSwitches((index) => (index < 22 ? 0.45 : late(index))),
  );
  expect(warnings.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs])).toEqual([
    ['late-side', 'front', null],
  ]);
});

test('half a second on a stroke of a minute is said where the sides keep much closer together than a hundredth of it', () => {
  const slow = strokeEvents(60, ROOM, 4, (i) => (i < 40 ? {} : { lagS: 0.5 })).map((event) =>
    changed(event, { all: () => ({ durationS: 59 }) }),
  );
  expect(kindsOf(foldAll(ROOM, slow).warnings)).toEqual(['late-side']);
});
