import { expect, test } from 'vitest';
import type { RoomDescription } from '../../../../../analysis/trace.ts';
import { changed } from '../../support/contexts.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR, ROOM } from '../../support/handMade.ts';
import { serviceEvent, strokeEvents } from '../../support/strokeEvents.ts';

const MENDED_FROM = 31;
const STROKES = 70;
/** Each side draws some 8 A, or half of that where it was mended. */
const RATED_AMPS = 5.5;

/** A room that is heavy until it draws `factors` of that; a motor with less to move takes less time. */
function mended(described: RoomDescription, factors: readonly number[]) {
  return strokeEvents(STROKES, described, 9, (i) => (i >= MENDED_FROM ? { factors } : {})).map((event, i) =>
    i < MENDED_FROM ? event : changed(event, { all: ({ durationS }) => ({ durationS: 0.9 * durationS }) }),
  );
}

test.each([
  { name: 'two sides', described: ROOM },
  { name: 'a single motor', described: ONE_MOTOR },
])(
  'a heavy room of $name that draws half from one stroke on was mended, and learns what it is now',
  ({ described }) => {
    const room = { ...described, ratedAmps: RATED_AMPS };
    const events = mended(room, [0.5, 0.5]);
    const { warnings, judgements } = foldAll(room, events);
    expect(warnings.map(({ kind }) => kind)).toEqual(['heavy-room']);
    expect(warnings[0].clearedAtMs).toBe(events[MENDED_FROM + 3].atMs);
    const now = judgements
      .slice(MENDED_FROM + 10)
      .flatMap(({ expectations }) => expectations.filter(({ measure }) => measure === 'runningAmps'));
    expect(now.filter(({ value, expected }) => !(Math.abs(value / (expected ?? 0) - 1) < 0.15))).toEqual([]);
    expect(now.filter(({ beyond }) => beyond === true).length).toBeLessThan(now.length / 20);
  },
);

test('a room that its stall calls heavy is over once it runs far from it', () => {
  const stalled = mended(ROOM, [0.5, 0.5]).map((event, i) => {
    const stallAmps = 14.5 + 0.2 * Math.sin(2.3 * i);
    return changed(event, { all: () => ({ inrushAmps: stallAmps, endStopAmps: stallAmps }) });
  });
  const { warnings } = foldAll(ROOM, stalled);
  expect(warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs])).toEqual([
    ['heavy-room', stalled[MENDED_FROM + 3].atMs],
  ]);
});

test('where the work was recorded as well, the strokes since then are kept', () => {
  const room = { ...ROOM, ratedAmps: RATED_AMPS };
  const events = [...mended(room, [0.5, 0.5]), serviceEvent(MENDED_FROM, 'block-replaced')].sort(
    (a, b) => a.atMs - b.atMs,
  );
  const { warnings, judgements } = foldAll(room, events);
  expect(warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs !== null])).toEqual([
    ['heavy-room', true],
  ]);
  // Two strokes each way, and one event more for the work.
  const known = judgements
    .slice(MENDED_FROM + 6)
    .map(({ expectations }) => expectations.every(({ expected }) => expected !== null));
  expect(known).toEqual(known.map(() => true));
});

test('a single heavy motor that idles has lost its load', () => {
  const room = { ...ONE_MOTOR, ratedAmps: RATED_AMPS };
  const { warnings } = foldAll(room, mended(room, [0.12]));
  expect(warnings.map(({ kind, clearedAtMs }) => [kind, clearedAtMs])).toEqual([
    ['heavy-room', null],
    ['dropped-load', null],
  ]);
});

test('a side of a heavy room that idles while the other bears the room has lost its load', () => {
  const room = { ...ROOM, ratedAmps: RATED_AMPS };
  const { warnings } = foldAll(room, mended(room, [0.3, 1.5]));
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([
    ['heavy-room', null],
    ['dropped-load', 'front'],
  ]);
});

test('a heavy room that is a little lighter for a while is heavy all the same', () => {
  const room = { ...ROOM, ratedAmps: RATED_AMPS };
  const { warnings } = foldAll(
    room,
    strokeEvents(STROKES, room, 9, (i) => (i % 12 === 8 ? { factors: [0.5, 0.5] } : {})),
  );
  expect(warnings.filter(({ kind }) => kind === 'heavy-room')).toMatchObject([{ clearedAtMs: null }]);
});

test.each([
  { name: 'two sides that start at their stall', described: ROOM, start: 40, stop: 38 },
  { name: 'a motor that comes to its stop', described: ONE_MOTOR, start: 40, stop: 38 },
  { name: 'a motor whose start rises with the load', described: ONE_MOTOR, start: null, stop: null },
])(
  'a room of $name that needs half all at once, and less time, learns that',
  ({ described, start, stop }) => {
    const events = mended(described, [0.5, 0.5]).map((event, i) =>
      changed(event, {
        all: ({ runningAmps, durationS }) => ({
          inrushAmps: start ?? 1.1 * runningAmps,
          endStopAmps: stop,
          durationS: i < MENDED_FROM ? durationS : 0.8 * durationS,
        }),
      }),
    );
    const { warnings, judgements } = foldAll(described, events);
    expect(warnings).toEqual([]);
    const beyond = judgements.map(({ expectations }) =>
      expectations.some((one) => one.measure === 'runningAmps' && one.beyond === true),
    );
    expect(beyond.slice(MENDED_FROM, MENDED_FROM + 6)).toEqual(Array.from({ length: 6 }, () => true));
    expect(beyond.slice(MENDED_FROM + 6).filter(Boolean).length).toBeLessThan(3);
  },
);
