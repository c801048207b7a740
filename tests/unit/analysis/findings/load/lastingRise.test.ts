import { describe, expect, test } from 'vitest';
import {
  beginLastingRise,
  hasLasted,
  takeLasting,
} from '../../../../../analysis/findings/load/lastingRise.ts';
import { DAY_MS, type StrokeEvent } from '../../../../../analysis/history.ts';
import { Random } from '../../../../../server/demo/simulator/random.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { START_MS, strokeEvent } from '../../support/strokeEvents.ts';

const DAYS_BETWEEN = 6;
const STROKES = 150;
const FROM = 60;

/** Strokes some days apart, of which neither the temperature nor a stall was recorded; `factor`: of both sides' normal. */
function unrecorded(seed: number, factor: (index: number) => number): StrokeEvent[] {
  return Array.from({ length: STROKES }, (_, index) => {
    const factors = [factor(index), factor(index)];
    const event = strokeEvent(index, ROOM, seed, { factors, ambientC: null });
    const atMs = START_MS + index * DAYS_BETWEEN * DAY_MS;
    return { ...changed(event, { all: () => ({ endStopAmps: null }) }), atMs };
  });
}

/** The stroke at which a rise was said; null: never. */
function saidAt(events: readonly StrokeEvent[]): number | null {
  const at = foldAll(ROOM, events).judgements.findIndex(({ warnings }) =>
    warnings.some(({ kind }) => kind === 'rising-draw'),
  );
  return at < 0 ? null : at;
}

describe('of a room whose temperature nobody records', () => {
  test.each([1, 2, 3, 4, 5, 6])(
    'a drift of 0.3 % a stroke is said before 12 % of both sides (seed %i)',
    (seed) => {
      const at = saidAt(unrecorded(seed, (index) => 1 + 0.003 * Math.max(0, index - FROM)));
      expect(at).not.toBeNull();
      expect(0.003 * ((at ?? 0) - FROM)).toBeGreaterThan(0.06);
      expect(0.003 * ((at ?? 0) - FROM)).toBeLessThan(0.12);
    },
  );

  test.each([1, 2, 3, 4, 5, 6])('weather that comes and goes calls nobody (seed %i)', (seed) => {
    const random = new Random(seed);
    const alike = Math.exp(-DAYS_BETWEEN / 10);
    let degrees = 0;
    const factors = Array.from({ length: STROKES }, () => {
      degrees = alike * degrees + Math.sqrt(1 - alike ** 2) * random.normal(0, 6);
      return 1 - 0.006 * degrees;
    });
    expect(saidAt(unrecorded(seed, (index) => factors[index]))).toBeNull();
  });

  test.each([1, 2, 3, 4, 5, 6])('nor does a frost of a month that adds a tenth (seed %i)', (seed) => {
    const isFrost = (index: number) => index >= FROM && index < FROM + 5;
    expect(saidAt(unrecorded(seed, (index) => (isFrost(index) ? 1.1 : 1)))).toBeNull();
  });
});

test('a frost of a month that adds 13 % to both sides alike hardly ever calls anybody', () => {
  const isFrost = (index: number) => index >= FROM && index < FROM + 5;
  const said = [1, 2, 3, 4, 5, 6].filter(
    (seed) => saidAt(unrecorded(seed, (index) => (isFrost(index) ? 1.13 : 1))) !== null,
  );
  expect(said.length).toBeLessThanOrEqual(1);
});

describe('the mean of what lasts', () => {
  const DAYS = [0, 0.5, 6, 6.5, 9, 30, 31, 31.5, 32, 60, 61, 61.5, 62, 90];
  const UNSEEN = 0.026;

  function meanOf(days: readonly number[], rise: number) {
    const lasting = beginLastingRise();
    for (const day of days) takeLasting(lasting, rise, UNSEEN, START_MS + day * DAY_MS);
    return lasting;
  }

  test('varies with weather as a weighted sum of strokes does whose weather is alike within ten days', () => {
    const weights: number[] = [];
    DAYS.forEach((_, i) => {
      const part = Math.max(0.2, 1 / (i + 1));
      weights.forEach((weight, j) => {
        weights[j] = weight * (1 - part);
      });
      weights.push(part);
    });
    let variance = 0;
    DAYS.forEach((one, i) => {
      DAYS.forEach((other, j) => {
        variance += weights[i] * weights[j] * UNSEEN ** 2 * Math.exp(-Math.abs(one - other) / 10);
      });
    });
    expect(meanOf(DAYS, 0).variance).toBeCloseTo(variance, 12);
  });

  const PLAIN = { noise: 0.022, uncertainty: 0.007, zero: 0 };

  test('tells of strokes over weeks what it does not tell of as many within two days', () => {
    const within = DAYS.map((_, i) => i / 8);
    expect(hasLasted(meanOf(DAYS, 0.12), PLAIN, 2)).toBe(true);
    expect(hasLasted(meanOf(within, 0.12), PLAIN, 2)).toBe(false);
  });

  test('tells nothing of what came with the present stay, nor with few strokes', () => {
    expect(hasLasted(meanOf(DAYS, 0.12), PLAIN, DAYS.length)).toBe(false);
    expect(hasLasted(meanOf(DAYS.slice(0, 11), 0.12), PLAIN, 2)).toBe(false);
  });
});
