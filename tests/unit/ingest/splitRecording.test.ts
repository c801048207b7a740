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
const splitOf = (...sides: Float64Array[]) => splitRecording(timesOf(sides[0]), sides).ranges;

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
    expect(splitRecording(timesS, [amps]).ranges).toEqual([
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
    expect(splitRecording(new Float64Array(0), []).ranges).toEqual([]);
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

/** Drives of a meter that knows no sign, each after its rest: a start, the way, and half a second of stall or none. */
function unsigned(drives: readonly (readonly [restS: number, driveS: number, stalls: boolean])[]) {
  const parts = drives.flatMap(([restS, driveS, stalls]) => [
    [restS, 0] as const,
    [0.2, 25] as const,
    [driveS, 9] as const,
    [stalls ? 0.5 : 0, 34] as const,
  ]);
  return recorded([...parts, [3, 0]]);
}

/** Seconds that each stroke of the recording is driven, to the nearest. */
function drivenOf(drives: Parameters<typeof unsigned>[0]): number[] {
  const amps = unsigned(drives);
  return splitOf(amps).map((range) => Math.round(drivenS(amps, range)));
}

describe('where no sign tells the way back, a continuous recording is cut', () => {
  const LENGTHS_S = [17, 18, 17, 18, 17, 18];

  test.each([2, 4, 6, 9])('at rests of %d s after a stall', (restS) => {
    const drives = LENGTHS_S.map((driveS) => [restS, driveS - 0.7, true] as const);
    expect(drivenOf(drives)).toEqual(LENGTHS_S);
    expect(drivenOf(drives.slice(0, 2))).toEqual([17, 18]);
  });

  test.each([2, 4, 6, 9])('at rests of %d s where a switch ends every stroke and all last alike', (restS) => {
    expect(drivenOf(LENGTHS_S.map((driveS) => [restS, driveS - 0.2, false] as const))).toEqual(LENGTHS_S);
  });

  test.each([true, false])('not at a pause within a stroke beside whole ones, with stalls: %s', (stalls) => {
    const drives = [
      [3, 17, stalls],
      [5, 6, false],
      [4, 11, stalls],
      [5, 17, stalls],
      [5, 17, stalls],
      [2, 17, stalls],
      [5, 17, stalls],
    ] as const;
    for (const length of drivenOf(drives)) expect(Math.abs(length - 17.5)).toBeLessThan(1);
    expect(drivenOf(drives)).toHaveLength(6);
  });

  test('where every second stroke was gone on with after a pause, by its stalls', () => {
    const drives = [0, 1, 2].flatMap((i) => [
      [5, 17, true] as const,
      [5, 5 + i, false] as const,
      [3, 12 - i, true] as const,
    ]);
    expect(drivenOf(drives)).toHaveLength(6);
  });

  test.each([
    ['with a pause', [8, 9]],
    ['with two', [4, 9, 4]],
    ['inched along', [3, 3, 3, 3, 3, 3]],
  ])('not within one stroke alone, %s', (_, lengthsS) => {
    for (const stalls of [true, false]) {
      const last = lengthsS.length - 1;
      expect(drivenOf(lengthsS.map((driveS, i) => [3, driveS, stalls && i === last] as const))).toHaveLength(
        1,
      );
    }
  });

  test('not within one that was stopped twice at a third, whose last part alone ends in a stall', () => {
    expect(
      drivenOf([
        [3, 9, false],
        [3, 9, false],
        [3, 9, true],
      ]),
    ).toHaveLength(1);
  });

  test('not before a press at the stop', () => {
    const pressed = recorded([
      [3, 0],
      [0.2, 25],
      [17, 9],
      [0.5, 34],
      [4, 0],
      [1, 34],
      [3, 0],
    ]);
    expect(splitOf(pressed)).toHaveLength(1);
  });

  test('not where signs tell it: what goes on with the same sign is the same stroke', () => {
    const amps = recorded([
      [3, 0],
      [17, 9],
      [0.5, 34],
      [4, 0],
      [17, 9],
      [0.5, 34],
      [4, 0],
      [17, -9],
      [3, 0],
    ]);
    expect(splitOf(amps)).toHaveLength(2);
  });

  test('in little time where it is full of interference', () => {
    const bursts = Array.from({ length: 4000 }, () => [1.2, 0.3, false] as const);
    expect(drivenOf([[3, 17, false], [3, 17, false], [3, 17, false], ...bursts]).length).toBeGreaterThan(0);
  });
});
