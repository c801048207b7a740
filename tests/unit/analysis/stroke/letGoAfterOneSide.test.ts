import { describe, expect, test } from 'vitest';
import { measureStroke } from '../../../../analysis/measureStroke.ts';
import type { DoneAnalysis } from '../../../../analysis/measures.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { evenTimes, ROOM } from '../support/handMade.ts';
import { done } from '../support/measured.ts';

const RATE_HZ = 50;
const TIMES_S = evenTimes(RATE_HZ, 18);
const RUNNING_AMPS = 5;

/** What a side draws that is driven for these spans, seconds, each with a start of its own and none with a stall. */
function driven(spans: readonly (readonly [number, number])[], seed: number): Float64Array {
  const random = new Random(seed);
  return TIMES_S.map((timeS) => {
    const span = spans.find(([fromS, toS]) => timeS >= fromS && timeS < toS);
    const current = span === undefined ? 0 : RUNNING_AMPS + 18 * Math.exp((span[0] - timeS) / 0.08);
    return current + random.normal(0, 0.05);
  });
}

/** Of a stroke whose `early` side met its limit switch after 9 s, and whose other side needed one more press for its last bit. */
function pressedAgainFor(early: string, pausedS: number): DoneAnalysis {
  const againS = 10.2 + pausedS;
  const sides = ROOM.sides.map((side, i) => {
    const spans =
      side === early
        ? ([[0.5, 9.5]] as const)
        : ([
            [0.5, 10.2],
            [againS, againS + 1.1],
          ] as const);
    return { side, timesS: TIMES_S, amps: driven(spans, 7 + i) };
  });
  return done(measureStroke({ direction: 'extend', sides, supply: null, ambientC: 15 }, ROOM));
}

describe.each(ROOM.sides)('the switch was let go when the %s side had come to its end', (early) => {
  const late = ROOM.sides.find((side) => side !== early) ?? '';
  const sign = ROOM.sides.indexOf(late) > 0 ? 1 : -1;

  test.each([0.6, 2, 4.5])('and pressed again after %f s: that is a pause of the other', (pausedS) => {
    const { sides, lagS } = pressedAgainFor(early, pausedS);
    expect(sides[early].phases.pauses).toEqual([]);
    expect(sides[early].durationS).toBeCloseTo(9, 0);
    expect(sides[late].phases.pauses).toEqual([
      { fromS: expect.closeTo(10.2, 0), toS: expect.closeTo(10.2 + pausedS, 0) },
    ]);
    expect(Math.abs(sides[late].durationS - 10.8)).toBeLessThan(0.2);
    expect(Math.abs((lagS ?? 0) - sign * 1.8)).toBeLessThan(0.2);
    const told = sides[late].profile.filter((amps) => amps !== null);
    expect(told.length).toBeGreaterThan(45);
    for (const amps of told) expect(Math.abs((amps ?? 0) - RUNNING_AMPS)).toBeLessThan(1);
  });
});
