import { expect, test } from 'vitest';
import type { RoomEvent, StrokeEvent } from '../../../../../analysis/history.ts';
import { advanceRoom, beginRoom, orderEvents } from '../../../../../analysis/room/fold.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll, kindsOf } from '../../support/folded.ts';
import { ONE_MOTOR, ROOM } from '../../support/handMade.ts';
import { directionOf, serviceEvent, strokeEvents } from '../../support/strokeEvents.ts';

const FAULT_FROM = 40;
const STROKES = 60;

test('a single motor that runs without load while its stall stands has lost it, by its one side', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3, (i) => (i >= FAULT_FROM ? { factors: [0.12] } : {})).map(
    // A motor without load runs faster.
    (event, i) =>
      i >= FAULT_FROM ? changed(event, { all: ({ durationS }) => ({ durationS: 0.85 * durationS }) }) : event,
  );
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings.map(({ kind, side, position }) => [kind, side, position])).toEqual([
    ['dropped-load', 'main', null],
  ]);
  expect(Number(warnings[0].firstStrokeId.slice(-6)) - FAULT_FROM + 1).toBeLessThanOrEqual(4);
});

test('a single motor that runs without load for part of the way is said with the place', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3, (i) =>
    i >= FAULT_FROM ? { bump: { from: 0.4, to: 0.7, part: -0.85 } } : {},
  );
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings).toMatchObject([{ kind: 'dropped-load', side: 'main' }]);
  expect(Math.abs((warnings[0].position ?? 9) - 0.55)).toBeLessThan(0.03);
});

test('a clamp that reads a third of everything is in doubt, and no load was lost', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3).map((event, i) =>
    i < FAULT_FROM
      ? event
      : changed(event, {
          all: (measured) => ({
            runningAmps: measured.runningAmps / 3,
            runningAmpsP90: measured.runningAmpsP90 / 3,
            inrushAmps: measured.inrushAmps / 3,
            endStopAmps: measured.endStopAmps === null ? null : measured.endStopAmps / 3,
            chargeAs: measured.chargeAs / 3,
            profile: measured.profile.map((amps) => (amps === null ? null : amps / 3)),
          }),
        }),
  );
  expect(kindsOf(foldAll(ONE_MOTOR, events).warnings)).toEqual(['sensor-doubt']);
});

test.each([
  { name: 'where the load is lost and taken up', places: [0.41, 0.69] },
  { name: 'at one place of the way on which it bears the load alone', places: [0.55, 0.55] },
])('the jolts of the other side $name are no stall spikes', ({ places }) => {
  const events = strokeEvents(STROKES + 20, ROOM, 3).map((event, i) => {
    if (i < FAULT_FROM) return event;
    const at = places[i % 2];
    return changed(event, {
      front: ({ profile }) => ({
        profile: profile.map((amps, bin) => (amps !== null && bin > 26 && bin < 44 ? 0.15 * amps : amps)),
      }),
      rear: () => ({ spikes: [{ position: at, amps: 11, widthS: 0.3 }] }),
    });
  });
  const { warnings } = foldAll(ROOM, events);
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['dropped-load', 'front']]);
});

test('a clamp left off, whose last digit flickers, is in doubt for a single motor: no load was lost', () => {
  const off = (i: number) => ({
    runningAmps: 0.4,
    runningAmpsP90: 0.4,
    inrushAmps: 0.4,
    endStopAmps: 0.4,
    chargeAs: 2,
    profile: Array.from({ length: 64 }, (_, bin) => (bin > 22 && bin < 48 + (i % 3) ? 0.4 : null)),
  });
  const events = strokeEvents(STROKES, ONE_MOTOR, 3).map((event, i) =>
    i < FAULT_FROM ? event : changed(event, { all: () => off(i) }),
  );
  expect(kindsOf(foldAll(ONE_MOTOR, events).warnings)).toEqual(['sensor-doubt']);
});

test('an odd first stroke does not keep a room from learning what is usual', () => {
  const state = beginRoom('room', ROOM, []);
  const events = strokeEvents(18, ROOM, 5, (i) => (i === 0 ? { bump: { from: 0.8, to: 1, part: 3.5 } } : {}));
  const judgements = events.map((event) => advanceRoom(state, event));
  for (const { expectations } of judgements.slice(16))
    for (const { measure, expected } of expectations)
      expect([measure, expected]).not.toEqual([measure, null]);
  expect(judgements.flatMap(({ warnings }) => warnings)).toEqual([]);
});

test('a side that idles from the first stroke on is said from the third on, for as long as it lasts', () => {
  const idles = strokeEvents(50, ROOM, 5, () => ({ factors: [1.5, 0.15] }));
  const { warnings } = foldAll(ROOM, idles);
  expect(
    warnings.map(({ kind, side, position, clearedAtMs }) => [kind, side, position, clearedAtMs]),
  ).toEqual([['dropped-load', 'rear', null, null]]);
  expect(warnings[0].openedAtMs).toBe(idles[2].atMs);
});

