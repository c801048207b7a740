import { expect, test } from 'vitest';
import type { RoomEvent, StrokeEvent } from '../../../../../analysis/history.ts';
import { orderEvents } from '../../../../../analysis/room/fold.ts';
import { changed, remeasured } from '../../support/contexts.ts';
import { type Folded, foldAll, kindsOf } from '../../support/folded.ts';
import { ONE_MOTOR, ROOM } from '../../support/handMade.ts';
import { directionOf, serviceEvent, strokeEvents, type Told } from '../../support/strokeEvents.ts';

const FROM = 24;

/** A room whose strokes of one direction end early from so soon on that it still learns, by a factor on their time. */
function withShort(part: number, stops: boolean, told: (index: number) => Partial<Told>): Folded {
  const events = strokeEvents(60, ONE_MOTOR, 4, told).map((event, i) =>
    i >= FROM && directionOf(i) === 'extend'
      ? changed(event, {
          all: ({ durationS, chargeAs, endStopAmps }) => ({
            durationS: part * durationS,
            chargeAs: part * chargeAs,
            endStopAmps: stops ? endStopAmps : null,
          }),
        })
      : event,
  );
  return foldAll(ONE_MOTOR, events);
}

test.each([
  { name: 'against something', stops: true, volts: 12.6 },
  { name: 'before its stop', stops: false, volts: 12.6 },
  { name: 'before its stop, on a supply that nobody recorded', stops: false, volts: null },
])('strokes that end early $name are said, and never learnt as normal', ({ stops, volts }) => {
  const { warnings } = withShort(0.86, stops, () => ({ volts, ambientC: null }));
  expect(warnings.map(({ kind, direction, side }) => [kind, direction, side])).toEqual([
    ['short-travel', 'extend', null],
  ]);
  expect(Number(warnings[0].firstStrokeId.slice(-6)) - FROM + 1).toBeLessThanOrEqual(9);
});

test('strokes cut by a tenth both ways are said where every stay has a supply of its own that nobody recorded', () => {
  const supply = (i: number) => 1 + 0.06 * Math.sin(2.3 * Math.floor(i / 2));
  const events = strokeEvents(90, ONE_MOTOR, 4, () => ({ volts: null, ambientC: null })).map((event, i) =>
    changed(event, {
      all: ({ durationS, endStopAmps }) => ({
        durationS: durationS * (i < FROM ? 1 : 0.9) * supply(i),
        endStopAmps: i < FROM || directionOf(i) === 'retract' ? endStopAmps : null,
      }),
    }),
  );
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings.map(({ kind, direction }) => [kind, direction])).toEqual([['short-travel', 'extend']]);
});

test('strokes let go once in a while are no run of short ones, though nothing else is read between them', () => {
  const events = strokeEvents(120, ONE_MOTOR, 4).map((event, i) => {
    if (i < FROM) return event;
    if (i % 20 === 0)
      return changed(event, { all: ({ durationS }) => ({ durationS: 0.4 * durationS, endStopAmps: null }) });
    return remeasured(event, () => ({ doubts: [{ side: 'main', doubt: 'clipped', detail: '' }] }));
  });
  const said = new Set(foldAll(ONE_MOTOR, events).warnings.map(({ kind }) => kind));
  expect([...said]).toEqual(['sensor-doubt']);
});

test('a room that comes to run a little quicker calls nobody', () => {
  const events = strokeEvents(120, ONE_MOTOR, 4).map((event, i) =>
    changed(event, {
      all: ({ durationS }) => ({ durationS: durationS * (0.95 + 0.05 * Math.exp(-i / 40)) }),
    }),
  );
  expect(foldAll(ONE_MOTOR, events).warnings).toEqual([]);
});

test('one stay on a supply that nobody recorded, which quickens every stroke of it, calls nobody', () => {
  const events = strokeEvents(80, ONE_MOTOR, 4, () => ({ volts: null, ambientC: null })).map((event, i) => {
    const stay = Math.floor(i / 8);
    const strong = stay === 6 ? 0.86 : 1 + 0.03 * Math.sin(2.3 * stay);
    const placed = { ...event, atMs: event.atMs + stay * 10 * 86_400_000 };
    return changed(placed, {
      all: ({ durationS }) => ({ durationS: durationS * strong, endStopAmps: null }),
    });
  });
  expect(foldAll(ONE_MOTOR, events).warnings).toEqual([]);
});

