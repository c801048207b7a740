import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { splitRecording } from '../../../analysis/split/splitRecording.ts';

const RATE_HZ = 20;

/** Rest and drive by turns: seconds and amperes. */
function recorded(parts: readonly (readonly [seconds: number, amps: number])[], offset = 0): Float64Array {
  return Float64Array.from(
    parts.flatMap(([seconds, amps]) => new Array<number>(Math.round(seconds * RATE_HZ)).fill(amps + offset)),
  );
}

const timesOf = (amps: Float64Array) => Float64Array.from(amps, (_, i) => i / RATE_HZ);
const splitOf = (...sides: Float64Array[]) => splitRecording(timesOf(sides[0]), sides);

/** How many seconds of a range are driven. */
function drivenS(amps: Float64Array, { from, to }: { from: number; to: number }): number {
  return amps.slice(from, to).filter((value) => Math.abs(value) > 3).length / RATE_HZ;
}

describe('a continuous recording is cut', () => {
  test('at rests of ten seconds and more, with two seconds of rest kept', () => {
    const amps = recorded([
      [5, 0],
      [8, 9],
      [12, 0],
      [7, 9],
      [1, 0],
    ]);
    expect(splitOf(amps)).toEqual([
      { from: 3 * RATE_HZ, to: 15 * RATE_HZ },
      { from: 23 * RATE_HZ, to: 33 * RATE_HZ },
    ]);
  });

  test('not at a pause under ten seconds', () => {
    expect(
      splitOf(
        recorded([
          [3, 0],
          [4, 9],
          [9, 0],
          [4, 9],
          [3, 0],
        ]),
      ),
    ).toHaveLength(1);
  });

  test('at a reversal, however short the pause; not at the kick of a brake', () => {
    expect(
      splitOf(
        recorded([
          [3, 0],
          [8, 9],
          [3, 0],
          [8, -9],
          [3, 0],
        ]),
      ),
    ).toHaveLength(2);
    expect(
      splitOf(
        recorded([
          [3, 0],
          [8, 9],
          [0.5, -6],
          [3, 0],
        ]),
      ),
    ).toHaveLength(1);
  });

  test('where the rows leave the rests out', () => {
    const amps = recorded([
      [4, 9],
      [4, 9],
    ]);
    const timesS = Float64Array.from(amps, (_, i) => i / RATE_HZ + (i < 4 * RATE_HZ ? 0 : 3600));
    expect(splitRecording(timesS, [amps])).toEqual([
      { from: 0, to: 4 * RATE_HZ },
      { from: 4 * RATE_HZ, to: 8 * RATE_HZ },
    ]);
  });

  test('whatever the offset of the clamp, and where one side lost its load', () => {
    const parts = [
      [5, 0],
      [8, 9],
      [20, 0],
      [8, -9],
      [5, 0],
    ] as const;
    for (const offset of [-0.4, 0.4]) expect(splitOf(recorded(parts, offset))).toHaveLength(2);
    expect(
      splitOf(
        recorded([
          [5, 0],
          [8, 0.1],
          [20, 0],
          [8, 0],
          [5, 0],
        ]),
        recorded(parts),
      ),
    ).toHaveLength(2);
  });

  test('into nothing where nothing flows, or is read', () => {
    expect(splitOf(recorded([[60, 0]]))).toEqual([]);
    expect(splitOf(new Float64Array(100).fill(Number.NaN))).toEqual([]);
    expect(splitRecording(new Float64Array(0), [])).toEqual([]);
  });

  test('so that a click of interference is no stroke', () => {
    expect(
      splitOf(
        recorded([
          [5, 0],
          [8, 9],
          [30, 0],
          [0.1, 40],
          [30, 0],
        ]),
      ),
    ).toHaveLength(1);
  });

  test('into as many strokes as there are, each driven to its whole length', () => {
    const drive = fc.record({
      restS: fc.integer({ min: 11, max: 40 }),
      driveS: fc.integer({ min: 2, max: 20 }),
    });
    fc.assert(
      fc.property(fc.array(drive, { minLength: 1, maxLength: 6 }), (drives) => {
        const parts = drives.flatMap(({ restS, driveS }) => [[restS, 0] as const, [driveS, 9] as const]);
        const amps = recorded([...parts, [5, 0]]);
        const ranges = splitOf(amps);
        expect(ranges.map((range) => drivenS(amps, range))).toEqual(drives.map(({ driveS }) => driveS));
        for (let i = 1; i < ranges.length; i++)
          expect(ranges[i].from).toBeGreaterThanOrEqual(ranges[i - 1].to);
      }),
      { numRuns: 200 },
    );
  });
});
