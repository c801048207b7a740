import { expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import type { Direction } from '../../../../analysis/trace.ts';
import { foldAll, kindsOf } from '../support/folded.ts';
import { ONE_MOTOR, ROOM, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';
import { START_MS } from '../support/strokeEvents.ts';

const NOISY: Partial<Shape> = { noiseAmps: 0.1, movingS: 15 };
/** A motor that starts and then draws nothing that shows; it never comes to a stop. */
const IDLE: Partial<Shape> = { ...NOISY, runningAmps: 0.03, stopAmps: null };
/** A clamp that hangs beside its wire. */
const OFF: Partial<Shape> = { ...NOISY, runningAmps: 0, inrushAmps: 0, stopAmps: null };
/** And one that reads a few per cent of its wire's current all the same. */
const LEAKING: Partial<Shape> = {
  ...NOISY,
  noiseAmps: 0.03,
  runningAmps: 0.25,
  inrushAmps: 1.5,
  stopAmps: 1.3,
};

function strokesOf(rear: Partial<Shape>, faultFrom: number, count: number) {
  return Array.from({ length: count }, (_, i) => {
    const direction: Direction = i % 2 === 0 ? 'extend' : 'retract';
    const sides = [
      sideOf('front', { ...NOISY, seed: i }),
      sideOf('rear', { ...(i >= faultFrom ? rear : NOISY), seed: 1000 + i }),
    ];
    return {
      type: 'stroke' as const,
      strokeId: `stroke-${String(i).padStart(6, '0')}`,
      atMs: START_MS + i * 86_400_000,
      direction,
      ambientC: 20,
      excluded: false,
      analysis: measureStroke(traceOf(sides, direction), ROOM),
    };
  });
}

test('a side that starts and then draws nothing is measured over the time that the other side ran', () => {
  const trace = traceOf([sideOf('front', NOISY), sideOf('rear', { ...IDLE, seed: 2 })]);
  const { sides, doubts } = done(measureStroke(trace, ROOM));
  expect(doubts).toEqual([]);
  expect(Math.abs(sides.rear.runningAmps)).toBeLessThan(0.1);
  expect(sides.rear.inrushAmps).toBeGreaterThan(30);
  expect(sides.rear.endStopAmps).toBeNull();
});

test.each([
  { name: 'starts as ever and then draws nothing has lost its load', rear: IDLE, kind: 'dropped-load' },
  { name: 'shows not even a start has its clamp left off', rear: OFF, kind: 'sensor-doubt' },
  { name: 'shows the shadow of a start has its clamp left off', rear: LEAKING, kind: 'sensor-doubt' },
])('a side that $name', ({ rear, kind }) => {
  const { warnings } = foldAll(ROOM, strokesOf(rear, 30, 40));
  expect(kindsOf(warnings)).toEqual([kind]);
  expect(warnings[0].side).toBe('rear');
});

test("the noise of a side that idles is its sensor's deviation", () => {
  const trace = traceOf([sideOf('front', NOISY), sideOf('rear', { ...IDLE, seed: 2 })]);
  expect(done(measureStroke(trace, ROOM)).sides.rear.noiseAmps).toBeCloseTo(0.1, 1);
  // A deviation half as large again would round to 0.1 as well.
  expect(done(measureStroke(trace, ROOM)).sides.rear.noiseAmps).toBeLessThan(0.125);
});

test('a clamp that is left off from the first stroke on teaches nothing, and is said until the current is back', () => {
  const strokes = Array.from({ length: 60 }, (_, i) => {
    const direction: Direction = i % 2 === 0 ? 'extend' : 'retract';
    const side = sideOf('main', { ...(i < 30 ? LEAKING : NOISY), seed: i });
    return {
      type: 'stroke' as const,
      strokeId: `stroke-${String(i).padStart(6, '0')}`,
      atMs: START_MS + i * 86_400_000,
      direction,
      ambientC: 20,
      excluded: false,
      analysis: measureStroke(traceOf([side], direction), ONE_MOTOR),
    };
  });
  const { state, judgements, warnings } = foldAll(ONE_MOTOR, strokes);
  const said = judgements.findIndex((judgement) => judgement.warnings.length > 0);
  expect([said, warnings.map(({ kind, evidence }) => [kind, evidence.doubt])]).toEqual([
    1,
    [['sensor-doubt', 'flat']],
  ]);
  expect(strokes.findIndex(({ atMs }) => atMs === warnings[0].clearedAtMs)).toBe(33);
  const learnt = state.channels.flatMap(({ values }) => values.map(([running]) => Math.exp(running ?? 0)));
  expect(learnt.length).toBeGreaterThan(8);
  expect(Math.min(...learnt)).toBeGreaterThan(7);
});