/** A room that has learnt in mild weather how little that does, and comes into a frost that quickens its strokes by `part`. */
function intoFrost(part: number, rest: (index: number) => number = () => 1): Folded {
  const events = strokeEvents(80, ONE_MOTOR, 4, (i) => ({
    ambientC: i < 40 ? 20 + 8 * Math.sin(i) : -12 + 2 * Math.sin(i),
  })).map((event, i) =>
    changed(event, { all: ({ durationS }) => ({ durationS: durationS * (i < 40 ? 1 : part) * rest(i) }) }),
  );
  return foldAll(ONE_MOTOR, events);
}

test.each([0.95, 0.9])(
  'a frost that nobody has seen the like of calls nobody, though strokes take %d of their time in it',
  (part) => {
    expect(intoFrost(part).warnings).toEqual([]);
  },
);

test('strokes that are cut short in a frost are said all the same, once the frost is known', () => {
  const { warnings } = intoFrost(0.95, (i) => (i >= 60 && directionOf(i) === 'extend' ? 0.82 : 1));
  expect(warnings.map(({ kind, direction }) => [kind, direction])).toEqual([['short-travel', 'extend']]);
});

test('strokes that take their usual time on a supply that fell, by the stall that they read, are short', () => {
  const weaker = 0.87;
  const events = strokeEvents(70, ONE_MOTOR, 4, () => ({ volts: null, ambientC: 20 })).map((event, i) =>
    i < 40
      ? event
      : changed(event, {
          all: ({ durationS, inrushAmps, endStopAmps }) => ({
            durationS: (durationS / weaker) * (directionOf(i) === 'extend' ? 0.78 : 1),
            inrushAmps: weaker * inrushAmps,
            endStopAmps: endStopAmps === null ? null : weaker * endStopAmps,
          }),
        }),
  );
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings.map(({ kind, direction }) => [kind, direction])).toEqual([['short-travel', 'extend']]);
});

const BINS = 64;
/** A course with a landmark here and there and a seal at the outer end, against its level; 0 fully in to 1 fully out. */
const courseAt = (x: number) => 1 + 0.2 * Math.sin(9 * x) + (x > 0.94 ? 0.35 : 0);

/** A stroke over the travel from fully in but for `inner` to fully out but for `outer`, in so much of its time. */
function over(event: StrokeEvent, { inner = 0, outer = 0, quicker = 1, stall = 1 }): StrokeEvent {
  const part = 1 - inner - outer;
  const profile = (amps: number) =>
    Array.from({ length: BINS }, (_, bin) => amps * courseAt(inner + (part * (bin + 0.5)) / BINS));
  return changed(event, {
    all: ({ durationS, runningAmps, endStopAmps }) => ({
      durationS: part * durationS * quicker,
      profile: profile(runningAmps),
      endStopAmps: stall * (endStopAmps ?? 0),
    }),
  });
}

test.each([
  { at: 'outer', ends: 'extend' },
  { at: 'inner', ends: 'retract' },
])(
  'whichever way is short first, a course without its $at end tells that the $ends ends early',
  ({ at, ends }) => {
    for (const from of [40, 41]) {
      const events = strokeEvents(60, ONE_MOTOR, 4).map((event, i) =>
        over(event, i >= from ? { [at]: 0.2 } : {}),
      );
      const { warnings } = foldAll(ONE_MOTOR, events);
      expect(warnings.map(({ kind, direction }) => [kind, direction])).toEqual([['short-travel', ends]]);
    }
  },
);

