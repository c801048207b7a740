import { expect, test } from 'vitest';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

const FROM = 40;
const STROKES = 120;

/** After how many strokes of a room that draws so many times its normal, for so many strokes, that is said; null: never. */
function saidAfter(times: number, seed: number, strokes = STROKES): number | null {
  const isHigher = (i: number) => i >= FROM && i < FROM + strokes;
  const events = strokeEvents(STROKES, ROOM, seed, (i) => (isHigher(i) ? { factors: [times, times] } : {}));
  const at = foldAll(ROOM, events).judgements.findIndex(({ warnings }) =>
    warnings.some(({ kind }) => kind === 'rising-draw'),
  );
  return at < 0 ? null : at + 1 - FROM;
}

test.each([1, 2, 3, 4])(
  'a room that draws 5.5 % more for months calls nobody, 12 % more does (seed %i)',
  (seed) => {
    expect(saidAfter(1.055, seed)).toBeNull();
    expect(saidAfter(1.12, seed)).toBeLessThan(12);
  },
);

test.each([1, 2, 3, 4])('a frost of four strokes that nobody recorded calls nobody (seed %i)', (seed) => {
  expect(saidAfter(1.1, seed, 4)).toBeNull();
  expect(saidAfter(1.1, seed)).not.toBeNull();
  expect(saidAfter(1.17, seed)).toBeLessThanOrEqual(6);
});

/** After how many strokes a room, of which nobody records the temperature, says that one side draws a tenth more; null: never. */
function saidOfOneSide(seed: number): number | null {
  const events = strokeEvents(STROKES, ROOM, seed, (i) => ({
    factors: i < FROM ? [1, 1] : [1, 1.1],
    ambientC: null,
    volts: null,
  }));
  const at = foldAll(ROOM, events).judgements.findIndex(({ warnings }) =>
    warnings.some(({ kind, side }) => kind === 'rising-draw' && side === ROOM.sides[1]),
  );
  return at < 0 ? null : at + 1 - FROM;
}

test.each([1, 2, 3, 4])(
  'what one side alone draws more is no season, which both sides have (seed %i)',
  (seed) => {
    expect(saidOfOneSide(seed)).toBeLessThan(20);
  },
);
