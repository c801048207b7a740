import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { measureStroke } from '../../../../../analysis/measureStroke.ts';
import type { SideMeasures } from '../../../../../analysis/measures.ts';
import { summariseRoom } from '../../../../../analysis/room/fold.ts';
import type { RoomDescription } from '../../../../../analysis/trace.ts';
import { Random } from '../../../../../server/demo/simulator/random.ts';
import { changed, remeasured } from '../../support/contexts.ts';
import { type Folded, foldAll } from '../../support/folded.ts';
import { ONE_MOTOR, ROOM, sideOf, traceOf } from '../../support/handMade.ts';
import { directionOf, START_MS, strokeEvents } from '../../support/strokeEvents.ts';

const LEARNT = 24;
const HALF_DAY_MS = 43_200_000;
const MOVING_S = 20;

/** Where a side draws more than its 8 A: a raised cosine about a place of the travel. */
interface Bind {
  readonly place: number;
  /** From its middle to its end, as a part of the travel. */
  readonly half: number;
  /** At its middle, as a part of the running current. */
  readonly part: number;
  readonly sides: readonly string[];
  readonly only?: 'extend' | 'retract';
}

/** Strokes as records of samples, whose load differs from stroke to stroke; `bind` from the given stroke on. */
function recorded(
  room: RoomDescription,
  count: number,
  bind: Bind,
  fromStroke = LEARNT,
  toStroke = count,
): Folded {
  const random = new Random(3);
  const events = Array.from({ length: count }, (_, index): StrokeEvent => {
    const direction = directionOf(index);
    const together = Math.exp(random.normal(0, 0.03));
    const binds = index >= fromStroke && index < toStroke && (bind.only ?? direction) === direction;
    const sides = room.sides.map((side, place) => {
      const runningAmps = 8 * together * Math.exp(random.normal(0, 0.01));
      const atS = MOVING_S * (direction === 'extend' ? bind.place : 1 - bind.place);
      const bumps =
        binds && bind.sides.includes(side)
          ? [{ atS, widthS: MOVING_S * bind.half, amps: bind.part * runningAmps }]
          : [];
      return sideOf(side, {
        runningAmps,
        movingS: MOVING_S,
        noiseAmps: 0.15,
        seed: 1 + 3 * index + place,
        bumps,
      });
    });
    return {
      type: 'stroke',
      strokeId: `stroke-${String(index).padStart(6, '0')}`,
      atMs: START_MS + index * HALF_DAY_MS,
      direction,
      ambientC: 20,
      excluded: false,
      analysis: measureStroke(traceOf(sides, direction), room),
    };
  });
  return foldAll(room, events);
}

const FRONT: Bind = { place: 0.7, half: 0.15, part: 0.6, sides: ['front', 'main'] };

test.each([
  { name: 'a fifth of the travel', room: ONE_MOTOR, bind: FRONT, side: 'main' },
  { name: 'the front side alone', room: ROOM, bind: FRONT, side: 'front' },
  { name: 'both sides', room: ROOM, bind: { ...FRONT, sides: ['front', 'rear'] }, side: null },
  {
    name: 'half of the travel, a little',
    room: ROOM,
    bind: { ...FRONT, half: 0.3, part: 0.4 },
    side: 'front',
  },
  { name: 'a tenth of the travel', room: ONE_MOTOR, bind: { ...FRONT, half: 0.1, part: 0.6 }, side: 'main' },
])('a room that binds over a stretch of its travel is told so, and where: $name', ({ room, bind, side }) => {
  const { warnings, state } = recorded(room, LEARNT + 8, bind);
  expect(warnings).toMatchObject([{ kind: 'rising-draw', side, direction: null, pattern: null }]);
  const [{ position, evidence }] = warnings;
  expect(Math.abs((position ?? 0) - bind.place)).toBeLessThan(0.03);
  expect(Number(evidence.from)).toBeLessThan(bind.place);
  expect(Number(evidence.to)).toBeGreaterThan(bind.place);
  expect(Math.abs(Number(evidence.risePercent) - 100 * bind.part)).toBeLessThan(15);
  expect(summariseRoom(state).headline).toContain('of the way out');
});

test('it is said at the third stroke, and one that shows on one way alone at the third of that way', () => {
  const openedAt = (bind: Bind) =>
    recorded(ONE_MOTOR, LEARNT + 10, bind).judgements.findIndex(({ warnings }) => warnings.length > 0) -
    LEARNT;
  expect(openedAt(FRONT)).toBe(2);
  expect(openedAt({ ...FRONT, only: 'extend' })).toBe(4);
});

test('it is over once the room runs as ever there, and was said once', () => {
  const { warnings } = recorded(ONE_MOTOR, LEARNT + 24, FRONT, LEARNT, LEARNT + 8);
  expect(warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs !== null])).toEqual([
    ['rising-draw', true],
  ]);
});

test('nothing of it is learnt, however long it lasts', () => {
  const { warnings, state } = recorded(ROOM, LEARNT + 40, FRONT);
  expect(warnings).toMatchObject([{ kind: 'rising-draw', clearedAtMs: null }]);
  const usual = state.channels.find((channel) => channel.side === 'front')?.profile ?? [];
  expect(Math.max(...usual.map((amps) => amps ?? 0))).toBeLessThan(9);
});

