import { describe, expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import type { SideTrace } from '../../../../analysis/trace.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { ONE_MOTOR, ROOM, type Shape, sideOf, traceOf } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

/** A record that begins with its start and is switched off by a limit switch. */
const LIMITED: Partial<Shape> = { idleBeforeS: 0, stopAmps: null, noiseAmps: 0.06, movingS: 13 };
const ZERO_AMPS = 0.2;

interface Light {
  /** How long the motor runs lightly before it is switched off, seconds, and how slowly it comes to that. */
  readonly forS: number;
  readonly slowS: number;
  /** What it draws then, of the running current. */
  readonly part: number;
}

/** The side of a shape whose current falls to a part of it near the end, and walks there by some hundredths. */
function lightAtEnd(changes: Partial<Shape>, { forS, slowS, part }: Light): SideTrace {
  const shape = { ...LIMITED, ...changes };
  const side = sideOf('front', { ...shape, noiseAmps: 0 });
  const random = new Random(shape.seed ?? 1);
  const lightFromS = (shape.movingS ?? 0) - forS;
  const amps = side.amps.map((value, i) => {
    const lost = 1 / (1 + Math.exp(-(side.timesS[i] - lightFromS) / slowS));
    const walk = 1 + 0.03 * Math.sin(1 + side.timesS[i]);
    return value * walk * (1 - (1 - part) * lost) + random.normal(0, shape.noiseAmps ?? 0);
  });
  return { ...side, amps };
}

describe('a motor that runs lightly until it is switched off does not rest', () => {
  const lights: Light[] = [0.15, 0.3, 0.55].flatMap((part) => [
    { part, forS: 1.2, slowS: 0.05 },
    { part, forS: 3, slowS: 0.1 },
  ]);
  const rates = [20, 50, 100, 200];
  test.each(
    rates.flatMap((rateHz) => [0, 0.05, 0.15, 0.2].map((idleAfterS) => [rateHz, idleAfterS] as const)),
  )('at %i Hz, recorded for %d s more', (rateHz, idleAfterS) => {
    for (const light of lights) {
      for (const seed of [1, 2, 3]) {
        const side = lightAtEnd({ rateHz, idleAfterS, seed }, light);
        const { front } = done(measureStroke(traceOf([side]), ROOM)).sides;
        expect(Math.abs(front.offsetAmps ?? 0), JSON.stringify({ ...light, seed })).toBeLessThan(ZERO_AMPS);
        expect(Math.abs(front.durationS - 13)).toBeLessThan(0.3);
      }
    }
  });
});

test('a zero that is far off is read after the switch-off alone, where the motor ran as ever', () => {
  for (const rateHz of [10, 50, 200]) {
    for (const offsetAmps of [2, 4, -4]) {
      const { main } = done(
        measureStroke(traceOf([sideOf('main', { ...LIMITED, rateHz, offsetAmps })]), ONE_MOTOR),
      ).sides;
      expect(Math.abs((main.offsetAmps ?? 9) - offsetAmps)).toBeLessThan(ZERO_AMPS);
    }
  }
});

test('the side that goes on when the other one has ended keeps its zero', () => {
  const front = lightAtEnd({ rateHz: 100, idleAfterS: 0.15 }, { part: 0.56, forS: 3, slowS: 0.1 });
  const rear = sideOf('rear', { ...LIMITED, rateHz: 100, movingS: 11, idleAfterS: 2.15 });
  const { doubts, sides } = done(measureStroke(traceOf([front, rear]), ROOM));
  expect(doubts).toEqual([]);
  expect(sides.front.runningAmps).toBeCloseTo(8, 0);
});
