import { expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { changed } from '../../support/contexts.ts';
import { type Folded, foldAll } from '../../support/folded.ts';
import { ROOM } from '../../support/handMade.ts';
import { strokeEvents, type Told } from '../../support/strokeEvents.ts';

const LEARNT = 40;

/** Eight more strokes after the normal is learnt, each changed by `of`. */
function after(of: (event: StrokeEvent) => StrokeEvent, told: Partial<Told> = {}, count = 8): Folded {
  const events = strokeEvents(LEARNT + count, ROOM, 4, (i) => (i < LEARNT ? {} : told));
  return foldAll(ROOM, [...events.slice(0, LEARNT), ...events.slice(LEARNT).map(of)]);
}

const stands = (event: StrokeEvent): StrokeEvent =>
  changed(event, {
    front: ({ inrushAmps }) => ({
      runningAmps: 0.95 * inrushAmps,
      runningAmpsP90: 0.97 * inrushAmps,
      endStopAmps: null,
    }),
  });

test('a side that stalls from the start while the other moves is told at the first stroke, once, and is no normal', () => {
  const { warnings, judgements, state } = after(stands);
  expect(warnings).toMatchObject([
    {
      kind: 'rising-draw',
      side: 'front',
      severity: 'stop',
      evidence: { stoodStill: true },
      clearedAtMs: null,
    },
  ]);
  expect(judgements.findIndex((judged) => judged.warnings.length > 0)).toBe(LEARNT);
  expect(state.usable).toEqual({ extend: LEARNT / 2, retract: LEARNT / 2 });
});

test('it stays said while the side idles on the strokes between', () => {
  const idles = (event: StrokeEvent): StrokeEvent =>
    changed(event, {
      front: ({ profile, runningAmps }) => ({
        runningAmps: 0.2 * runningAmps,
        profile: profile.map((amps) => (amps === null ? null : 0.2 * amps)),
      }),
    });
  const { warnings } = after(
    (event) => (event.direction === 'extend' ? stands(event) : idles(event)),
    {},
    16,
  );
  const stood = warnings.filter(({ evidence }) => evidence.stoodStill === true);
  expect(stood.map(({ kind, side, clearedAtMs }) => [kind, side, clearedAtMs])).toEqual([
    ['rising-draw', 'front', null],
  ]);
});

test('nor is one that runs much harder before a logger that sees the foot of its start only, and no stop', () => {
  const seenByFoot = (event: StrokeEvent): StrokeEvent =>
    changed(event, { all: () => ({ inrushAmps: 16, endStopAmps: null }) });
  const events = strokeEvents(LEARNT + 8, ROOM, 4, (i) => (i < LEARNT ? {} : { factors: [1.7, 1.7] }));
  const { warnings } = foldAll(ROOM, events.map(seenByFoot));
  expect(warnings.map(({ kind, evidence }) => [kind, evidence.stoodStill])).toEqual([
    ['rising-draw', undefined],
  ]);
});

test('the last piece of a way, which ends at once for the side that came to its stop first, is no such side', () => {
  const events = strokeEvents(LEARNT + 1, ROOM, 4);
  const out = events[LEARNT];
  const piece = (event: StrokeEvent, part: number): StrokeEvent =>
    changed(event, {
      all: ({ durationS, chargeAs }) => ({
        durationS: part * durationS,
        chargeAs: part * chargeAs,
        endStopAmps: null,
      }),
    });
  const last = piece({ ...out, strokeId: `${out.strokeId}-last`, atMs: out.atMs + 60_000 }, 0.1);
  const { warnings } = foldAll(ROOM, [...events.slice(0, LEARNT), piece(out, 0.9), stands(last)]);
  expect(warnings).toEqual([]);
});

/** The front side draws nothing from this part of its way on; its record ends there, the other goes on. */
function stopsAt(part: number, event: StrokeEvent): StrokeEvent {
  return changed(event, {
    front: ({ durationS, phases }) => ({
      durationS: part * durationS,
      endStopAmps: null,
      phases: { ...phases, endStopStartS: null, endS: 1 + part * durationS },
    }),
  });
}

test('a side that stops drawing on its way while the other goes on lost its load there, and the other is not late', () => {
  const { warnings } = after((event) => {
    const { analysis } = stopsAt(0.5, event);
    return analysis.status === 'done' ? { ...event, analysis: { ...analysis, lagS: 10 } } : event;
  });
  expect(warnings).toMatchObject([{ kind: 'dropped-load', side: 'front' }]);
  const { from, to } = warnings[0].evidence;
  expect(Math.abs(Number(to) - Number(from) - 0.5)).toBeLessThan(0.03);
});

test('a side that comes late while the other works harder is the cause: what was said of the other is taken back', () => {
  const { warnings } = after((event) => event, { factors: [1.3, 0.93], lagS: 2 }, 16);
  expect(warnings.filter(({ clearedAtMs }) => clearedAtMs === null)).toMatchObject([
    { kind: 'late-side', side: 'rear' },
  ]);
  expect(warnings.filter(({ clearedAtMs }) => clearedAtMs !== null).length).toBeLessThanOrEqual(1);
});

test('a side that comes late because it works harder is not said to be late', () => {
  const { warnings } = after((event) => event, { factors: [1, 1.4], lagS: 1.5 }, 16);
  expect(warnings.map(({ kind }) => kind)).toEqual(['rising-draw']);
});

/** The front side reads next to nothing at these places of its travel, the rear at those. */
function dips(front: readonly number[], rear: readonly number[]) {
  return (event: StrokeEvent): StrokeEvent => {
    const at = (places: readonly number[]) => () => ({
      dips: places.map((position) => ({ position, amps: 0.3, widthS: 0.4 })),
    });
    return changed(event, { front: at(front), rear: at(rear) });
  };
}

test('a side that loses its load for moments, at places of its own, is told so', () => {
  const { warnings } = after(dips([0.2, 0.47, 0.8], []));
  expect(warnings).toMatchObject([
    { kind: 'dropped-load', side: 'front', position: null, evidence: { moments: 3 } },
  ]);
});

test('a moment that is read in two samples of a slow logger may have been shorter than any tooth slips by in', () => {
  const slowly = (rateHz: number) => (event: StrokeEvent) =>
    changed(dips([0.2, 0.47, 0.8], [])(event), {
      front: ({ dips: own }) => ({ rateHz, dips: own.map((dip) => ({ ...dip, widthS: 0.25 })) }),
    });
  expect(after(slowly(10)).warnings).toEqual([]);
  expect(after(slowly(50)).warnings).toMatchObject([{ kind: 'dropped-load', side: 'front' }]);
});

test('a side that its controller lets wait on every stroke from the first on has lost nothing', () => {
  const waiting = dips([0.2, 0.47, 0.8], []);
  expect(foldAll(ROOM, strokeEvents(50, ROOM, 2).map(waiting)).warnings).toEqual([]);
});

test.each([
  { name: 'both sides at once', front: [0.2, 0.5], rear: [0.21, 0.49] },
  { name: 'once in a stroke', front: [0.4], rear: [] },
])('a loss of load is not said where it is $name', ({ front, rear }) => {
  expect(after(dips(front, rear)).warnings).toEqual([]);
});
