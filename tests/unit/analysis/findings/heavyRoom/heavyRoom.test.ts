import { expect, test } from 'vitest';
import { isReady } from '../../../../../analysis/baseline/channel.ts';
import { advanceRoom, beginRoom } from '../../../../../analysis/room/fold.ts';
import type { Direction, Drive, RoomDescription } from '../../../../../analysis/trace.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll, kindsOf, ROOM_ID } from '../../support/folded.ts';
import { ONE_MOTOR, ROOM } from '../../support/handMade.ts';
import { strokeEvents } from '../../support/strokeEvents.ts';

/** What the first strokes of a room without a rating say, if it runs at a part of what its motors draw stalled. */
function warningsOf(
  drive: Drive,
  runningAmps: number,
  partOfStall: number,
  startOfStall = 1,
  described: RoomDescription = ROOM,
  spread = 0.02,
) {
  const stallAmps = runningAmps / partOfStall;
  const factors = [runningAmps / 8, runningAmps / 7.5];
  const events = strokeEvents(8, described, 5, () => ({ factors })).map((event, i) => {
    // A retract takes a tenth more than an extend: the part is the mean of both. No day is as warm as the one before.
    const stall = 1.05 * stallAmps * (1 + spread * Math.sin(2.3 * i));
    return changed(event, { all: () => ({ inrushAmps: startOfStall * stall, endStopAmps: stall }) });
  });
  return foldAll({ ...described, drive }, events).warnings;
}

const saidOf = (...asked: Parameters<typeof warningsOf>) =>
  warningsOf(...asked).map(({ kind, side }) => [kind, side]);

const HEAVY = [['heavy-room', null]];

test.each([
  {
    name: 'over half of its stall, however little that is',
    drive: 'in-wall',
    amps: 6,
    part: 0.56,
    said: HEAVY,
  },
  { name: 'over half of its stall by a single current', drive: 'cable', amps: 6, part: 0.56, said: HEAVY },
  { name: 'near what no drive should need, at 45 %', drive: 'in-wall', amps: 13, part: 0.45, said: HEAVY },
  { name: 'no more than drives in health draw, at 45 %', drive: 'in-wall', amps: 9, part: 0.45, said: [] },
  {
    name: 'much for one of two sides, whatever the drive',
    drive: 'cable',
    amps: 13,
    part: 0.45,
    said: HEAVY,
  },
  { name: 'near what no drive should need, at 36 %', drive: 'in-wall', amps: 13, part: 0.36, said: [] },
] as const)('a room without a rating that draws $name', ({ drive, amps, part, said }) => {
  expect(saidOf(drive, amps, part)).toEqual(said);
});

test.each([
  { name: 'little for a single motor', amps: 13, part: 0.45, said: [] },
  { name: 'what a single motor may draw', amps: 30, part: 0.2, said: [] },
  { name: 'more than any should need', amps: 52, part: 0.2, said: [['heavy-room', 'main']] },
])('one motor without a rating that draws $name', ({ amps, part, said }) => {
  expect(saidOf('through-frame', amps, part, 1, ONE_MOTOR)).toEqual(said);
});

test('two sides that draw what is much for one motor are heavy, whatever the drive', () => {
  expect(saidOf('through-frame', 22, 0.2)).toEqual(HEAVY);
  expect(saidOf('through-frame', 12, 0.2)).toEqual([]);
});

test('an end that draws less than the start is a pressed seal and no stall, and overloads nothing', () => {
  expect(saidOf('in-wall', 6, 0.56)).toEqual(HEAVY);
  expect(saidOf('in-wall', 6, 0.56, 1.3)).toEqual([]);
});

test('a controller that holds start and stop at one limit is no stall, nor is what no motor could move a room with', () => {
  expect(saidOf('in-wall', 6, 0.56, 1, ROOM, 0)).toEqual([]);
  expect(saidOf('in-wall', 4, 0.56)).toEqual([]);
  expect(saidOf('in-wall', 6, 0.75, 1, ROOM, 0)).toEqual(HEAVY);
});

test('where a controller starts softly a stop that is the same on every supply is its limit, and one that goes with the supply a stall', () => {
  const saidWith = (stopOf: (volts: number, index: number) => number) => {
    const told = (i: number) => ({ volts: 12.3 + 0.15 * ((2 * i) % 5), factors: [6 / 8, 6 / 7.5] });
    const events = strokeEvents(8, ROOM, 5, told).map((event, i) => {
      const endStopAmps = stopOf(told(i).volts, i);
      return changed(event, { all: () => ({ inrushAmps: 6.8, endStopAmps }) });
    });
    return kindsOf(foldAll(ROOM, events).warnings);
  };
  expect(saidWith((_, i) => 10.4 + 0.03 * (i % 3))).toEqual([]);
  expect(saidWith((volts, i) => (10.4 + 0.03 * (i % 3)) * (volts / 12.6))).toEqual(['heavy-room']);
});

