import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { changed } from '../../support/contexts.ts';
import { type Folded, foldAll } from '../../support/folded.ts';
import { ONE_MOTOR } from '../../support/handMade.ts';
import { directionOf, strokeEvents, type Told } from '../../support/strokeEvents.ts';

const STROKES = 60;

/** A movement that was let go and gone on with, some minutes later each time: a record of each part, the last to the stop. */
function inParts(event: StrokeEvent, parts: readonly number[], minutes = 2): StrokeEvent[] {
  return parts.map((part, i) => {
    const place = { strokeId: `${event.strokeId}-${i}`, atMs: event.atMs + i * minutes * 60_000 };
    return changed(
      { ...event, ...place },
      {
        all: ({ durationS, chargeAs, endStopAmps }) => ({
          durationS: part * durationS,
          chargeAs: part * chargeAs,
          endStopAmps: i === parts.length - 1 ? endStopAmps : null,
        }),
      },
    );
  });
}

/** `partsOf`: of the movement of this index; null: made in one. */
function room(partsOf: (index: number) => readonly number[] | null, told: Partial<Told> = {}): Folded {
  const events = strokeEvents(STROKES, ONE_MOTOR, 4, () => told).flatMap((event, i) => {
    const parts = partsOf(i);
    return parts === null ? [event] : inParts(event, parts);
  });
  return foldAll(ONE_MOTOR, events);
}

const saidOf = ({ warnings }: Folded) => warnings.map(({ kind, direction }) => [kind, direction]);

test.each([
  { name: 'two', parts: [0.4, 0.6], told: {} },
  { name: 'three', parts: [0.35, 0.32, 0.33], told: {} },
  { name: 'four', parts: [0.3, 0.2, 0.25, 0.25], told: {} },
  { name: 'three, on a supply that nobody recorded', parts: [0.2, 0.35, 0.45], told: { volts: null } },
])(
  'movements that were made in $name parts are no short travel, and none of the parts is learnt from',
  (row) => {
    const folded = room((i) => (i > 30 && i % 7 === 3 ? row.parts : null), row.told);
    expect(saidOf(folded)).toEqual([]);
    const seconds = folded.judgements.at(-1)?.expectations.find(({ measure }) => measure === 'durationS');
    expect(Math.abs((seconds?.expected ?? 0) / 20 - 1)).toBeLessThan(0.02);
  },
);

test('the way back from a movement that was never finished, whatever its parts, is as short and says nothing', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 4).flatMap((event, i) => {
    if (i > 30 && i % 8 === 2) return inParts(event, [0.3, 0.2, 0.1]);
    return i > 30 && i % 8 === 3 ? inParts(event, [0.6]) : [event];
  });
  expect(saidOf(foldAll(ONE_MOTOR, events))).toEqual([]);
});

test('parts of a movement that takes longer than it did are parts all the same', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 4, (i) => ({ factors: [i < 30 ? 1 : 1.3] })).flatMap(
    (event, i) => {
      const slower = changed(event, {
        all: ({ durationS }) => ({ durationS: (i < 30 ? 1 : 1.28) * durationS }),
      });
      return i > 40 && i % 4 === 2 ? inParts(slower, [0.3, 0.7]) : [slower];
    },
  );
  expect(saidOf(foldAll(ONE_MOTOR, events))).toEqual([['rising-draw', null]]);
});

test('a travel that is short is said though some of its movements are made in parts', () => {
  const folded = room((i) => {
    if (i < 30 || directionOf(i) === 'retract') return null;
    return i % 6 === 2 ? [0.4, 0.46] : [0.86];
  });
  expect(saidOf(folded)).toEqual([['short-travel', 'extend']]);
});

test('strokes of one direction between which the other was not recorded are whole ones of their own', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 4).flatMap((event, i) => {
    if (i < 30) return [event];
    return directionOf(i) === 'retract' ? [] : inParts(event, [0.84]);
  });
  expect(saidOf(foldAll(ONE_MOTOR, events))).toEqual([['short-travel', 'extend']]);
});

test.each([
  { name: 'two', parts: [0.4, 0.6] },
  { name: 'three, over a week', parts: [0.5, 0.27, 0.23] },
])(
  'a room that was left half open for days and then gone on with in $name parts is no short travel',
  (row) => {
    const events = strokeEvents(STROKES, ONE_MOTOR, 4).flatMap((event, i) => {
      const later = { ...event, atMs: event.atMs + i * 10 * 86_400_000 };
      return i > 30 && i % 3 === 1 ? inParts(later, row.parts, 3 * 1440) : [later];
    });
    expect(saidOf(foldAll(ONE_MOTOR, events))).toEqual([]);
  },
);

/** Movements that are made in parts from the 20th on, with a current that is `times` the usual from the 30th on. */
function roomInParts(times: number, parts: (index: number) => readonly number[]): Folded {
  const events = strokeEvents(40, ONE_MOTOR, 4, (i) => ({ factors: [i < 30 ? 1 : times] })).flatMap(
    (event, i) => (i < 20 ? [event] : inParts(event, parts(i))),
  );
  return foldAll(ONE_MOTOR, events);
}

test('the parts of a movement together tell what a whole one does: a rise is said though none is made in one', () => {
  const parts = [
    [0.4, 0.6],
    [0.35, 0.3, 0.35],
    [0.55, 0.45],
    [0.7, 0.3],
  ];
  const { judgements } = roomInParts(1.3, (i) => parts[i % parts.length]);
  const risen = judgements.flatMap(({ warnings }, i) =>
    warnings.some(({ kind }) => kind === 'rising-draw') ? [i] : [],
  );
  const first = Array.from({ length: 33 }, (_, i) => (i < 20 ? 1 : parts[i % parts.length].length));
  expect(risen[0]).toBeLessThan(first.reduce((sum, count) => sum + count, 0));
});

test('a part that draws more than the whole way does, while the rest draws less, is no rise', () => {
  const events = strokeEvents(60, ONE_MOTOR, 4).flatMap((event, i) => {
    if (i < 20) return [event];
    return inParts(event, [0.5, 0.5]).map((part, at) =>
      changed(part, {
        all: ({ runningAmps }) => ({ runningAmps: runningAmps * (at === 0 ? 1.2 : 0.82) }),
      }),
    );
  });
  expect(saidOf(foldAll(ONE_MOTOR, events))).toEqual([]);
});

test('parts that were never gone on with tell of no whole movement', () => {
  const events = strokeEvents(60, ONE_MOTOR, 4).flatMap((event, i) =>
    i < 20 || i % 4 > 1
      ? [event]
      : inParts(event, i % 4 === 0 ? [0.45] : [0.4]).map((part) =>
          changed(part, { all: ({ runningAmps }) => ({ runningAmps: 1.25 * runningAmps }) }),
        ),
  );
  expect(saidOf(foldAll(ONE_MOTOR, events)).filter(([kind]) => kind === 'rising-draw')).toEqual([]);
});
