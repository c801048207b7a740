import { describe, expect, test } from 'vitest';
import type { StrokeEvent } from '../../../../../analysis/history.ts';
import { measureStroke } from '../../../../../analysis/measureStroke.ts';
import { Random } from '../../../../../server/demo/simulator/random.ts';
import { foldAll } from '../../support/folded.ts';
import { ONE_MOTOR, sideOf, traceOf } from '../../support/handMade.ts';
import { directionOf, START_MS } from '../../support/strokeEvents.ts';

const DAY_MS = 86_400_000;
const STROKES = 60;
const RISES_AT = 40;
const RUNNING_AMPS = 8;

/** Strokes of a room that starts with 40 A and stalls at 38, on a sensor that reads no further than `reachAmps`; it rises by a part. */
function recorded(reachAmps: number, rise: number, seed: number): StrokeEvent[] {
  const random = new Random(seed);
  return Array.from({ length: STROKES }, (_, index) => {
    const factor = Math.exp(random.normal(0, 0.015)) * (index < RISES_AT ? 1 : 1 + rise);
    const runningAmps = RUNNING_AMPS * factor;
    const side = sideOf('main', { runningAmps, inrushAmps: 40, stopAmps: 38, seed: 100 * seed + index });
    const cut = { ...side, amps: side.amps.map((amps) => Math.min(reachAmps, amps)) };
    return {
      type: 'stroke',
      strokeId: `stroke-${String(index).padStart(3, '0')}`,
      atMs: START_MS + index * DAY_MS,
      direction: directionOf(index),
      ambientC: 15,
      excluded: false,
      analysis: measureStroke(traceOf([cut], directionOf(index)), ONE_MOTOR),
    };
  });
}

/** The kinds that were said, each with the index of the stroke that raised it. */
function told(events: readonly StrokeEvent[]) {
  const { judgements } = foldAll(ONE_MOTOR, events);
  const said = new Map<string, number>();
  judgements.forEach(({ warnings }, index) => {
    for (const { kind } of warnings) if (!said.has(kind)) said.set(kind, index);
  });
  const latest = judgements[judgements.length - 1].expectations;
  const expected = latest.filter((expectation) => expectation.expected !== null);
  return { said, expected: expected.map(({ measure }) => measure) };
}

describe.each([1, 2, 3])('seed %i', (seed) => {
  test('a sensor that reaches no further than start and stall is doubted, and the running current judged', () => {
    const { said, expected } = told(recorded(22, 0, seed));
    expect([...said.keys()]).toEqual(['sensor-doubt']);
    expect(expected).toContain('runningAmps');
    expect(expected).toContain('durationS');
    for (const measure of ['inrushAmps', 'endStopAmps', 'chargeAs', 'turnsAs'])
      expect(expected).not.toContain(measure);
  });

  test('and a rise of a fifth is told of as it is beside a whole record', () => {
    for (const reachAmps of [22, 60]) {
      const at = told(recorded(reachAmps, 0.2, seed)).said.get('rising-draw');
      expect(at).toBeGreaterThanOrEqual(RISES_AT);
      expect(at).toBeLessThan(RISES_AT + 6);
    }
  });

  test('one that reaches hardly further than the running current tells nothing of that', () => {
    const { said, expected } = told(recorded(9, 0.2, seed));
    expect([...said.keys()]).toEqual(['sensor-doubt']);
    expect(expected).toEqual([]);
  });
});
