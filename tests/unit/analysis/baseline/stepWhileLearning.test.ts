import { expect, test } from 'vitest';
import { foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const SEEDS = [1, 2, 3, 4, 5];
/** The fifth stroke of each direction, which needs eight. */
const FROM = 8;

test.each([
  { name: 'a rise of a quarter', after: { factors: [1.25, 1.25] }, said: ['rising-draw', null] },
  { name: 'load that moves over', after: { factors: [1.2, 0.82] }, said: ['uneven-sides', 'front'] },
  { name: 'a side that comes seconds late', after: { lagS: 2 }, said: ['late-side', 'rear'] },
])('$name is not learnt as normal, and is said, where it begins while the room learns', ({ after, said }) => {
  for (const seed of SEEDS) {
    for (const from of [FROM, FROM + 3, FROM + 8]) {
      const events = strokeEvents(60, ROOM, seed, (i) => (i >= from ? after : {}));
      const { warnings } = foldAll(ROOM, events);
      expect(
        warnings.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs]),
        `seed ${seed}, from stroke ${from}`,
      ).toEqual([[...said, null]]);
    }
  }
});

test('two odd strokes while a room learns leave its normal as it is', () => {
  for (const seed of SEEDS) {
    const events = strokeEvents(60, ROOM, seed, (i) =>
      i >= FROM && i < FROM + 4 ? { factors: [1.3, 1.3] } : {},
    );
    const { warnings } = foldAll(ROOM, events);
    expect(
      warnings.filter(({ clearedAtMs }) => clearedAtMs === null),
      `seed ${seed}`,
    ).toEqual([]);
  }
});

test('a room that runs easier after its first strokes has bedded in', () => {
  for (const seed of SEEDS) {
    const events = strokeEvents(60, ROOM, seed, (i) => (i < FROM ? { factors: [1.15, 1.15] } : {}));
    expect(foldAll(ROOM, events).warnings, `seed ${seed}`).toEqual([]);
  }
});
