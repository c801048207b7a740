import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { directionOf, strokeEvents } from '../../support/strokeEvents.ts';

const LEARNT = 30;
const STROKES = 60;
const PLACE = 0.3;

/**
 * A movement that its owner stopped on its way at these places, 0 fully retracted to 1 fully extended: a record of each part,
 * with a peak where it passed the place (`catches`), told as that record alone shows it.
 */
function stoppedAt(event: StrokeEvent, stops: readonly number[], catches: boolean): StrokeEvent[] {
  const ends = event.direction === 'extend' ? [0, ...stops, 1] : [1, ...stops, 0];
  return ends.slice(1).map((to, i) => {
    const from = ends[i];
    const [inner, outer] = [Math.min(from, to), Math.max(from, to)];
    const own = (PLACE - inner) / (outer - inner);
    const place = { strokeId: `${event.strokeId}-${i}`, atMs: event.atMs + i * 120_000 };
    return changed(
      { ...event, ...place },
      {
        all: ({ durationS, chargeAs, endStopAmps, runningAmps }) => ({
          durationS: (outer - inner) * durationS,
          chargeAs: (outer - inner) * chargeAs,
          endStopAmps: i === ends.length - 2 ? endStopAmps : null,
          spikes:
            catches && own > 0 && own < 1 ? [{ position: own, amps: 1.6 * runningAmps, widthS: 0.3 }] : [],
        }),
      },
    );
  });
}

/** `stopsOf`: where the movement of this index, counted from when the room had learnt its normal, was stopped. */
function said(stopsOf: (index: number) => readonly number[], mendedAt = STROKES) {
  const events = strokeEvents(LEARNT + STROKES, ONE_MOTOR, 4).flatMap((event, i) =>
    i < LEARNT ? [event] : stoppedAt(event, stopsOf(i - LEARNT), i < LEARNT + mendedAt),
  );
  return foldAll(ONE_MOTOR, events).warnings.filter(({ kind }) => kind === 'stall-spike');
}

const OUT = [[0.36], [0.52], [0.75], [0.44], [0.62, 0.8]];
const IN = [[0.5], [0.7], [0.38, 0.2], [0.8]];
const stopsOf = (i: number) => (directionOf(i) === 'extend' ? OUT[(i / 2) % OUT.length] : IN[i % IN.length]);

test('a place is one place though the owner stops the room now here and now there, and is said as such from the first', () => {
  const few = said((i) => (i < 4 ? stopsOf(i) : [])).at(0);
  expect([few?.pattern, few?.position]).toEqual(['same-place', expect.closeTo(PLACE, 1)]);
  const all = said(stopsOf);
  expect(all.map(({ pattern, clearedAtMs }) => [pattern, clearedAtMs])).toEqual([['same-place', null]]);
  expect(all[0].position).toBeCloseTo(PLACE, 2);
});

test('strokes that did not come by the place do not speak against it', () => {
  const beyondIt = (i: number) =>
    directionOf(i) === 'extend' ? [0.34, 0.5, 0.65, 0.8] : [0.8, 0.65, 0.5, 0.34];
  const before = (i: number) => (i < 8 ? [] : beyondIt(i));
  expect(said(before).map(({ pattern, clearedAtMs }) => [pattern, clearedAtMs])).toEqual([
    ['same-place', null],
  ]);
});

test('a place that was mended is told by strokes that come by it, whole or in parts', () => {
  const warnings = said(stopsOf, 20);
  expect(warnings.map(({ pattern }) => pattern)).toEqual(['same-place']);
  expect(warnings[0].clearedAtMs).not.toBeNull();
});
