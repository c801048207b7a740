import { describe, expect, test } from 'vitest';
import { splitRecording } from '../../../../analysis/split/splitRecording.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { type HeldRecording, heldRecording } from '../support/heldRecording.ts';

const SEEDS = Array.from({ length: 12 }, (_, index) => index + 1);
const OUT = { heldS: 3, movesS: 5, movingAmps: 0.76 };
const BACK = { heldS: 3, movesS: 5, movingAmps: 1.05 };
/** The rest before the way out is left out of the file, as it is of the public recordings. */
const TURNING_OUT = { ...OUT, heldS: 0.08 };
const THERE_AND_BACK = [OUT, BACK, OUT, BACK, OUT, BACK];
const TURNING = [OUT, BACK, TURNING_OUT, BACK, TURNING_OUT, BACK];

/** What is cut out of a recording: seconds. */
function cutOf(timesS: Float64Array, ...sides: Float64Array[]): (readonly [number, number])[] {
  return splitRecording(timesS, sides).ranges.map(({ from, to }) => [timesS[from], timesS[to - 1]]);
}

/** That there is one piece for each movement, with all of it but for `slackS` at either end, and nothing of another. */
function expectEachMove(of: HeldRecording, slackS: number, from = 0, to = Number.POSITIVE_INFINITY): void {
  for (const seed of SEEDS) {
    const whole = heldRecording(of, seed);
    const at = (value: number) => Math.round(value * of.rateHz);
    const [timesS, amps] = [whole.timesS, whole.amps].map((values) => values.slice(at(from), at(to)));
    const lastS = timesS[timesS.length - 1];
    const moves = whole.movesS.flatMap(([fromS, toS]) =>
      toS > from + 0.5 && fromS < lastS - 0.5 ? [[Math.max(from, fromS), Math.min(lastS, toS)]] : [],
    );
    const cut = cutOf(timesS, amps);
    expect(cut, `seed ${seed}`).toHaveLength(moves.length);
    cut.forEach(([fromS, toS], i) => {
      expect(fromS).toBeLessThan(moves[i][0] + slackS);
      expect(toS).toBeGreaterThan(moves[i][1] - slackS);
      if (i > 0) expect(fromS).toBeGreaterThan(moves[i - 1][1] - slackS);
    });
  }
}

describe('a recording of a motor that is held in place is cut into its movements', () => {
  test.each([10, 25, 50, 100])('at %d samples a second, with a rest between them', (rateHz) => {
    expectEachMove({ rateHz, moves: THERE_AND_BACK }, 0.3);
  });

  test.each([25, 50, 100])('at %d samples a second, where every second one turns at once', (rateHz) => {
    expectEachMove({ rateHz, moves: TURNING }, 0.5);
  });

  test.each([-0.1, 0.3])('whatever the sensor reads at nothing: %f A', (offsetAmps) => {
    expectEachMove({ rateHz: 25, moves: TURNING, offsetAmps }, 0.5);
  });

  test('in noise of a tenth of an ampere', () => {
    expectEachMove({ rateHz: 25, moves: THERE_AND_BACK, noiseAmps: 0.1 }, 0.4);
  });

  test('that sets out and arrives by a sine', () => {
    expectEachMove({ rateHz: 25, moves: THERE_AND_BACK, speed: (part) => Math.sin(Math.PI * part) }, 0.6);
  });

  test.each([
    { from: 1, to: 60 },
    { from: 5, to: 60 },
    { from: 9.5, to: 60 },
    { from: 13, to: 40 },
    { from: 0, to: 22.5 },
  ])('where it begins after $from s and ends after $to s', ({ from, to }) => {
    expectEachMove({ rateHz: 25, moves: THERE_AND_BACK }, 0.4, from, to);
  });

  test('one of them in two parts, in one', () => {
    const parts = [OUT, BACK, { ...OUT, movesS: 2 }, { ...OUT, heldS: 1.8, movesS: 3 }, BACK, OUT, BACK];
    for (const seed of SEEDS) {
      const { timesS, amps, movesS } = heldRecording({ rateHz: 25, moves: parts }, seed);
      const cut = cutOf(timesS, amps);
      expect(cut).toHaveLength(6);
      expect(cut[2][0]).toBeLessThan(movesS[2][0] + 0.4);
      expect(cut[2][1]).toBeGreaterThan(movesS[3][1] - 0.4);
    }
  });

  test('by what both sides draw', () => {
    const [front, rear] = [1, 2].map((seed) => heldRecording({ rateHz: 25, moves: THERE_AND_BACK }, seed));
    const { ranges, isHeld } = splitRecording(front.timesS, [front.amps, rear.amps]);
    expect(ranges).toHaveLength(6);
    expect(isHeld).toBe(true);
  });
});

describe('what is no motor held in place is not cut as one', () => {
  const RATE_HZ = 25;
  const recorded = (parts: readonly (readonly [seconds: number, amps: number])[], seed = 1) => {
    const random = new Random(seed);
    return Float64Array.from(
      parts.flatMap(([seconds, amps]) =>
        Array.from({ length: Math.round(seconds * RATE_HZ) }, () => amps + random.normal(0, 0.03)),
      ),
    );
  };
  const countOf = (amps: Float64Array) =>
    splitRecording(
      amps.map((_, i) => i / RATE_HZ),
      [amps],
    ).ranges.length;

  test('one movement alone, held before and after', () => {
    for (const seed of SEEDS) {
      const { timesS, amps } = heldRecording({ rateHz: RATE_HZ, moves: [OUT] }, seed);
      expect(cutOf(timesS, amps)).toHaveLength(1);
    }
  });

  test('a motor that starts, and draws less over a stretch of its way than before and after', () => {
    const way = [
      [0.2, 4],
      [5, 1.1],
      [4, 0.5],
      [5, 1.1],
    ] as const;
    expect(countOf(recorded(way))).toBe(1);
    expect(countOf(recorded([[2, 0], ...way, [2, 0]]))).toBe(1);
  });

  test('a small motor whose way in needs little, where it comes to rest between', () => {
    const way = [
      [5, 1.1],
      [0.4, 0],
      [5, 0.4],
      [0.4, 0],
    ] as const;
    expect(countOf(recorded([...way, ...way, ...way]))).toBe(1);
  });

  test('stretches of one stroke that last unlike each other', () => {
    expect(
      countOf(
        recorded([
          [3, 0.5],
          [6, 1.1],
          [4, 0.5],
          [2, 1.1],
          [5, 0.5],
          [9, 1.1],
          [3, 0.5],
        ]),
      ),
    ).toBe(1);
  });

  test('a pause in which a fan goes on, of a motor that starts with many times what it draws', () => {
    expect(
      countOf(
        recorded([
          [3, 0.6],
          [0.2, 20],
          [6, 6],
          [4, 0.6],
          [0.2, 20],
          [6, 6],
          [3, 0.6],
        ]),
      ),
    ).toBe(1);
  });
});
