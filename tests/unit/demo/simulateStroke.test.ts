import { expect, test } from 'vitest';
import { type Bump, healthyCondition } from '../../../server/demo/simulator/condition.ts';
import { drawRoom } from '../../../server/demo/simulator/drawRoom.ts';
import { badTooth, turnMetres } from '../../../server/demo/simulator/faults/bumps.ts';
import { Random } from '../../../server/demo/simulator/random.ts';
import { simulateStroke } from '../../../server/demo/simulator/simulateStroke.ts';
import { plainRoom } from './plainRoom.ts';

const IN_WALL = { drive: 'in-wall', rateHz: 50, strokeS: 25 } as const;

function highestAt(positions: Float64Array, amps: Float64Array, from: number, to: number): number {
  let best = -1;
  for (let sample = 0; sample < amps.length; sample++) {
    const inside = positions[sample] > from && positions[sample] < to;
    if (inside && (best < 0 || amps[sample] > amps[best])) best = sample;
  }
  return positions[best];
}

test('the same seed gives the same recording, another seed other noise', () => {
  const room = drawRoom(5);
  const condition = healthyCondition(room, 'extend');
  expect(simulateStroke(room, condition, 3)).toEqual(simulateStroke(drawRoom(5), condition, 3));
  expect(simulateStroke(room, condition, 4).stroke).not.toEqual(simulateStroke(room, condition, 3).stroke);
});

test('a stroke goes from one end to the other, never backwards', () => {
  const room = drawRoom(8, IN_WALL);
  for (const direction of ['extend', 'retract'] as const) {
    for (const side of simulateStroke(room, healthyCondition(room, direction), 1).truth.sides) {
      expect([side.startPosition, side.endPosition]).toEqual(direction === 'extend' ? [0, 1] : [1, 0]);
      const heading = direction === 'extend' ? 1 : -1;
      for (let sample = 1; sample < side.positions.length; sample++) {
        expect((side.positions[sample] - side.positions[sample - 1]) * heading).toBeGreaterThanOrEqual(0);
      }
    }
  }
});

test('a pause stops the room where it is, and starting again draws an inrush', () => {
  const room = plainRoom(8, IN_WALL);
  const pauses = [{ position: 0.5, durationS: 2 }];
  const [side] = simulateStroke(room, healthyCondition(room, 'extend', { pauses }), 1).truth.sides;
  const [{ fromS, toS }] = side.phases.pauses;
  const at = (timeS: number) => side.timesS.findIndex((time) => time >= timeS);
  expect(toS - fromS).toBeCloseTo(2, 1);
  expect(side.positions[at(toS - 0.1)] - side.positions[at(fromS)]).toBeLessThan(0.01);
  expect(side.trueAmps[at(fromS + 1)]).toBe(0);
  const restart = Math.max(...side.trueAmps.subarray(at(toS), at(toS + 0.3)));
  expect(restart).toBeGreaterThan(2 * side.trueAmps[at(fromS - 0.5)]);
  expect(side.endPosition).toBe(1);
});

test.each(['extend', 'retract'] as const)(
  'a bump stands where it was put while the room %ss',
  (direction) => {
    const room = plainRoom(8, IN_WALL);
    const bumps: Bump[] = [{ sideIndex: 1, position: 0.37, widthMetres: 0.016, part: 1.2 }];
    const { truth } = simulateStroke(room, healthyCondition(room, direction, { bumps }), 1);
    const [other, bumped] = truth.sides;
    expect(Math.abs(highestAt(bumped.positions, bumped.trueAmps, 0.15, 0.85) - 0.37)).toBeLessThan(0.01);
    const middle = (amps: Float64Array) => amps.subarray(amps.length * 0.2, amps.length * 0.8);
    expect(Math.max(...middle(other.trueAmps))).toBeLessThan(1.25 * room.runningAmps[0]);
  },
);

test('a bad tooth bumps once for each turn of the gear', () => {
  const room = plainRoom(8, { ...IN_WALL, rateHz: 200 });
  const turn = turnMetres(room) / room.facts.travelMetres;
  const fault = badTooth(room, { onsetStroke: 0, sideIndex: 0, turnPart: 0.5, widthMetres: 0.01, part: 1 });
  const condition = fault.change(healthyCondition(room, 'extend'), 0, new Random(1));
  const [side] = simulateStroke(room, condition, 1).truth.sides;
  for (let position = 0.5 * turn; position < 0.95; position += turn) {
    if (position < 0.1) continue;
    const highest = highestAt(side.positions, side.trueAmps, position - turn / 2, position + turn / 2);
    expect(Math.abs(highest - position)).toBeLessThan(0.012);
  }
});

test('what one side sheds the other takes', () => {
  const room = plainRoom(8, IN_WALL);
  const drops = [{ sideIndex: 0, from: 0.3, to: 0.7, keeps: 0, taken: 1 }];
  const run = (changes: object) =>
    simulateStroke(room, healthyCondition(room, 'extend', changes), 1).truth.sides;
  const at = (sides: ReturnType<typeof run>, side: number) =>
    sides[side].trueAmps[sides[side].positions.findIndex((position) => position > 0.5)];
  const healthy = run({});
  const dropped = run({ drops });
  expect(at(dropped, 0)).toBeCloseTo(room.motors[0].noLoadAmps, 1);
  const torques = (sides: ReturnType<typeof run>) =>
    room.motors.reduce((sum, motor, side) => {
      const newtons = (motor.fluxConstant * motor.gearEfficiency) / motor.metresPerRadian;
      return sum + newtons * (at(sides, side) - motor.noLoadAmps);
    }, 0);
  expect(Math.abs(torques(dropped) / torques(healthy) - 1)).toBeLessThan(0.03);
});

test('a slope adds to the one direction what it takes from the other', () => {
  const room = plainRoom(9, { drive: 'through-frame', rateHz: 50 });
  const amps = (direction: 'extend' | 'retract', tiltDegrees: number) => {
    const [side] = simulateStroke(room, healthyCondition(room, direction, { tiltDegrees }), 1).truth.sides;
    return side.trueAmps[side.positions.findIndex((p) => (direction === 'extend' ? p > 0.5 : p < 0.5))];
  };
  const level = amps('extend', 0);
  expect(amps('extend', 1)).toBeGreaterThan(level * 1.02);
  expect((amps('extend', 1) + amps('retract', 1)) / 2).toBeCloseTo(level, 1);
});

test('the logger shows its offset, its scale, its missed samples and its limit', () => {
  const room = plainRoom(9, { drive: 'through-frame', rateHz: 50 });
  const plain = healthyCondition(room, 'retract');
  const [sensor] = plain.sensors;
  const odd = { ...sensor, offsetAmps: 0.7, rangeAmps: 20, stepAmps: 0.1, missed: 0.05 };
  const { stroke, truth } = simulateStroke(room, { ...plain, sensors: [odd] }, 2);
  const amps = stroke.sides[0].amps ?? [];
  expect(amps).toHaveLength(truth.sides[0].timesS.length);
  expect(amps[0] ?? amps[1]).toBeCloseTo(0.7, 5);
  expect(Math.max(...amps.map((value) => value ?? 0))).toBe(20);
  expect(amps.filter((value) => value === null).length / amps.length).toBeCloseTo(0.05, 1);
});