test('a room that runs harder all along is told of the whole, and one that binds harder still goes over to it', () => {
  const whole = strokeEvents(LEARNT + 8, ROOM, 4, (i) => (i < LEARNT ? {} : { factors: [1.3, 1.3] }));
  expect(foldAll(ROOM, whole).warnings).toMatchObject([{ kind: 'rising-draw', side: null, position: null }]);
  const growing = strokeEvents(LEARNT + 16, ROOM, 4, (i) => {
    if (i < LEARNT) return {};
    const bump = { from: 0.5, to: 0.7, part: 0.5 };
    return i < LEARNT + 6 ? { bump } : { bump, factors: [1.4, 1.4] };
  });
  const { warnings } = foldAll(ROOM, growing);
  expect(warnings).toMatchObject([
    { kind: 'rising-draw', position: null, evidence: { risePercent: expect.any(Number) } },
  ]);
});

test('a stretch so long and so heavy that the middle of what is drawn rises with it is told as a place, of its side', () => {
  const long: Bind = { place: 0.6, half: 0.26, part: 1.8, sides: ['front'] };
  const { warnings } = recorded(ROOM, LEARNT + 12, long);
  expect(warnings).toMatchObject([{ kind: 'rising-draw', side: 'front', position: expect.any(Number) }]);
  // So is one on which the weather lies, by which both sides take a tenth more.
  const events = strokeEvents(LEARNT + 12, ROOM, 4, (i) => (i < LEARNT ? {} : { factors: [1.1, 1.1] }));
  const bound = events.map((event, i) =>
    i < LEARNT
      ? event
      : changed(event, {
          front: ({ profile }) => ({
            profile: profile.map((amps, bin) => (amps !== null && bin >= 25 && bin < 45 ? 1.7 * amps : amps)),
          }),
        }),
  );
  expect(foldAll(ROOM, bound).warnings).toMatchObject([
    { kind: 'rising-draw', side: 'front', evidence: { from: expect.any(Number) } },
  ]);
});

test('a side that ran on alone after the other had come to its end is late, and binds nowhere', () => {
  const lateS = 4;
  const events = strokeEvents(LEARNT + 12, ROOM, 4).map((event, i): StrokeEvent => {
    if (i < LEARNT) return event;
    const alone = changed(event, {
      front: (measured) => ({
        durationS: measured.durationS + lateS,
        phases: { ...measured.phases, endStopStartS: (measured.phases.endStopStartS ?? 0) + lateS },
        profile: measured.profile.map((amps, bin) => {
          const atEnd = event.direction === 'extend' ? bin >= 54 : bin < 10;
          return amps !== null && atEnd ? 1.6 * amps : amps;
        }),
      }),
    });
    return remeasured(alone, () => ({ lagS: -lateS }));
  });
  expect(foldAll(ROOM, events).warnings).toMatchObject([{ kind: 'late-side', side: 'front' }]);
});

test('a place where something catches is a peak there, and no stretch', () => {
  const { warnings } = recorded(ONE_MOTOR, LEARNT + 12, { ...FRONT, half: 0.02, part: 0.9 });
  expect(warnings).toMatchObject([{ kind: 'stall-spike', pattern: 'same-place' }]);
});

test('seals that are pressed harder at either end, and a healthy course of ups and downs, are none', () => {
  for (const place of [0.005, 0.995])
    expect(recorded(ONE_MOTOR, LEARNT + 12, { ...FRONT, place, half: 0.05, part: 0.8 }).warnings).toEqual([]);
  expect(recorded(ROOM, LEARNT + 30, { ...FRONT, part: 0.9 }, 0).warnings).toEqual([]);
});

test('a stretch that takes what it always did is not heavy because the rest of the travel takes less', () => {
  const events = strokeEvents(LEARNT + 8, ROOM, 4).map((event, i) =>
    i < LEARNT
      ? event
      : changed(event, {
          front: ({ runningAmps, profile }) => ({
            runningAmps: 0.72 * runningAmps,
            profile: profile.map((amps, bin) => (amps === null ? null : (bin < 16 ? 1 : 0.7) * amps)),
          }),
        }),
  );
  const said = foldAll(ROOM, events).warnings.map(({ kind, side }) => `${kind} ${side}`);
  expect(said).not.toContain('rising-draw front');
});

test('a stretch of both sides is of both, though one of them hides it now and then', () => {
  const bound = (measured: SideMeasures): Partial<SideMeasures> => ({
    profile: measured.profile.map((amps, bin) =>
      amps !== null && bin > 20 && bin < 34 ? 1.45 * amps : amps,
    ),
  });
  const sidesAfter = (strokes: number) => {
    const events = strokeEvents(LEARNT + strokes, ROOM, 4).map((event, i) => {
      if (i < LEARNT) return event;
      return changed(event, i % 3 === 2 ? { front: bound } : { front: bound, rear: bound });
    });
    return foldAll(ROOM, events).warnings.map(({ kind, side }) => [kind, side]);
  };
  for (const strokes of [9, 10, 11, 12]) expect(sidesAfter(strokes)).toEqual([['rising-draw', null]]);
});
