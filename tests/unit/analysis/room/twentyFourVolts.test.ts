import { expect, test } from 'vitest';
import { compareSpans } from '../../../../analysis/compare/compareSpans.ts';
import type { StrokeEvent } from '../../../../analysis/history.ts';
import { changed, remeasured } from '../support/contexts.ts';
import { foldAll, kindsOf } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const DOUBLED = { ...ROOM, nominalVolts: 24 };

/** The same strokes, recorded in a coach of twice the volts. */
function atTwice(events: readonly StrokeEvent[]): StrokeEvent[] {
  return events.map((event) =>
    remeasured(event, ({ supplyVolts }) => ({ supplyVolts: supplyVolts === null ? null : 2 * supplyVolts })),
  );
}

/** Healthy for 40 strokes on batteries of every charge, then a quarter heavier. */
const EVENTS = strokeEvents(60, ROOM, 3, (i) => ({
  volts: 11.9 + 0.2 * (i % 8),
  factors: i < 40 ? [1, 1] : [1.25, 1.25],
}));

test('a room of 24 V is judged as one of 12 V is, and brought to twice the volts', () => {
  const [plain, doubled] = [foldAll(ROOM, EVENTS), foldAll(DOUBLED, atTwice(EVENTS))];
  expect(kindsOf(plain.warnings)).toEqual(['rising-draw']);
  expect(doubled.judgements).toEqual(plain.judgements);
});

test('its strokes before and after some work compare as those of 12 V do', () => {
  const compare = (events: readonly StrokeEvent[], room: typeof ROOM) =>
    compareSpans(events.slice(0, 40), events.slice(40), room);
  expect(compare(atTwice(EVENTS), DOUBLED)).toEqual(compare(EVENTS, ROOM));
});

test('a motor that stalls at twice what it runs with is no heavier for its 24 V', () => {
  const rooms = [
    { room: { ...ROOM, ratedAmps: null }, events: EVENTS.slice(0, 12) },
    { room: { ...DOUBLED, ratedAmps: null }, events: atTwice(EVENTS.slice(0, 12)) },
  ];
  for (const { room, events } of rooms) {
    const near = events.map((event) =>
      changed(event, {
        all: ({ runningAmps }) => {
          const stall = 2.6 * runningAmps;
          return { inrushAmps: stall, endStopAmps: stall, rateHz: 100 };
        },
      }),
    );
    expect(kindsOf(foldAll(room, near).warnings), `${room.nominalVolts} V`).toEqual([]);
  }
});
