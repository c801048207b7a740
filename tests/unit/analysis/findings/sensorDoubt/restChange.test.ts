import { expect, test } from 'vitest';
import { changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { directionOf, strokeEvents } from '../../support/strokeEvents.ts';

const FROM = 40;
const UNTIL = 70;

/** What the front side's sensor reads at rest, amperes, and what a stroke of a healthy room draws besides, by stroke. */
interface Rest {
  readonly offset: (stroke: number) => number | null;
  readonly noise?: (stroke: number) => number;
  readonly draws?: (stroke: number) => number;
}

function doubtsOf({ offset, noise = () => 0.05, draws = () => 0 }: Rest): unknown[] {
  const events = strokeEvents(90, ROOM, 4).map((event, i) =>
    changed(event, {
      front: ({ runningAmps }) => ({
        offsetAmps: offset(i),
        noiseAmps: noise(i),
        runningAmps: runningAmps + draws(i),
      }),
    }),
  );
  const { warnings } = foldAll(ROOM, events);
  return warnings
    .filter(({ kind }) => kind === 'sensor-doubt')
    .map(({ side, evidence, clearedAtMs }) => [side, evidence.doubt, clearedAtMs !== null]);
}

const isDuring = (stroke: number) => stroke >= FROM && stroke < UNTIL;
/** A sensor that reads both ways with its sign: less one way by what it is more the other. */
const signed = (stroke: number) => (directionOf(stroke) === 'extend' ? 1 : -1);

test.each([
  { name: 'of the same sign both ways', offset: (i: number) => (isDuring(i) ? 0.82 : 0.02) },
  { name: 'that goes with the direction', offset: (i: number) => signed(i) * (isDuring(i) ? 0.82 : 0.02) },
])('a rest that moved by a tenth of the running current is said, and over when it is back: $name', (rest) => {
  expect(doubtsOf(rest)).toEqual([['front', 'offset', true]]);
});

test('a noise at rest that is eight times as high is said, and over when it is back', () => {
  expect(doubtsOf({ offset: () => 0.02, noise: (i) => (isDuring(i) ? 0.4 : 0.05) })).toEqual([
    ['front', 'noise', true],
  ]);
});

test('a rest that moved by six hundredths of the running current of a strong motor is said as well', () => {
  const draws = () => 14;
  expect(doubtsOf({ offset: (i) => (isDuring(i) ? -1.4 : -0.1), draws })).toEqual([
    ['front', 'offset', true],
  ]);
});

test('without any rest a noise that is twelve times as high is said, and one that goes with a motor is not', () => {
  const noisy = (amps: number) =>
    doubtsOf({ offset: () => null, noise: (i) => (isDuring(i) ? amps : 0.1), draws: () => 12 });
  expect(noisy(1.2)).toEqual([['front', 'noise', true]]);
  expect(noisy(0.3)).toEqual([]);
});

test('the noise of a running motor is not held against that of a rest', () => {
  const offset = (i: number) => (isDuring(i) ? null : 0.02);
  expect(doubtsOf({ offset, noise: (i) => (isDuring(i) ? 0.6 : 0.05) })).toEqual([]);
});

test.each([
  { name: 'set to zero anew now and then', offset: (i: number) => 0.25 * Math.sin(3 * Math.floor(i / 6)) },
  { name: 'that was off by as much all along', offset: () => 0.82 },
  { name: 'moved once by less than re-zeroing does', offset: (i: number) => (isDuring(i) ? 0.45 : 0.02) },
])('a sensor is as good as ever: $name', ({ offset }) => {
  expect(doubtsOf({ offset })).toEqual([]);
});

test('a level that the running current lacks is a current that flows at rest, and no zero', () => {
  const flows = (i: number) => (isDuring(i) ? 0.82 : 0);
  expect(doubtsOf({ offset: flows, draws: (i) => -flows(i) })).toEqual([]);
});
