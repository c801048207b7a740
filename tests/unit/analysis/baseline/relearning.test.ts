import { expect, test } from 'vitest';
import { orderEvents } from '../../../../analysis/room/fold.ts';
import { changed } from '../support/contexts.ts';
import { foldAll, kindsOf } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { serviceEvent, strokeEvents } from '../support/strokeEvents.ts';

const ADJUSTED = 40;
const SEEDS = [1, 2, 3, 4, 5];

test.each([
  { name: 'a rise of a quarter', factors: [1.25, 1.25], kind: 'rising-draw' },
  { name: 'load that moves over', factors: [1.2, 0.82], kind: 'uneven-sides' },
])('$name four strokes after an adjustment is not learnt as normal', ({ factors, kind }) => {
  for (const seed of SEEDS) {
    const strokes = strokeEvents(70, ROOM, seed, (i) => (i >= ADJUSTED + 4 ? { factors } : {}));
    const events = [...strokes, serviceEvent(ADJUSTED, 'adjusted')].sort(orderEvents);
    expect(kindsOf(foldAll(ROOM, events).warnings), `seed ${seed}`).toEqual([kind]);
  }
});

test('another current from an adjustment on is the new normal', () => {
  for (const seed of SEEDS) {
    const strokes = strokeEvents(90, ROOM, seed, (i) => (i >= ADJUSTED ? { factors: [1.2, 1.1] } : {}));
    const events = [...strokes, serviceEvent(ADJUSTED, 'adjusted')].sort(orderEvents);
    expect(kindsOf(foldAll(ROOM, events).warnings), `seed ${seed}`).toEqual([]);
  }
});

test('a clamp that began to read half the stroke before an adjustment is not learnt as normal', () => {
  for (const seed of SEEDS) {
    const strokes = strokeEvents(70, ROOM, seed).map((event, i) =>
      i < ADJUSTED - 1
        ? event
        : changed(event, {
            front: (measured) => ({
              runningAmps: measured.runningAmps / 2,
              runningAmpsP90: measured.runningAmpsP90 / 2,
              inrushAmps: measured.inrushAmps / 2,
              endStopAmps: measured.endStopAmps === null ? null : measured.endStopAmps / 2,
              profile: measured.profile.map((amps) => (amps === null ? null : amps / 2)),
            }),
          }),
    );
    const events = [...strokes, serviceEvent(ADJUSTED, 'adjusted')].sort(orderEvents);
    const { warnings } = foldAll(ROOM, events);
    expect(
      warnings.map(({ kind, side }) => [kind, side]),
      `seed ${seed}`,
    ).toEqual([['sensor-doubt', 'front']]);
  }
});

test('a load that one side lost with the adjustment itself is said by what was usual before it', () => {
  for (const seed of SEEDS) {
    const strokes = strokeEvents(70, ROOM, seed, (i) => (i >= ADJUSTED ? { factors: [1.8, 0.2] } : {}));
    const events = [...strokes, serviceEvent(ADJUSTED, 'adjusted')].sort(orderEvents);
    const { warnings } = foldAll(ROOM, events);
    expect(
      warnings.map(({ kind, side }) => [kind, side]),
      `seed ${seed}`,
    ).toEqual([['dropped-load', 'rear']]);
  }
});

test('an adjustment that eased both sides to less than half lost no load', () => {
  for (const seed of SEEDS) {
    const strokes = strokeEvents(70, ROOM, seed, (i) => (i < ADJUSTED ? { factors: [2.5, 2.5] } : {}));
    const events = [...strokes, serviceEvent(ADJUSTED, 'adjusted')].sort(orderEvents);
    expect(kindsOf(foldAll(ROOM, events).warnings), `seed ${seed}`).not.toContain('dropped-load');
  }
});

test('a side that came seconds late the stroke before an adjustment, and comes as late after it, is not learnt so', () => {
  for (const seed of SEEDS) {
    const strokes = strokeEvents(70, ROOM, seed, (i) => (i >= ADJUSTED - 1 ? { lagS: 3 } : {}));
    const events = [...strokes, serviceEvent(ADJUSTED, 'adjusted')].sort(orderEvents);
    expect(kindsOf(foldAll(ROOM, events).warnings), `seed ${seed}`).toEqual(['late-side']);
    const after = strokeEvents(70, ROOM, seed, (i) => (i >= ADJUSTED ? { lagS: 3 } : {}));
    const changedBy = [...after, serviceEvent(ADJUSTED, 'adjusted')].sort(orderEvents);
    expect(kindsOf(foldAll(ROOM, changedBy).warnings), `seed ${seed}`).toEqual([]);
  }
});