test('which end a stroke lacked is forgotten once both ways were whole again', () => {
  const missingAfter = (strokes: number) =>
    foldAll(
      ONE_MOTOR,
      strokeEvents(strokes, ONE_MOTOR, 4).map((event, i) => over(event, i === 41 ? { inner: 0.3 } : {})),
    ).state.travel.missing;
  expect(missingAfter(42)).toHaveLength(1);
  expect(missingAfter(43)).toHaveLength(1);
  expect(missingAfter(44)).toEqual([]);
});

test('what holds the motor at another stall, on supplies that nobody recorded, is told by the end that the course lacks', () => {
  const supply = (i: number) => 1 + 0.12 * Math.sin(2.3 * Math.floor(i / 2));
  const room = (cut: number) =>
    foldAll(
      ONE_MOTOR,
      strokeEvents(90, ONE_MOTOR, 4, () => ({ volts: null, ambientC: null })).map((event, i) => {
        const isCut = i >= 40 && directionOf(i) === 'retract';
        return over(event, { quicker: supply(i), ...(isCut && { inner: cut, stall: 1.5 }) });
      }),
    ).warnings.map(({ kind, direction }) => [kind, direction]);
  expect(room(0.15)).toEqual([['short-travel', 'retract']]);
  expect(room(0)).toEqual([]);
});

test('a course that seems to lack its end, after a slower way out on a weaker supply, lacks nothing where the turns are all there', () => {
  const events = strokeEvents(90, ONE_MOTOR, 4, () => ({ volts: null, ambientC: null })).map((event, i) => {
    const goesOut = directionOf(i) === 'extend';
    const endStopAmps = goesOut && i >= 40 ? 35 : 38;
    const moved = goesOut ? { quicker: 1.12 } : { inner: 0.15, quicker: 1 / 0.85 };
    return changed(over(event, i < 40 ? {} : moved), { all: () => ({ endStopAmps }) });
  });
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings.map(({ kind, direction }) => [kind, direction])).toEqual([]);
});

test('a course that seems to lack its end lacks nothing where it is the way out that takes longer, for a load of its own', () => {
  const events = strokeEvents(90, ONE_MOTOR, 4, () => ({ volts: null, ambientC: null })).map((event, i) => {
    if (i < 40) return over(event, {});
    if (directionOf(i) === 'retract') return over(event, { inner: 0.15, quicker: 1 / 0.85 });
    return changed(over(event, { quicker: 1.12 }), {
      all: ({ runningAmps, runningAmpsP90 }) => ({
        runningAmps: 1.25 * runningAmps,
        runningAmpsP90: 1.25 * runningAmpsP90,
      }),
    });
  });
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings.map(({ kind, direction }) => [kind, direction])).toEqual([['rising-draw', 'extend']]);
});

test.each([true, false])(
  'a room that runs easier and quicker after lubricating goes all the way (comes to its stop: %s)',
  (stops) => {
    const events: RoomEvent[] = strokeEvents(80, ONE_MOTOR, 4).map((event, i) =>
      changed(event, {
        all: ({ runningAmps, runningAmpsP90, durationS, endStopAmps }) => ({
          endStopAmps: stops ? endStopAmps : null,
          ...(i < 40
            ? {}
            : {
                runningAmps: 0.76 * runningAmps,
                runningAmpsP90: 0.76 * runningAmpsP90,
                durationS: 0.935 * durationS,
              }),
        }),
      }),
    );
    const { warnings } = foldAll(ONE_MOTOR, [...events, serviceEvent(40, 'lubricated')].sort(orderEvents));
    expect(warnings).toEqual([]);
  },
);

test('one side that draws less where a piece of its course is missing is no room that runs easier', () => {
  const endStopAmps = 14;
  const events = strokeEvents(60, ROOM, 4).map((event, i) => {
    const part = i < FROM ? 1 : 0.9;
    const less = i < FROM ? 1 : 0.87;
    return changed(event, {
      front: ({ durationS }) => ({ durationS: part * durationS, endStopAmps }),
      rear: ({ durationS, runningAmps }) => ({
        durationS: part * durationS,
        runningAmps: less * runningAmps,
        endStopAmps,
      }),
    });
  });
  expect(kindsOf(foldAll(ROOM, events).warnings)).toContain('short-travel');
});
