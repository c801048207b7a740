import { expect, test } from 'vitest';
import { WARNING_KINDS } from '../../../analysis/warning.ts';
import { drawRooms, type FleetRoom } from '../../detection/fleets.ts';
import type { ToldEvent } from '../../detection/playFleet.ts';

const ROOMS = 60;

function firstEvents({ events }: FleetRoom, count: number): ToldEvent[] {
  const first: ToldEvent[] = [];
  for (const event of events()) {
    first.push(event);
    if (first.length === count) break;
  }
  return first;
}

test('the fleet of forces bears faults of all ten kinds, each after its room could learn or from its first stroke', () => {
  const rooms = drawRooms('forces', 5, ROOMS, 120);
  const faults = rooms.flatMap(({ fault }) => (fault === null ? [] : [fault]));
  expect(faults).toHaveLength(ROOMS / 2);
  expect(new Set(faults.map(({ label }) => label.kind))).toEqual(new Set(WARNING_KINDS));
  for (const { startsStroke, label } of faults) {
    expect(startsStroke === 0).toBe(label.kind === 'heavy-room');
    if (startsStroke > 0) expect(startsStroke).toBeGreaterThanOrEqual(16);
  }
});

test('a seed plays the same strokes again: currents that start high, run, and come to an end', () => {
  const play = () => drawRooms('forces', 8, 6, 60).map((room) => firstEvents(room, 3));
  const once = play();
  expect(play()).toEqual(once);
  for (const event of once.flat()) {
    if (event.type === 'service') continue;
    for (const { amps = [] } of event.stroke.sides) {
      const read = amps.map((value) => Math.abs(value ?? 0));
      const middle = read.slice(Math.round(0.4 * read.length), Math.round(0.6 * read.length));
      const running = middle.reduce((sum, value) => sum + value, 0) / middle.length;
      expect(running).toBeGreaterThan(1);
      expect(running).toBeLessThan(60);
      expect(Math.max(...read)).toBeGreaterThan(1.3 * running);
    }
  }
});
