import { expect, test } from 'vitest';
import type { SpikedStroke } from '../../../../../analysis/findings/stallSpike/spikeMemory.ts';
import { spikePattern } from '../../../../../analysis/findings/stallSpike/spikePattern.ts';
import { Random } from '../../../../../server/demo/simulator/random.ts';
import { directionOf } from '../../support/strokeEvents.ts';

const strokesOf = (positions: (index: number) => readonly number[]): SpikedStroke[] =>
  Array.from({ length: 8 }, (_, index) => ({
    direction: directionOf(index),
    positions: positions(index),
    unsure: 0,
    heights: positions(index).map(() => 0.8),
    swing: null,
    stillRises: false,
  }));

test('a place that reads a little further on in either direction is one place', () => {
  const found = spikePattern(
    strokesOf((index) => [index % 2 === 0 ? 0.24 : 0.21]),
    null,
  );
  expect(found).toMatchObject({ pattern: 'same-place', strokes: 8 });
  expect(found?.position).toBeCloseTo(0.225, 2);
});

test('so is one that reads as much sooner, as where the room creeps to its end', () => {
  const found = spikePattern(
    strokesOf((index) => [index % 2 === 0 ? 0.21 : 0.24]),
    null,
  );
  expect(found).toMatchObject({ pattern: 'same-place', strokes: 8 });
  expect(found?.position).toBeCloseTo(0.225, 2);
});

test('what lies further apart by direction than either explains is at no one place', () => {
  const found = spikePattern(
    strokesOf((index) => [index % 2 === 0 ? 0.19 : 0.28]),
    null,
  );
  expect(found?.pattern).toBe('scattered');
});

test('spikes that come anywhere are at no one place', () => {
  for (let seed = 1; seed <= 200; seed++) {
    const random = new Random(seed);
    const anywhere = Array.from({ length: 8 }, () =>
      Array.from({ length: 2 + Math.floor(random.uniform(0, 3)) }, () => random.uniform(0.08, 0.92)).sort(
        (a, b) => a - b,
      ),
    );
    const found = spikePattern(
      strokesOf((index) => anywhere[index]),
      null,
    );
    expect([seed, found?.pattern]).not.toEqual([seed, 'same-place']);
  }
});

test('three places evenly apart that never change are turns of the gear, where no gear is known', () => {
  const found = spikePattern(
    strokesOf((index) => [0.166, 0.452, 0.738].map((place) => place + (index % 2 === 0 ? 0.005 : -0.005))),
    null,
  );
  expect(found).toMatchObject({ pattern: 'once-per-turn', strokes: 8 });
});

test('two places as far apart as the gear turns once are turns, and further apart are not', () => {
  const placed = (gap: number) =>
    spikePattern(
      strokesOf(() => [0.3, 0.3 + gap]),
      0.31,
    )?.pattern;
  expect(placed(0.31)).toBe('once-per-turn');
  expect(placed(0.4)).not.toBe('once-per-turn');
});

test('three places that are evenly apart on each stroke, but elsewhere on each, are no turns', () => {
  const random = new Random(5);
  const firsts = Array.from({ length: 8 }, () => random.uniform(0.1, 0.5));
  const found = spikePattern(
    strokesOf((index) => [0, 0.2, 0.4].map((by) => firsts[index] + by)),
    null,
  );
  expect(found?.pattern).toBe('scattered');
});

test('a few peaks a stroke that come anywhere are taken for the turns of a gear hardly ever, and those of a gear are', () => {
  const TURN = 0.094;
  const found = { chance: 0, gear: 0 };
  for (let seed = 1; seed <= 300; seed++) {
    const random = new Random(seed);
    const anywhere = strokesOf(() =>
      Array.from({ length: 3 + Math.floor(random.uniform(0, 3)) }, () => random.uniform(0.07, 0.93)).sort(
        (a, b) => a - b,
      ),
    );
    const latest = anywhere.slice(0, 4);
    if (spikePattern(latest, TURN)?.pattern === 'once-per-turn') found.chance++;
    const first = random.uniform(0.07, 0.12);
    const turns = strokesOf(() =>
      [0, 1, 2, 4, 6].map((turn) => first + TURN * turn + random.normal(0, 0.006)),
    );
    if (spikePattern(turns.slice(0, 3), TURN)?.pattern === 'once-per-turn') found.gear++;
  }
  expect(found.chance).toBeLessThan(5);
  expect(found.gear).toBeGreaterThan(285);
});

test('places of several strokes that are whole turns apart are once per turn, though each shows but one or two', () => {
  const turn = 0.13;
  const teeth = [[0.34], [0.34, 0.47], [0.86], [0.34], [0.47], [], [0.34, 0.86], [0.34]];
  expect(
    spikePattern(
      strokesOf((index) => teeth[index]),
      turn,
    )?.pattern,
  ).toBe('once-per-turn');
  const screws = [[0.34], [0.34, 0.42], [0.66], [0.34], [0.42], [], [0.34, 0.66], [0.34]];
  expect(
    spikePattern(
      strokesOf((index) => screws[index]),
      turn,
    )?.pattern,
  ).not.toBe('once-per-turn');
  const screw = [[0.34], [0.34, 0.47], [0.34], [0.34], [0.34], [], [0.34, 0.86], [0.34]];
  expect(
    spikePattern(
      strokesOf((index) => screw[index]),
      turn,
    )?.pattern,
  ).toBe('same-place');
});