test('a side read on another scale from the first stroke on, start and all, idles not', () => {
  const scaled = strokeEvents(50, ROOM, 5, () => ({ factors: [1.5, 0.15] })).map((event) =>
    changed(event, { rear: ({ inrushAmps }) => ({ inrushAmps: 0.15 * inrushAmps }) }),
  );
  expect(kindsOf(foldAll(ROOM, scaled).warnings)).not.toContain('dropped-load');
});

test('what a side loses going in alone is said, and is over after two whole ways in', () => {
  const until = FAULT_FROM + 20;
  const events = strokeEvents(STROKES + 20, ROOM, 3, (i) =>
    i >= FAULT_FROM && i < until && directionOf(i) === 'retract' ? { factors: [1.5, 0.2] } : {},
  );
  const { warnings } = foldAll(ROOM, events);
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['dropped-load', 'rear']]);
  const strokeAt = (atMs: number | null) => events.findIndex((event) => event.atMs === atMs);
  expect(strokeAt(warnings[0].openedAtMs) - FAULT_FROM).toBeLessThanOrEqual(6);
  expect(strokeAt(warnings[0].clearedAtMs) - until).toBeLessThanOrEqual(4);
});

test('a load that was lost is not over because a slower logger no longer reads the stall', () => {
  const slower = FAULT_FROM + 8;
  const read = (event: StrokeEvent, i: number) =>
    changed(event, {
      all: (measured) =>
        i < slower
          ? { rateHz: 200 }
          : { rateHz: 10, inrushAmps: 0.6 * measured.inrushAmps, endStopAmps: null },
    });
  const events = strokeEvents(STROKES, ONE_MOTOR, 3, (i) => (i >= FAULT_FROM ? { factors: [0.12] } : {})).map(
    read,
  );
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs])).toEqual([['dropped-load', null]]);
});

test('a side that carries less, as is said of the other, has not lost its load for drawing half of it', () => {
  const events = strokeEvents(STROKES + 20, ROOM, 3, (i) => {
    if (i < FAULT_FROM) return {};
    return { factors: i < FAULT_FROM + 8 ? [1.35, 0.62] : [1.45, 0.5] };
  });
  expect(foldAll(ROOM, events).warnings.map(({ kind, side }) => [kind, side])).toEqual([
    ['uneven-sides', 'front'],
  ]);
});

test('a side that its controller stops all along the way, so that it is read in between only, has lost its load', () => {
  const events = strokeEvents(STROKES, ROOM, 3, (i) => (i < FAULT_FROM ? {} : { factors: [1.25, 0.35] })).map(
    (event, i) =>
      changed(event, {
        rear: ({ profile }) => ({
          profile: profile.map((amps, bin) => (i < FAULT_FROM || bin % 6 < 2 ? amps : null)),
        }),
      }),
  );
  const { warnings } = foldAll(ROOM, events);
  expect(warnings.map(({ kind, side, position }) => [kind, side, position])).toEqual([
    ['dropped-load', 'rear', null],
  ]);
});

test.each([
  { part: 0.41, said: [['dropped-load', 'rear']] },
  { part: 0.5, said: [] },
])(
  'a side that draws $part of what the other does from the first stroke on idles or not',
  ({ part, said }) => {
    const events = strokeEvents(50, ROOM, 5, () => ({ factors: [1.25, (1.25 * part * 8) / 7.5] }));
    expect(foldAll(ROOM, events).warnings.map(({ kind, side }) => [kind, side])).toEqual(said);
  },
);

test('what a side idles for most of its way while the room learns is said with the place', () => {
  const events = strokeEvents(10, ROOM, 5).map((event, i) =>
    changed(event, {
      rear: ({ profile }) => ({
        profile: profile.map((amps, bin) =>
          amps !== null && i > 3 && bin > 21 && bin < 60 ? 0.3 * amps : amps,
        ),
      }),
    }),
  );
  const [{ kind, side, position }] = foldAll(ROOM, events).warnings;
  expect([kind, side]).toEqual(['dropped-load', 'rear']);
  expect(Math.abs((position ?? 9) - 0.64)).toBeLessThan(0.03);
});

/** What a side draws between two bins of its way, from the first stroke on. */
function drawsBetween(side: string, { from, to }: { from: number; to: number }, part: number): StrokeEvent[] {
  return strokeEvents(12, ROOM, 5).map((event) =>
    changed(event, {
      [side]: ({ profile }) => ({
        profile: profile.map((amps, bin) => (amps !== null && bin >= from && bin < to ? part * amps : amps)),
      }),
    }),
  );
}

test('a side that idles for a third of its way from the first stroke on has lost its load there, though it works within its rating beside it', () => {
  const events = drawsBetween('rear', { from: 10, to: 31 }, 0.25);
  const { warnings } = foldAll({ ...ROOM, ratedAmps: 11 }, events);
  expect(warnings).toMatchObject([{ kind: 'dropped-load', side: 'rear' }]);
  expect(Math.abs((warnings[0].position ?? 9) - 0.32)).toBeLessThan(0.03);
  expect(warnings[0].firstStrokeId).toBe(events[2].strokeId);
});

