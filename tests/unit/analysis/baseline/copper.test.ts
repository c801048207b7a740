import { describe, expect, test } from 'vitest';
import { copperDegrees, copperReading, copperScale } from '../../../../analysis/baseline/copper.ts';
import type { StrokeEvent } from '../../../../analysis/history.ts';
import { COPPER_PER_C } from '../../../../analysis/motor/copper.ts';
import { Random } from '../../../../server/demo/simulator/random.ts';
import { changed } from '../support/contexts.ts';
import { type Folded, foldAll, kindsOf } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { START_MS, strokeEvent } from '../support/strokeEvents.ts';

const DAY_MS = 86_400_000;
const STROKES = 150;
const ONSET = 80;

/** Degrees on a day: a temperate year and a weather that lasts for some days. */
function weather(seed: number, half: 'north' | 'south'): number[] {
  const random = new Random(seed);
  let off = 0;
  return Array.from({ length: STROKES }, (_, index) => {
    off = 0.6 * off + random.normal(0, 4);
    const season = Math.cos((2 * Math.PI * 6 * index) / 365.25);
    return 14 + (half === 'north' ? -8 : 8) * season + off;
  });
}

/** A room that nobody records the temperature of, with what its copper and its friction make of it. */
function played(
  seed: number,
  half: 'north' | 'south',
  rise: (index: number) => number,
  also: (event: StrokeEvent, index: number) => StrokeEvent = (event) => event,
  strokes = STROKES,
): Folded {
  const degrees = weather(seed, half);
  const events = Array.from({ length: strokes }, (_, index) => {
    const friction = Math.exp(-0.006 * (degrees[index] - 20) + rise(index));
    const copper = 1 / (1 + COPPER_PER_C * (degrees[index] - 20));
    const event = strokeEvent(index, ROOM, seed, { ambientC: null, factors: [friction, friction] });
    const cold = changed(event, {
      all: ({ inrushAmps, endStopAmps }) => ({
        inrushAmps: inrushAmps * copper,
        // A stall that lasts is read to one in a hundred.
        endStopAmps: endStopAmps === null ? null : 38 * copper * Math.exp(0.01 * Math.log(endStopAmps / 38)),
      }),
    });
    return also({ ...cold, atMs: START_MS + 6 * index * DAY_MS }, index);
  });
  return foldAll(ROOM, events);
}

const openedAt = (folded: Folded) => Number(folded.warnings[0]?.firstStrokeId.slice(-6));

describe.each(['north', 'south'] as const)('a room of the %sern half without a thermometer', (half) => {
  test.each([1, 2, 3, 4])('calls nobody in two years of weather: seed %d', (seed) => {
    expect(played(seed, half, () => 0).warnings).toEqual([]);
  });

  test.each([1, 2, 3, 4])(
    'that gets stiffer with each stroke is said before 12 in a hundred: seed %d',
    (seed) => {
      const folded = played(seed, half, (index) => 0.004 * Math.max(0, index - ONSET + 1));
      expect(kindsOf(folded.warnings)).toEqual(['rising-draw']);
      expect(openedAt(folded)).toBeGreaterThanOrEqual(ONSET);
      expect(0.004 * (openedAt(folded) - ONSET + 1)).toBeLessThan(0.12);
    },
  );
});

test('a contact that got bad reads as warm copper, and makes no rise of what is none', () => {
  const bad = (event: StrokeEvent, index: number) =>
    index < ONSET
      ? event
      : changed(event, {
          all: ({ inrushAmps, endStopAmps }) => ({
            inrushAmps: 0.88 * inrushAmps,
            endStopAmps: endStopAmps === null ? null : 0.88 * endStopAmps,
          }),
        });
  for (const seed of [1, 2, 3, 4]) {
    expect(kindsOf(played(seed, 'north', () => 0, bad, ONSET + 20).warnings), `seed ${seed}`).toEqual([]);
  }
});