test('a stop that is higher the way that takes more goes with the load, and one that never comes so high again is no standstill', () => {
  const saidWith = (stopOf: (direction: Direction | null, index: number) => number) => {
    const events = strokeEvents(8, ROOM, 5, () => ({ factors: [6 / 8, 6 / 7.5] })).map((event, i) => {
      const endStopAmps = stopOf(event.direction, i);
      return changed(event, { all: () => ({ inrushAmps: 9.5, endStopAmps }) });
    });
    return kindsOf(foldAll(ROOM, events).warnings);
  };
  expect(saidWith((_, i) => 10.2 + 0.1 * (i % 3))).toEqual(['heavy-room']);
  // A retract takes a tenth more than an extend.
  expect(saidWith((direction, i) => (direction === 'retract' ? 10.7 : 10) + 0.1 * (i % 3))).toEqual([]);
  expect(saidWith((direction, i) => (direction === 'extend' ? 10.7 : 10) + 0.1 * (i % 3))).toEqual([
    'heavy-room',
  ]);
  expect(saidWith((_, i) => (i === 1 ? 11.4 : 10.2 + 0.1 * (i % 3)))).toEqual([]);
});

test('what one start drew stands for the stall where the others were read too slowly and the stop was let go', () => {
  const saidWith = (inrushOf: (index: number) => number) => {
    const events = strokeEvents(8, ROOM, 5).map((event, i) =>
      changed(event, { all: () => ({ inrushAmps: 8 * inrushOf(i), endStopAmps: 8 * 1.8 }) }),
    );
    return kindsOf(foldAll(ROOM, events).warnings);
  };
  expect(saidWith(() => 1.7)).toEqual(['heavy-room']);
  expect(saidWith((i) => (i === 1 ? 4 : 1.7))).toEqual([]);
});

test('an end that rises little overloads nothing where the logger woke after the start, as a seal does as much', () => {
  const saidFrom = (startS: number) => {
    const events = strokeEvents(8, ROOM, 5).map((event) =>
      changed(event, {
        all: ({ runningAmps, phases }) => ({
          inrushAmps: 1.4 * runningAmps,
          endStopAmps: 1.4 * runningAmps,
          rateHz: 20,
          phases: { ...phases, startS },
        }),
      }),
    );
    return foldAll(ROOM, events).warnings.map(({ kind, side }) => [kind, side]);
  };
  expect(saidFrom(0.5)).toEqual(HEAVY);
  expect(saidFrom(0.004)).toEqual([]);
});

test('stalls that were let go at once read too little, and the highest tells how near a side runs to it', () => {
  const saidAt = (stalls: readonly number[]) => {
    const events = strokeEvents(8, ROOM, 5, () => ({ factors: [6 / 8, 6 / 7.5] })).map((event, i) =>
      changed(event, { all: () => ({ inrushAmps: 8, endStopAmps: stalls[i % stalls.length] }) }),
    );
    return foldAll(ROOM, events).warnings.map(({ kind, side }) => [kind, side]);
  };
  expect(saidAt([10, 15.5, 9.5])).toEqual([]);
  expect(saidAt([10, 10.4, 9.5])).toEqual(HEAVY);
});

test('one stop a little above a current so small tells nothing of a motor that a controller starts softly, and two tell', () => {
  const saidOfStops = (stopped: readonly number[]) => {
    const events = strokeEvents(8, ROOM, 5, () => ({ factors: [2.5 / 8, 2.5 / 7.5] })).map((event, i) =>
      changed(event, { all: () => ({ inrushAmps: 2.4, endStopAmps: stopped.includes(i) ? 3.5 : null }) }),
    );
    return foldAll(ROOM, events).warnings.map(({ kind, side }) => [kind, side]);
  };
  expect(saidOfStops([4])).toEqual([]);
  expect(saidOfStops([2, 4, 6])).toEqual(HEAVY);
});

test('what is said names what the room is told against, and never less than it draws', () => {
  const [byStall] = warningsOf('in-wall', 6, 0.56);
  expect(byStall.headline).toMatch(
    /^Each side draws up to 6\.\d A; it stalls at 1[01](\.\d)? A already, and no motor of any drive should run so near its stall\./,
  );
  expect(byStall.evidence).toMatchObject({ partOfStall: expect.closeTo(0.56, 1) });
  const [byDrive] = warningsOf('in-wall', 22, 0.3);
  expect(byDrive.headline).toContain('a healthy one of this kind of drive should stay under 16 A');
  expect(byDrive.evidence).toMatchObject({ limitAmps: 16 });
});

test('a room that is heavy learns its normal, also where the stroke before it was called so may have been cut short', () => {
  const room = { ...ROOM, ratedAmps: 5 };
  const events = strokeEvents(24, room, 5);
  const state = beginRoom(ROOM_ID, room);
  for (const event of events.slice(0, 2)) advanceRoom(state, event);
  // As a normal that other rooms lend may say of the second stroke; the third is called heavy.
  state.travel.mayBeCut = true;
  for (const event of events.slice(2)) advanceRoom(state, event);
  expect(kindsOf(state.open)).toEqual(['heavy-room']);
  expect(state.channels.map(isReady)).toEqual([true, true, true, true]);
});
