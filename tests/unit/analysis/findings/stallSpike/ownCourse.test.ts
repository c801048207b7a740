import { expect, test } from 'vitest';
import type { RoomEvent } from '../../../../../analysis/history.ts';
import type { Spike } from '../../../../../analysis/measures.ts';
import { orderEvents, summariseRoom } from '../../../../../analysis/room/fold.ts';
import { foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { directionOf, serviceEvent, strokeEvents, type Told } from '../../support/strokeEvents.ts';

const STROKES = 40;
const PLACE = { from: 0.8, to: 0.9 };

/** A peak of both sides in the middle of the place; `height` over some 9 A. */
function peaks(height: number): Pick<Told, 'spikes'> {
  const spike: Spike = { position: 0.85, amps: 9 * (1 + height), widthS: 0.8 };
  return { spikes: [[spike], [spike]] };
}

const kindsSaid = (told: (index: number) => Partial<Told>) =>
  foldAll(ROOM, strokeEvents(STROKES, ROOM, 4, told)).warnings.map(
    ({ kind, pattern }) => `${kind} ${pattern}`,
  );

/** Coming in the room climbs a ramp, going out it rolls down. */
const ramp = (index: number): Partial<Told> =>
  directionOf(index) === 'extend'
    ? { bump: { ...PLACE, part: -0.15 } }
    : { bump: { ...PLACE, part: 0.35 }, ...peaks(0.45) };

test('a short ramp, which takes on one way what it gives on the other, is no peak from the first stroke on', () => {
  expect(kindsSaid(ramp)).toEqual([]);
});

test.each([
  { who: 'both sides rise and fall', places: [0, 1], said: [] },
  { who: 'one side rises and falls alone', places: [0], said: ['stall-spike same-place'] },
])('a ramp of which a worm gives back little is told where $who', ({ places, said }) => {
  const slope = (index: number): Partial<Told> => {
    if (directionOf(index) === 'extend') return { bump: { ...PLACE, part: -0.07, places } };
    const spikes = peaks(0.45).spikes?.map((those, place) => (places.includes(place) ? those : [])) ?? [];
    return { bump: { ...PLACE, part: 0.35, places }, spikes };
  };
  expect(kindsSaid(slope)).toEqual(said);
});

test('a peak on one way, with nothing given back on the other, is one from the third on', () => {
  const only = (index: number) => (directionOf(index) === 'extend' ? {} : peaks(0.45));
  expect(kindsSaid(only)).toEqual(['stall-spike same-place']);
});

test('what the usual course has is no peak where it shows as one now and then; what stands far above it is', () => {
  const hump: Partial<Told> = { bump: { ...PLACE, part: 0.3 } };
  const nowAndThen = (index: number) => (index > 20 && index % 3 === 0 ? { ...hump, ...peaks(0.4) } : hump);
  expect(kindsSaid(nowAndThen)).toEqual([]);
  const catches = (index: number) => (index > 20 ? { ...hump, ...peaks(1.1) } : hump);
  expect(kindsSaid(catches)).toEqual(['stall-spike same-place']);
});

test.each([
  { name: 'while nothing is done', work: null },
  { name: 'after work that did not help', work: 'fasteners-seated' as const },
  { name: 'after a motor that draws a fifth more', work: 'motor-replaced' as const, factor: 1.2 },
])('what catches at one place for months never becomes the usual course $name', ({ work, factor = 1 }) => {
  const from = 30;
  const strokes = 160;
  const narrow = { from: 0.828, to: 0.876, part: 0.45 };
  const catches = (index: number): Partial<Told> => {
    const level = index < 80 ? 1 : factor;
    return { bump: narrow, factors: [level, level], ...peaks(level * 1.45 - 1) };
  };
  const events: RoomEvent[] = strokeEvents(strokes, ROOM, 4, (index) => (index < from ? {} : catches(index)));
  if (work !== null) events.push(serviceEvent(80, work));
  const { state } = foldAll(ROOM, events.sort(orderEvents));
  expect(summariseRoom(state).openWarnings.map(({ kind, pattern }) => [kind, pattern])).toEqual([
    ['stall-spike', 'same-place'],
  ]);
});

test.each([0.45, 0.9, 1.5])(
  'what catches from the first stroke on is said from the third on, and for as long as it lasts (%s)',
  (height) => {
    const narrow = { from: 0.828, to: 0.876, part: height };
    const events = strokeEvents(80, ROOM, 4, () => ({ bump: narrow, ...peaks(height) }));
    const { warnings } = foldAll(ROOM, events);
    expect(warnings.map(({ kind, pattern }) => `${kind} ${pattern}`)).toEqual(['stall-spike same-place']);
    expect(warnings.map(({ openedAtMs, clearedAtMs }) => [openedAtMs, clearedAtMs])).toEqual([
      [events[2].atMs, null],
    ]);
  },
);