test('a clamp that reads half as much again is no cold: the other side does not feel it', () => {
  const lying = (event: StrokeEvent, index: number) =>
    index < ONSET
      ? event
      : changed(event, {
          front: (measured) => ({
            runningAmps: 1.5 * measured.runningAmps,
            runningAmpsP90: 1.5 * measured.runningAmpsP90,
            inrushAmps: 1.5 * measured.inrushAmps,
            endStopAmps: 1.5 * (measured.endStopAmps ?? 0),
          }),
        });
  const { warnings } = played(1, 'north', () => 0, lying);
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['sensor-doubt', 'front']]);
});

const read = (degrees: number) => ({ degrees, days: 0, isShared: false });

test('degrees are those of IEC 60028, about the usual, and believed within reason', () => {
  const at = (degrees: number) => Math.log(12 / (40 / (1 + COPPER_PER_C * degrees))) / COPPER_PER_C;
  const scale = copperScale([-4, -2, 0, 2, 4].map((degrees) => read(at(degrees))));
  if (scale === null) throw new Error('The scale is known.');
  expect(copperDegrees(scale, read(at(-10)))).toBeCloseTo(-10, 0);
  expect(copperDegrees(scale, read(at(30)))).toBeCloseTo(4, 0);
  expect(copperDegrees(scale, read(at(-90)))).toBe(-40);
  expect(copperDegrees(scale, null)).toBeNull();
});

test.each([
  { name: 'hardly any reading', reads: [read(1), null, null, null, read(2), null, null, null] },
  { name: 'readings that jump', reads: [0, 30, -20, 25, -15, 28].map(read) },
  { name: 'readings of days ago', reads: [0, 1, 2, 3, 4].map((degrees) => ({ ...read(degrees), days: 2 })) },
])('$name make no thermometer', ({ reads }) => {
  expect(copperScale(reads)).toBeNull();
});

test('a battery that grew old reads as no warm copper: it keeps its volts as the room runs, and loses a tenth at the stall', () => {
  const sound = strokeEvent(0, ROOM, 1);
  const onOldBattery = changed(sound, {
    all: ({ endStopAmps, endStopVolts }) => ({
      endStopAmps: 0.9 * (endStopAmps ?? 0),
      endStopVolts: 0.9 * (endStopVolts ?? 0),
    }),
  });
  const [old, before] = [onOldBattery, sound].map(({ analysis }) => {
    if (analysis.status !== 'done') throw new Error('It was measured.');
    return copperReading(analysis, 'front', null);
  });
  expect(before).not.toBeNull();
  expect(old).toBeCloseTo(before ?? Number.NaN, 1);
});

test('copper is not read without a stall or a supply, nor soon after the motor ran', () => {
  const { analysis } = strokeEvent(0, ROOM, 1);
  const unsupplied = strokeEvent(0, ROOM, 1, { volts: null }).analysis;
  const stopless = changed(strokeEvent(0, ROOM, 1), { all: () => ({ endStopAmps: null }) }).analysis;
  const slowly = changed(strokeEvent(0, ROOM, 1), { all: () => ({ endStopVolts: undefined }) });
  const slowlySupplied = slowly.analysis;
  if (slowlySupplied.status !== 'done') throw new Error('It was measured.');
  if (analysis.status !== 'done' || unsupplied.status !== 'done' || stopless.status !== 'done')
    throw new Error('All were measured.');
  expect(copperReading(analysis, 'front', null)).not.toBeNull();
  expect(copperReading(analysis, 'front', 3_600_000)).not.toBeNull();
  expect(copperReading(analysis, 'front', 60_000)).toBeNull();
  expect(copperReading(unsupplied, 'front', null)).toBeNull();
  expect(copperReading(stopless, 'front', null)).toBeNull();
  expect(copperReading(slowlySupplied, 'front', null)).toBeNull();
  expect(copperReading(analysis, 'elsewhere', null)).toBeNull();
});
