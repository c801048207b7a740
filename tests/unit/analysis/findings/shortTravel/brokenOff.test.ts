import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { orderEvents } from '../../../../../analysis/room/fold.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll, kindsOf } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { serviceEvent, strokeEvents } from '../../support/strokeEvents.ts';

const STROKES = 40;
const USUAL_S = 20;

/** A history in which the strokes of these indices are the first or the last part of a movement only. */
function withParts(isPart: (index: number) => boolean): StrokeEvent[] {
  return strokeEvents(STROKES, ROOM, 6).map((event, index) =>
    isPart(index)
      ? changed(event, { all: ({ durationS }) => ({ durationS: durationS * (index % 4 < 2 ? 0.4 : 0.6) }) })
      : event,
  );
}

function expectedS(judgements: ReturnType<typeof foldAll>['judgements']): (number | null)[] {
  return judgements.flatMap(({ expectations }) =>
    expectations.filter(({ measure }) => measure === 'durationS').map(({ expected }) => expected),
  );
}

test.each([
  { name: 'while a room learns', isPart: (index: number) => index > 5 && index < 12 },
  { name: 'right after it was cleaned', isPart: (index: number) => index >= 30 && index < 34 },
])('strokes that were broken off $name are no normal to hold a clock against', ({ isPart }) => {
  const events = [...withParts(isPart), serviceEvent(30, 'cleaned')].sort(orderEvents);
  const { judgements, warnings } = foldAll(ROOM, events);
  expect(kindsOf(warnings).filter((kind) => kind === 'sensor-doubt')).toEqual([]);
  const last = expectedS(judgements.slice(-4));
  expect(last).toHaveLength(8);
  for (const seconds of last) expect(Math.abs((seconds ?? 0) / USUAL_S - 1)).toBeLessThan(0.05);
});

test('a direction whose first strokes after the work were the parts of one learns its normal from those after them', () => {
  const parts = [0.3, 0.7];
  const events = strokeEvents(STROKES, ROOM, 6).map((event, index) => {
    const part = index >= 30 && index % 2 === 0 ? parts[(index - 30) / 2] : undefined;
    if (part === undefined) return event;
    return changed(event, { all: ({ durationS }) => ({ durationS: durationS * part }) });
  });
  const { state, judgements } = foldAll(ROOM, [...events, serviceEvent(30, 'adjusted')].sort(orderEvents));
  const [front] = state.channels;
  expect([front.direction, front.values.length]).toEqual(['extend', 5]);
  const last = judgements.at(-2)?.expectations.filter(({ measure }) => measure === 'runningAmps') ?? [];
  expect(last.map(({ expected }) => expected)).toEqual([expect.any(Number), expect.any(Number)]);
});

test('where strokes take now more and now less, parts of them do not tell how long a whole one takes', () => {
  const RESTLESS = [1, 1.2, 0.87, 0.86, 1.18, 1.02];
  const events = strokeEvents(160, ROOM, 6, () => ({ volts: null })).map((event, index) => {
    const part = index > 40 && index % 6 > 3 ? 0.65 : RESTLESS[Math.floor(index / 2) % RESTLESS.length];
    return changed(event, { all: ({ durationS }) => ({ durationS: durationS * part }) });
  });
  const last = expectedS(foldAll(ROOM, events).judgements.slice(-6));
  for (const seconds of last) expect(Math.abs((seconds ?? 0) / USUAL_S - 1)).toBeLessThan(0.06);
});

test('the course of a part is none of the usual course, while a room learns and after', () => {
  const events = strokeEvents(STROKES, ROOM, 6).map((event, index) => {
    if (index < 4 || index % 4 > 1) return event;
    return changed(event, {
      all: ({ durationS, profile }) => ({
        durationS: durationS * 0.5,
        profile: profile.map((amps, bin) => (amps !== null && bin > 50 ? 1.5 * amps : amps)),
      }),
    });
  });
  for (const { profile } of foldAll(ROOM, events).state.channels) {
    const [early, late] = [profile.slice(20, 40), profile.slice(52)].map((bins) =>
      bins.reduce<number>((sum, amps) => sum + (amps ?? 0) / bins.length, 0),
    );
    expect(Math.abs(late / early - 1)).toBeLessThan(0.08);
  }
});

/** Whether each of some last strokes is beyond the limits of its duration or charge; they take such parts of their time. */
function beyondOfParts(parts: readonly number[], stopsOf: (place: number) => boolean): boolean[] {
  const events = strokeEvents(STROKES + parts.length, ROOM, 6).map((event, index) => {
    const place = index - STROKES;
    if (place < 0) return event;
    return changed(event, {
      all: ({ durationS, chargeAs, endStopAmps }) => ({
        durationS: durationS * parts[place],
        chargeAs: chargeAs * parts[place],
        endStopAmps: stopsOf(place) ? endStopAmps : null,
      }),
    });
  });
  const { judgements } = foldAll(ROOM, events);
  return judgements
    .slice(STROKES)
    .map(({ expectations }) =>
      expectations.some(
        ({ measure, beyond }) => ['durationS', 'chargeAs'].includes(measure) && beyond === true,
      ),
    );
}

test('a stroke that was let go, the way back from it, and what takes it up again are not beyond the limits of whole ones', () => {
  expect(beyondOfParts([0.5, 0.5], (place) => place !== 0)).toEqual([false, false]);
  expect(beyondOfParts([0.5, 0.5, 1], (place) => place !== 0)).toEqual([false, false, false]);
});

test('a stroke that came to a stop on its way is beyond them, and so is one that took longer', () => {
  expect(beyondOfParts([0.5], () => true)).toEqual([true]);
  expect(beyondOfParts([1.5], () => false)).toEqual([true]);
});
