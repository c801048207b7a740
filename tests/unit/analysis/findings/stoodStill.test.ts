import { expect, test } from 'vitest';
import type { RoomEvent, StrokeEvent } from '../../../../analysis/history.ts';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { summariseRoom } from '../../../../analysis/room/fold.ts';
import type { Direction } from '../../../../analysis/trace.ts';
import { changed } from '../support/contexts.ts';
import { type Folded, foldAll } from '../support/folded.ts';
import { ONE_MOTOR, ROOM, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { serviceEvent, strokeEvents, type Told } from '../support/strokeEvents.ts';

/** A room that has learnt its normal; the last of them came in, so that the next one goes out. */
const LEARNT = 40;
const MINUTE_MS = 60_000;

/** The motor stalled from start to end: V/R all the time, as the record of such a stroke measures. */
function stalled(event: StrokeEvent, direction: Direction, minutes: number): StrokeEvent {
  const stuck = changed(
    { ...event, strokeId: `${event.strokeId}-${minutes}`, atMs: event.atMs + minutes * MINUTE_MS, direction },
    {
      all: ({ inrushAmps }) => ({
        inrushAmps,
        runningAmps: 0.96 * inrushAmps,
        runningAmpsP90: 0.98 * inrushAmps,
        endStopAmps: null,
        durationS: 4,
        chargeAs: 4 * inrushAmps,
      }),
    },
  );
  if (stuck.analysis.status !== 'done') throw new TypeError('a stroke that can be used is expected here');
  return { ...stuck, analysis: { ...stuck.analysis, direction } };
}

function after(
  room: typeof ROOM,
  tries: (last: StrokeEvent) => StrokeEvent[],
  told: Partial<Told> = {},
  more = 0,
): Folded {
  const events = strokeEvents(LEARNT + more, room, 4, () => told);
  return foldAll(room, [...events.slice(0, LEARNT), ...tries(events[LEARNT - 1]), ...events.slice(LEARNT)]);
}

test.each([
  { name: 'of one motor', room: ONE_MOTOR, told: {} },
  { name: 'of two sides', room: ROOM, told: {} },
  { name: 'whose supply and temperature nobody recorded', room: ROOM, told: { volts: null, ambientC: null } },
])('a room $name that stalls from the start as it should go out is stuck, at once', ({ room, told }) => {
  const { warnings, state } = after(room, (last) => [stalled(last, 'extend', 60)], told);
  expect(warnings).toMatchObject([
    {
      kind: 'short-travel',
      direction: 'extend',
      severity: 'stop',
      side: null,
      evidence: { stoodStill: true },
    },
  ]);
  expect(summariseRoom(state)).toMatchObject({
    verdict: 'stop',
    headline: `Going out, the room does not move: the motor${room === ROOM ? 's stall' : ' stalls'} from the start.`,
  });
  // Nobody is to run a room that is to stay where it is.
  expect(warnings[0].checks.join(' ')).not.toMatch(/whole stroke|fully in/);
});

test('pressing on where the room has come in already is no trouble, however often', () => {
  const { warnings, state } = after(ONE_MOTOR, (last) =>
    [1, 2, 3, 4].map((minutes) => stalled(last, 'retract', minutes)),
  );
  expect(warnings).toEqual([]);
  expect(summariseRoom(state).verdict).toBe('clear');
});

test('nothing is learnt of a room that does not move, and it is no stroke to learn from', () => {
  const still = after(
    ONE_MOTOR,
    (last) => [1, 2, 3].map((minutes) => stalled(last, 'retract', minutes)),
    {},
    1,
  );
  const plain = after(ONE_MOTOR, () => [], {}, 1);
  expect(still.judgements.at(-1)).toEqual(plain.judgements.at(-1));
  expect(still.state.usable).toEqual(plain.state.usable);
});

test('it is said once however often it is tried, and eased once the room moves, and over after three whole strokes', () => {
  const tried = after(ONE_MOTOR, (last) => [60, 61, 62].map((minutes) => stalled(last, 'extend', minutes)));
  expect(tried.warnings).toHaveLength(1);
  const [moved, thrice] = [2, 6].map((more) =>
    after(ONE_MOTOR, (last) => [60, 61].map((minutes) => stalled(last, 'extend', minutes)), {}, more),
  );
  expect(moved.warnings).toMatchObject([{ kind: 'short-travel', severity: 'watch', clearedAtMs: null }]);
  expect(moved.warnings[0].headline).toContain('it has moved since');
  expect(thrice.warnings.map(({ clearedAtMs }) => clearedAtMs !== null)).toEqual([true]);
});

test('a room that was stopped on its way and does not go on is stuck there', () => {
  const { warnings } = after(ONE_MOTOR, (last) => {
    const part = changed(
      {
        ...strokeEvents(LEARNT + 1, ONE_MOTOR, 4)[LEARNT],
        strokeId: 'part',
        atMs: last.atMs + 30 * MINUTE_MS,
      },
      {
        all: ({ durationS, chargeAs }) => ({
          durationS: 0.4 * durationS,
          chargeAs: 0.4 * chargeAs,
          endStopAmps: null,
        }),
      },
    );
    return [part, stalled(last, 'extend', 31)];
  });
  expect(warnings).toMatchObject([{ kind: 'short-travel', direction: 'extend', severity: 'stop' }]);
});

test('a room that runs nearly twice as heavy does move', () => {
  const events = strokeEvents(LEARNT + 12, ONE_MOTOR, 4, (i) => ({ factors: [i < LEARNT ? 1 : 1.9] }));
  expect(foldAll(ONE_MOTOR, events).warnings.map(({ kind }) => kind)).toEqual(['rising-draw']);
});

test.each([
  { name: '10 Hz', rateHz: 10 },
  { name: '50 Hz', rateHz: 50 },
  { name: '200 Hz', rateHz: 200 },
])(
  'a record of a motor that stalls from start to end has neither inrush nor end stop, at $name',
  ({ rateHz }) => {
    const shape = { rateHz, movingS: 4, runningAmps: 38, inrushAmps: 39, stopAmps: null, noiseAmps: 0.1 };
    const analysis = measureStroke(traceOf([sideOf('main', shape)]), ONE_MOTOR);
    expect(analysis).toMatchObject({ status: 'done', sides: { main: { endStopAmps: null } } });
    if (analysis.status !== 'done') return;
    const { inrushAmps, runningAmps, runningAmpsP90 } = analysis.sides.main;
    expect(inrushAmps / runningAmps).toBeLessThan(1.1);
    expect(runningAmpsP90 / runningAmps).toBeLessThan(1.05);
  },
);

/** Of a way out that ends after this part of it the record shows the beginning only: of time, charge and course. */
function endsAt(event: StrokeEvent, part: number): StrokeEvent {
  return changed(event, {
    all: ({ durationS, chargeAs, profile }) => ({
      durationS: part * durationS,
      chargeAs: (part + 0.05) * chargeAs,
      profile: profile.map((_, bin) => profile[Math.floor(part * bin)]),
    }),
  });
}

test('a motor that stalls far from the end of a way that it began at the other end is told at the first stroke', () => {
  const events = strokeEvents(LEARNT + 1, ROOM, 4);
  const blocked = endsAt(events[LEARNT], 0.35);
  const { warnings } = foldAll(ROOM, [...events.slice(0, LEARNT), blocked]);
  expect(warnings).toMatchObject([
    { kind: 'short-travel', direction: 'extend', evidence: { stalled: true } },
  ]);
});

test('one that began half way, let go before, or whose seal alone was pressed there, is not', () => {
  const events = strokeEvents(LEARNT + 1, ROOM, 4);
  const early = endsAt(events[LEARNT], 0.35);
  const before = changed(events[LEARNT - 1], {
    all: ({ durationS, chargeAs }) => ({
      durationS: 0.6 * durationS,
      chargeAs: 0.6 * chargeAs,
      endStopAmps: null,
    }),
  });
  const pressed = changed(early, { all: ({ runningAmps }) => ({ endStopAmps: 1.6 * runningAmps }) });
  const learnt = events.slice(0, LEARNT - 1);
  expect(foldAll(ROOM, [...learnt, before, early]).warnings).toEqual([]);
  expect(foldAll(ROOM, [...learnt, events[LEARNT - 1], pressed]).warnings).toEqual([]);
});

test('nor is the way back from one on which one side stopped on its way, though the other went on to its end', () => {
  const events = strokeEvents(LEARNT + 2, ROOM, 4);
  const tripped = changed(events[LEARNT], {
    front: ({ durationS, chargeAs }) => ({ durationS: 0.2 * durationS, chargeAs: 0.3 * chargeAs }),
  });
  const back = endsAt(events[LEARNT + 1], 0.6);
  const said = foldAll(ROOM, [...events.slice(0, LEARNT), tripped, back]).warnings.map(({ kind }) => kind);
  expect(said).not.toContain('short-travel');
});

test('nor is the way back from one that was let go while the room learns anew after work', () => {
  const events = strokeEvents(LEARNT + 6, ROOM, 4);
  const told = events.flatMap((event, i): RoomEvent[] => {
    if (i === LEARNT - 1) return [serviceEvent(LEARNT - 1, 'motor-replaced'), event];
    if (i === LEARNT + 2) return [changed(endsAt(event, 0.3), { all: () => ({ endStopAmps: null }) })];
    return [i === LEARNT + 3 ? endsAt(event, 0.3) : event];
  });
  expect(foldAll(ROOM, told).warnings).toEqual([]);
});

test('nor is the second part of a way whose first part could not be read', () => {
  const events = strokeEvents(LEARNT + 2, ROOM, 4);
  const unread = strokeEvents(LEARNT + 1, ROOM, 4, () => ({ unusable: true }))[LEARNT];
  const rest = { ...endsAt(events[LEARNT], 0.6), strokeId: 'rest', atMs: unread.atMs + MINUTE_MS };
  const { warnings } = foldAll(ROOM, [...events.slice(0, LEARNT), unread, rest, events[LEARNT + 1]]);
  expect(warnings).toEqual([]);
});

test('nor where the switch was pressed in vain between the part that could not be read and the rest', () => {
  const events = strokeEvents(LEARNT + 2, ROOM, 4);
  const unread = strokeEvents(LEARNT + 1, ROOM, 4, () => ({ unusable: true }))[LEARNT];
  const pressed = stalled(events[LEARNT], 'extend', 1);
  const rest = { ...endsAt(events[LEARNT], 0.35), strokeId: 'rest', atMs: unread.atMs + 2 * MINUTE_MS };
  const { warnings } = foldAll(ROOM, [...events.slice(0, LEARNT), unread, pressed, rest]);
  expect(warnings).toEqual([]);
});

/** The rope winds up or the play is taken up, then the motor stalls until the controller cuts it off, all within a second. */
const JERK = { movingS: 0.45, stopS: 0.35, inrushTauS: 0.04, runningAmps: 4 };
/** Cut off while the current still climbs. */
const CLIMBING = { ...JERK, inrushAmps: 44, stopAmps: null, bumps: [{ atS: 0.45, widthS: 0.4, amps: 28 }] };

function jerk(last: StrokeEvent, minutes: number, direction: Direction, shape: Partial<Shape>): StrokeEvent {
  const analysis = measureStroke(traceOf([sideOf('main', shape)], direction), ONE_MOTOR);
  const id = `jerk-${minutes}`;
  return { ...last, strokeId: id, atMs: last.atMs + minutes * MINUTE_MS, direction, analysis };
}

/** The same room's whole strokes, as recorded. */
const whole = (event: StrokeEvent): StrokeEvent => ({
  ...event,
  analysis: measureStroke(traceOf([sideOf('main')], event.direction), ONE_MOTOR),
});

test.each([
  { tries: [60], shape: JERK, said: [] },
  { tries: [60, 61], shape: JERK, said: ['short-travel'] },
  { tries: [60, 61], shape: CLIMBING, said: ['short-travel'] },
])(
  'a room that its controller stops within a second is stuck once it is tried again: $tries, $shape',
  ({ tries, shape, said }) => {
    const events = strokeEvents(LEARNT, ONE_MOTOR, 4).map(whole);
    const jerks = tries.map((minutes) => jerk(events[LEARNT - 1], minutes, 'extend', shape));
    const { warnings, state } = foldAll(ONE_MOTOR, [...events, ...jerks]);
    expect(warnings.map(({ kind }) => kind)).toEqual(said);
    expect(summariseRoom(state).verdict).toBe(said.length > 0 ? 'stop' : 'clear');
  },
);

test('a switch that is tapped, and let go before the start is over, says nothing of the room', () => {
  const tap = measureStroke(traceOf([sideOf('main', { movingS: 0.5, stopAmps: null })], 'extend'), ONE_MOTOR);
  expect(tap).toMatchObject({ status: 'unusable', doubts: [] });
});

test('a side that bears all that the other lost runs near its stall, and has not stood: it took its usual time', () => {
  const weak = strokeEvents(LEARNT + 12, ROOM, 4).map((event) =>
    changed(event, {
      all: ({ runningAmps }) => ({ inrushAmps: 1.8 * runningAmps, endStopAmps: 2.3 * runningAmps }),
    }),
  );
  const alone = (event: StrokeEvent): StrokeEvent =>
    changed(event, {
      front: ({ runningAmps, profile }) => ({
        runningAmps: 2 * runningAmps,
        runningAmpsP90: 2.1 * runningAmps,
        inrushAmps: 2.1 * runningAmps,
        endStopAmps: null,
        profile: profile.map((amps) => 2 * (amps ?? 0)),
      }),
      rear: ({ runningAmps, profile }) => ({
        runningAmps: 0.12 * runningAmps,
        runningAmpsP90: 0.13 * runningAmps,
        inrushAmps: 1.1 * runningAmps,
        endStopAmps: null,
        profile: profile.map((amps) => 0.12 * (amps ?? 0)),
      }),
    });
  const { warnings } = foldAll(ROOM, [...weak.slice(0, LEARNT), ...weak.slice(LEARNT).map(alone)]);
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['dropped-load', 'rear']]);
});
