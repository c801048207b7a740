import { expect, test } from 'vitest';
import { orderEvents } from '../../../../analysis/room/fold.ts';
import { foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { serviceEvent, strokeEvents } from '../support/strokeEvents.ts';

const EASIER_FROM = 30;
const CLEANED = 110;
/** What a room takes that has worn in, as a part of its reference; it comes to that little by little. */
const WORN_IN = 0.85;

/** What is expected of the running current on the strokes from `from` on, as parts of what it is. */
function expectedParts(cleanedTo: number, from: number, seed: number): number[] {
  const strokes = strokeEvents(from + 4, ROOM, seed, (i) => {
    const wornIn = Math.max(0, i - EASIER_FROM) / (CLEANED - EASIER_FROM);
    const factor = i >= CLEANED ? cleanedTo : 1 - wornIn * (1 - WORN_IN);
    return { factors: [factor, factor] };
  });
  const events = [...strokes, serviceEvent(CLEANED, 'cleaned')].sort(orderEvents);
  return foldAll(ROOM, events)
    .judgements.slice(from + 1)
    .flatMap(({ expectations }) => expectations)
    .flatMap(({ measure, value, expected }) =>
      measure === 'runningAmps' && expected !== null ? [expected / value] : [],
    );
}

test.each([0.8, WORN_IN])(
  'a room that had come to run easier before it was cleaned is brought down to what it draws then: %f of the reference',
  (cleanedTo) => {
    for (const seed of [1, 2, 3]) {
      // Four strokes each way settle it: the ninth stroke is judged by what they said.
      const parts = expectedParts(cleanedTo, CLEANED + 8, seed);
      expect(parts).toHaveLength(8);
      const mean = parts.reduce((sum, part) => sum + part, 0) / parts.length;
      expect(mean).toBeGreaterThan(0.97);
      expect(mean).toBeLessThan(1.03);
    }
  },
);

test.each([1, 2, 3])('and stays there while its reference goes on growing (seed %i)', (seed) => {
  const cleaned = 18;
  const strokes = strokeEvents(70, ROOM, seed, (i) => ({
    factors: i >= cleaned ? [0.85, 0.85] : [1, 1],
    // Weather that the reference has not seen is news, by which it is fitted anew.
    ambientC: i < 40 ? 20 : 20 - (i - 40) / 2,
  }));
  const events = [...strokes, serviceEvent(cleaned, 'lubricated')].sort(orderEvents);
  const parts = foldAll(ROOM, events)
    .judgements.slice(cleaned + 12)
    .flatMap(({ expectations }) => expectations)
    .flatMap(({ measure, adjusted, value, expected }) =>
      measure === 'runningAmps' && expected !== null ? [(expected / value) * (value / adjusted)] : [],
    );
  expect(parts.length).toBeGreaterThan(70);
  for (const part of parts) expect(Math.abs(Math.log(part))).toBeLessThan(0.1);
});

test.each([
  { name: 'the first side', worn: [1.4, 1] },
  { name: 'the last side', worn: [1, 1.4] },
])('a light service that eased $name alone leaves no side to be said to carry more', ({ worn }) => {
  const lubricated = 41;
  for (const seed of [1, 2, 3, 4, 5]) {
    const strokes = strokeEvents(100, ROOM, seed, (i) => (i < lubricated ? { factors: worn } : {}));
    const events = [...strokes, serviceEvent(lubricated, 'lubricated')].sort(orderEvents);
    expect(foldAll(ROOM, events).warnings, `seed ${seed}`).toEqual([]);
  }
});

test('load that moved from one side to the other with a light service is said all the same', () => {
  const lubricated = 41;
  for (const seed of [1, 2, 3]) {
    const strokes = strokeEvents(100, ROOM, seed, (i) => (i < lubricated ? {} : { factors: [0.75, 1.25] }));
    const events = [...strokes, serviceEvent(lubricated, 'lubricated')].sort(orderEvents);
    const said = foldAll(ROOM, events).warnings.map(({ kind, side }) => [kind, side]);
    expect(said, `seed ${seed}`).toEqual([['uneven-sides', 'rear']]);
  }
});
