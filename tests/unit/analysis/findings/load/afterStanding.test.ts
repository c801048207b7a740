import { describe, expect, test } from 'vitest';
import { DAY_MS, type StrokeEvent } from '../../../../../analysis/history.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { START_MS, strokeEvent } from '../../support/strokeEvents.ts';

const DAYS_BETWEEN = 5;
const STROKES = 80;
const STOOD_BEFORE = 44;

/** Strokes some days apart, of which one came after so many days more; `factor`: of both sides' normal, strokes after that. */
function stoodFor(days: number, seed: number, factor: (strokes: number) => number): StrokeEvent[] {
  return Array.from({ length: STROKES }, (_, index) => {
    const since = index - STOOD_BEFORE;
    const factors = since < 0 ? [1, 1] : [factor(since), factor(since)];
    const stoodDays = since < 0 ? 0 : days;
    const atMs = START_MS + (index * DAYS_BETWEEN + stoodDays) * DAY_MS;
    return { ...strokeEvent(index, ROOM, seed, { factors }), atMs };
  });
}

/** How many strokes after the standing a rise was said; null: never. */
function saidAfter(events: readonly StrokeEvent[]): number | null {
  const at = foldAll(ROOM, events).judgements.findIndex(({ warnings }) =>
    warnings.some(({ kind }) => kind === 'rising-draw'),
  );
  return at < 0 ? null : at - STOOD_BEFORE + 1;
}

describe.each([1, 2, 3, 4, 5, 6])('seed %i', (seed) => {
  test('a room that is stiff after a winter, and freer with every stroke, calls nobody', () => {
    for (const stiff of [0.14, 0.22]) {
      const events = stoodFor(150, seed, (strokes) => 1 + stiff * 0.75 ** strokes);
      expect(saidAfter(events)).toBeNull();
    }
  });

  test('one that draws as much more from then on is told of after seven strokes or soon after', () => {
    const said = saidAfter(stoodFor(150, seed, () => 1.18));
    expect(said).toBeGreaterThan(6);
    expect(said).toBeLessThanOrEqual(8);
  });

  test('what no standing does is told of at once, and so is what came without it', () => {
    expect(saidAfter(stoodFor(150, seed, () => 1.45))).toBeLessThanOrEqual(4);
    expect(saidAfter(stoodFor(20, seed, () => 1.18))).toBeLessThanOrEqual(5);
  });

  test('so is a rise that the room had shown before it stood', () => {
    const events = stoodFor(150, seed, () => 1.18).map((event, index) =>
      index < STOOD_BEFORE - 2
        ? event
        : { ...strokeEvent(index, ROOM, seed, { factors: [1.18, 1.18] }), atMs: event.atMs },
    );
    expect(saidAfter(events)).toBeLessThanOrEqual(4);
  });
});
