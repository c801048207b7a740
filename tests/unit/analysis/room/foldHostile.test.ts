import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareSpans } from '../../../../analysis/compare/compareSpans.ts';
import type { StrokeEvent } from '../../../../analysis/history.ts';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import { limitsOf, summariseRoom } from '../../../../analysis/room/fold.ts';
import type { RoomDescription, StrokeTrace } from '../../../../analysis/trace.ts';
import { anyStroke, SEEDED } from '../support/arbitrary.ts';
import { foldAll } from '../support/folded.ts';
import { ONE_MOTOR, ROOM, sideOf, traceOf } from '../support/handMade.ts';
import { endlessIn } from '../support/measured.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

const ROOMS: readonly RoomDescription[] = [
  ROOM,
  ONE_MOTOR,
  { ...ROOM, sides: ['front', 'rear', 'x'] },
  { ...ROOM, sides: ['nobody'], ratedAmps: 1e-3, travelMetres: 1e-6, gearTeeth: 200, rackPitchMm: 100 },
];

/** Measured and healthy strokes in turn, so that the hostile ones meet a baseline and take part in one. */
const events: fc.Arbitrary<{ room: RoomDescription; events: StrokeEvent[] }> = fc
  .record({
    room: fc.constantFrom(...ROOMS),
    traces: fc.array(anyStroke, { minLength: 1, maxLength: 10 }),
    healthy: fc.integer({ min: 0, max: 40 }),
  })
  .map(({ room, traces, healthy }) => {
    const plain = strokeEvents(healthy, { ...ROOM, sides: room.sides }, 1);
    const hostile = traces.map(withPlausibleSupply).map((trace, i): StrokeEvent => {
      const atMs = plain.length === 0 ? i : plain[(i * 7) % plain.length].atMs + 1 + i;
      const { direction, ambientC } = trace;
      return {
        type: 'stroke',
        strokeId: `hostile-${i}`,
        atMs,
        direction,
        ambientC,
        excluded: false,
        analysis: measureStroke(trace, room),
      };
    });
    return { room, events: [...plain, ...hostile].sort((a, b) => a.atMs - b.atMs) };
  });

/** Absurd supplies have a test of their own below. */
function withPlausibleSupply(trace: StrokeTrace): StrokeTrace {
  if (trace.supply === null) return trace;
  const volts = trace.supply.volts.map((each) => Math.min(16, Math.max(0, each)));
  return { ...trace, supply: { ...trace.supply, volts } };
}

const RUNS = { ...SEEDED, numRuns: 25 };

test('whatever finite strokes come, the fold goes on, with finite numbers only', () => {
  fc.assert(
    fc.property(events, ({ room, events: history }) => {
      const { state, judgements, warnings } = foldAll(room, history);
      const all = [state, judgements, warnings, limitsOf(state), summariseRoom(state)];
      expect(endlessIn(all)).toEqual([]);
      for (const { headline } of [...warnings, summariseRoom(state)]) {
        expect(headline).not.toMatch(/NaN|null|undefined|Infinity/);
      }
    }),
    RUNS,
  );
});

test('whatever finite strokes come, they can be compared, with finite numbers only', () => {
  fc.assert(
    fc.property(events, ({ room, events: history }) => {
      const middle = Math.floor(history.length / 2);
      const found = compareSpans(
        history.slice(0, Math.min(middle, 6)),
        history.slice(middle).slice(0, 6),
        room,
      );
      expect(endlessIn(found)).toEqual([]);
      expect(found.sentence).not.toMatch(/NaN|null|undefined|Infinity/);
    }),
    RUNS,
  );
});

test.each([1e9, -1e9, 12_600, 0])(
  'a supply that reads %d volts gives no number that is not finite',
  (volts) => {
    const supply = { timesS: Float64Array.of(0, 60), volts: Float64Array.of(volts, volts) };
    const analysis = measureStroke(traceOf([sideOf('front'), sideOf('rear')], 'extend', supply), ROOM);
    const plain = strokeEvents(30, ROOM, 1);
    const absurd = [1, 2, 3, 4].map(
      (i): StrokeEvent => ({
        ...plain[i],
        strokeId: `absurd-${i}`,
        atMs: plain[29].atMs + i,
        direction: 'extend',
        analysis,
      }),
    );
    const { state, judgements } = foldAll(ROOM, [
      ...plain,
      ...absurd,
      ...strokeEvents(40, ROOM, 1).slice(31),
    ]);
    expect(endlessIn([state, judgements, limitsOf(state)])).toEqual([]);
    const early = foldAll(ROOM, [
      ...absurd.map((event, i) => ({ ...event, atMs: plain[0].atMs - 10 + i })),
      ...plain,
    ]);
    expect(endlessIn([early.state, early.judgements])).toEqual([]);
  },
);
