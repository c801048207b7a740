import { expect, test } from 'vitest';
import type { MeasureName } from '../../../../analysis/measures.ts';
import { limitsOf } from '../../../../analysis/room/fold.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { directionOf, strokeEvents, type Told } from '../support/strokeEvents.ts';

const ROOMS = 10;
const STROKES = 200;
const STAY_STROKES = 6;
/** So many stays stand crooked; the others are level. */
const CROOKED_STAYS = 0.2;
/** Strokes of both directions after which each has its whole reference. */
const LEARNT = 32;

/** The part of healthy strokes beyond their limits where some stays stand crooked by a random amount. */
function beyondOf(measure: MeasureName, spread: number, told: (crooked: number) => Partial<Told>): number {
  let beyond = 0;
  for (let seed = 1; seed <= ROOMS; seed++) {
    const random = new Random(seed);
    const stays = Array.from({ length: Math.ceil(STROKES / STAY_STROKES) }, () =>
      random.uniform(0, 1) < CROOKED_STAYS ? random.normal(0, spread) : 0,
    );
    const events = strokeEvents(STROKES, ROOM, seed, (i) =>
      // Downhill one way is uphill the other.
      told(stays[Math.floor(i / STAY_STROKES)] * (directionOf(i) === 'extend' ? 1 : -1)),
    );
    for (const { expectations } of foldAll(ROOM, events).judgements.slice(LEARNT)) {
      if (expectations.find((one) => one.measure === measure)?.beyond === true) beyond++;
    }
  }
  return beyond / (ROOMS * (STROKES - LEARNT));
}

test.each([
  {
    measure: 'share',
    spread: 0.03,
    told: (crooked: number) => ({ factors: [1 + crooked, 1 - crooked] }),
  },
  { measure: 'lagS', spread: 0.2, told: (crooked: number) => ({ lagS: crooked }) },
] as const)(
  'where one stay in five stands crooked, no more than one healthy stroke in 400 is beyond its $measure',
  ({ measure, spread, told }) => {
    expect(beyondOf(measure, spread, told)).toBeLessThanOrEqual(1 / 400);
  },
);

test('where every stay stands level, the limits of the share come in as the strokes show it', () => {
  const widthAfter = (strokes: number) => {
    const { state } = foldAll(ROOM, strokeEvents(strokes, ROOM, 4));
    const share = limitsOf(state).find(({ measure }) => measure === 'share');
    return (share?.limits.upper ?? Number.NaN) - (share?.limits.lower ?? Number.NaN);
  };
  expect(widthAfter(400) / widthAfter(LEARNT)).toBeLessThan(0.6);
});

test.each([
  { measure: 'share', told: { factors: [1.12, 0.88] } },
  { measure: 'lagS', told: { lagS: 0.9 } },
])('a $measure that no ground explains is beyond its limits', ({ measure, told }) => {
  const events = strokeEvents(LEARNT + 2, ROOM, 3, (i) => (i >= LEARNT ? told : {}));
  const { judgements } = foldAll(ROOM, events);
  for (const { expectations } of judgements.slice(LEARNT)) {
    const own = expectations.filter((one) => one.measure === measure);
    expect(own.map(({ beyond }) => beyond)).toEqual(ROOM.sides.map(() => true));
  }
});