test('a side that draws on as it does where the other bears four times as much has lost no load', () => {
  const events = drawsBetween('front', { from: 10, to: 31 }, 4);
  const { warnings } = foldAll({ ...ROOM, ratedAmps: null }, events);
  expect(kindsOf(warnings)).not.toContain('dropped-load');
});

test('a load that was lost is not over for a motor that turns harder in the cold than it did at first', () => {
  const events = strokeEvents(STROKES + 20, ROOM, 3, (i) => {
    if (i < FAULT_FROM) return {};
    return { factors: [1.3, i < FAULT_FROM + 20 ? 0.45 : 0.62] };
  });
  expect(foldAll(ROOM, events).warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs])).toEqual([
    ['dropped-load', null],
  ]);
});

test('a cable that is slack where the way in begins leaves its start without load as well', () => {
  const events = strokeEvents(STROKES, ONE_MOTOR, 3, (i) =>
    i >= FAULT_FROM && directionOf(i) === 'retract' ? { bump: { from: 0.77, to: 1, part: -0.7 } } : {},
  ).map((event, i) =>
    i >= FAULT_FROM && directionOf(i) === 'retract'
      ? changed(event, { all: ({ inrushAmps }) => ({ inrushAmps: 0.5 * inrushAmps, endStopAmps: null }) })
      : event,
  );
  const { warnings } = foldAll(ONE_MOTOR, events);
  expect(warnings).toMatchObject([{ kind: 'dropped-load', side: 'main' }]);
  expect(Math.abs((warnings[0].position ?? 9) - 0.885)).toBeLessThan(0.03);
});

/** A side that idles at the beginning of each of its ways, or of one place of the travel; it ends so much later. */
function idlesFirst(laterS: number, isAtPlace: boolean): StrokeEvent[] {
  return strokeEvents(STROKES, ROOM, 3, (i) => (i >= FAULT_FROM ? { lagS: laterS } : {})).map((event, i) => {
    if (i < FAULT_FROM) return event;
    const isIn = isAtPlace || directionOf(i) === 'extend';
    const idle = (bin: number) => (isIn ? bin < 8 : bin >= 56);
    return changed(event, {
      rear: ({ profile }) => ({
        profile: profile.map((amps, bin) => (amps !== null && idle(bin) ? 0.2 * amps : amps)),
      }),
    });
  });
}

test.each([
  { name: 'that ends with the other all the same', events: idlesFirst(0, false) },
  { name: 'at one place of the travel, going out and coming in', events: idlesFirst(2.5, true) },
])('a side without load where a way begins $name has lost it there', ({ events }) => {
  const { warnings } = foldAll(ROOM, events);
  expect(warnings).toContainEqual(expect.objectContaining({ kind: 'dropped-load', side: 'rear' }));
});

test('a side that works within its rating does not idle, though the other draws three times as much from the first stroke on', () => {
  const heavy = strokeEvents(12, ROOM, 3, () => ({ factors: [2.7, 1] }));
  const [front, rear] = ['front', 'rear'].map((side) =>
    heavy.map(({ analysis }) => (analysis.status === 'done' ? analysis.sides[side].runningAmps : 0)),
  );
  const kinds = (ratedAmps: number | null) =>
    foldAll({ ...ROOM, ratedAmps }, heavy).warnings.map(({ kind, side }) => [kind, side]);
  expect(Math.max(...rear) / Math.min(...front)).toBeLessThan(0.44);
  expect(kinds(1.3 * rear[0])).toEqual([['heavy-room', 'front']]);
  expect(kinds(4 * rear[0])).toEqual([['dropped-load', 'rear']]);
});

test.each([
  { who: 'works as hard as a motor should', rear: 0.85, said: [['heavy-room', 'front']] },
  { who: 'draws what a motor draws without load', rear: 0.35, said: [['dropped-load', 'rear']] },
])('of a room without a rating, whose front is overloaded, the rear that $who', ({ rear, said }) => {
  const told = { factors: [2.7, rear] };
  const { warnings } = foldAll(
    { ...ROOM, ratedAmps: null },
    strokeEvents(12, ROOM, 3, () => told),
  );
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual(said);
});

test('the jolts in which a side ran that had lost its load are no peaks, also once it bears it again', () => {
  const mended = FAULT_FROM + 20;
  const jolt = { position: 0.45, amps: 12, widthS: 0.3 };
  const events: RoomEvent[] = strokeEvents(90, ROOM, 3, (i) =>
    i < FAULT_FROM || i >= mended ? {} : { factors: [0.02, 1.5], spikes: [[jolt], []] },
  );
  const { warnings } = foldAll(ROOM, [...events, serviceEvent(mended, 'gear-replaced')].sort(orderEvents));
  expect(warnings.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs === null])).toEqual([
    ['dropped-load', 'front', false],
  ]);
});
