import { describe, expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../analysis/history.ts';
import { foldAll, kindsOf } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { START_MS, strokeEvent, type Told } from '../support/strokeEvents.ts';

const DAY_MS = 86_400_000;
const DAYS_BETWEEN = 6;
const STROKES = 180;

/** Degrees about the mean of a temperate year, coldest on 20 January in the north. */
function degreesOn(atMs: number, half: 'north' | 'south'): number {
  const year = (atMs - Date.UTC(2026, 0, 20)) / (365.25 * DAY_MS);
  return (half === 'north' ? -10 : 10) * Math.cos(2 * Math.PI * year);
}

/** Three years of a room that draws so much more for each degree colder, and records no temperature. */
function years(half: 'north' | 'south', perDegree: number, of: (index: number) => Partial<Told>) {
  return Array.from({ length: STROKES }, (_, index): StrokeEvent => {
    const atMs = START_MS + index * DAYS_BETWEEN * DAY_MS;
    const cold = 1 - perDegree * degreesOn(atMs, half);
    const told = of(index);
    const factors = (told.factors ?? [1, 1]).map((factor) => factor * cold);
    return { ...strokeEvent(index, ROOM, 11, { ...told, factors, ambientC: null }), atMs };
  });
}

describe.each(['north', 'south'] as const)(
  'a room of the %sern half whose temperature nobody records',
  (half) => {
    test.each([0.003, 0.006, 0.01])('is no reason to call anybody at %d a degree', (perDegree) => {
      expect(
        foldAll(
          ROOM,
          years(half, perDegree, () => ({})),
        ).warnings,
      ).toEqual([]);
    });

    test('is expected to draw more in its third winter', () => {
      const { judgements } = foldAll(
        ROOM,
        years(half, 0.008, () => ({})),
      );
      const off = judgements
        .slice(-60)
        .flatMap(({ expectations }) =>
          expectations
            .filter(({ measure }) => measure === 'runningAmps')
            .map(({ value, expected }) => Math.abs(Math.log(value / (expected ?? Number.NaN)))),
        );
      expect(off.length).toBe(120);
      // The season alone would put it 8 % off either way.
      expect(Math.max(...off)).toBeLessThan(0.055);
    });

    test('is said to draw more by 15 % all the same, within six strokes', () => {
      const { warnings } = foldAll(
        ROOM,
        years(half, 0.005, (index) => (index >= 120 ? { factors: [1.15, 1.15] } : {})),
      );
      expect(kindsOf(warnings)).toEqual(['rising-draw']);
      const opened = Number(warnings[0].firstStrokeId.replace('stroke-', ''));
      expect(opened).toBeGreaterThanOrEqual(120);
      expect(opened).toBeLessThan(126);
    });
  },
);
