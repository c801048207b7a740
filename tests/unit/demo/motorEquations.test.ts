import { describe, expect, test } from 'vitest';
import { healthyCondition } from '../../../server/demo/simulator/condition.ts';
import { COPPER_PER_K, copperFactor } from '../../../server/demo/simulator/copper.ts';
import { driveRoom } from '../../../server/demo/simulator/driveRoom.ts';
import { restVolts } from '../../../server/demo/simulator/supply.ts';
import { middleStep, plainRoom } from './plainRoom.ts';

/** Relative. */
const NEAR = 0.003;

describe.each([1, 2, 3, 4, 5, 6])('room %i against the closed motor equations', (seed) => {
  const room = plainRoom(seed);
  const driven = driveRoom(room, healthyCondition(room, 'extend'));
  const step = middleStep(driven.positions[0]);

  test('running current is load torque / Kt + I0', () => {
    for (const [side, motor] of room.motors.entries()) {
      const torque = (room.load.forceN * motor.loadShare * motor.metresPerRadian) / motor.gearEfficiency;
      const amps = torque / motor.fluxConstant + motor.noLoadAmps;
      expect(Math.abs(driven.amps[side][step] / amps - 1)).toBeLessThan(NEAR);
    }
  });

  test('speed of the side that sets the pace is (V - I R) / Ke', () => {
    const span = 200;
    const speeds = room.motors.map((motor, side) => {
      const amps = driven.amps[side][step];
      const ohms = motor.windingOhms + motor.wireOhms;
      return ((driven.volts[step] - amps * ohms) / motor.fluxConstant) * motor.metresPerRadian;
    });
    const gone = driven.positions.map((all) => (all[step + span] - all[step]) * room.facts.travelMetres);
    expect(Math.abs(Math.min(...gone) / (span * driven.stepS) / Math.min(...speeds) - 1)).toBeLessThan(NEAR);
  });

  test('stall current at the end stop is V / R', () => {
    // The first to be switched off: until then nothing has disturbed the supply.
    const first = Math.min(...driven.events.map(({ offS }) => offS));
    const side = driven.events.findIndex(({ offS }) => offS === first);
    const motor = room.motors[side];
    const stalled = Math.floor(driven.events[side].offS / driven.stepS) - 2;
    const amps = driven.volts[stalled] / (motor.windingOhms + motor.wireOhms);
    expect(Math.abs(driven.amps[side][stalled] / amps - 1)).toBeLessThan(0.01);
  });

  test('inrush lies between two and eight times the running current', () => {
    const inrush = Math.max(...driven.amps[0].subarray(0, 250));
    expect(inrush / driven.amps[0][step]).toBeGreaterThan(2);
    expect(inrush / driven.amps[0][step]).toBeLessThan(8.5);
  });
});

test('what the supply gives is heat in the copper, losses of the motor and work on the room', () => {
  const room = plainRoom(12, { drive: 'through-frame' });
  const [motor] = room.motors;
  const { amps, volts, positions, stepS } = driveRoom(room, healthyCondition(room, 'extend'));
  const from = middleStep(positions[0]);
  const to = positions[0].findIndex((position) => position > 0.8);
  let supplied = 0;
  let spent = 0;
  for (let step = from; step < to; step++) {
    const metres = (positions[0][step + 1] - positions[0][step]) * room.facts.travelMetres;
    const radians = metres / motor.metresPerRadian;
    supplied += volts[step] * amps[0][step] * stepS;
    spent += amps[0][step] ** 2 * (motor.windingOhms + motor.wireOhms) * stepS;
    spent += motor.fluxConstant * motor.noLoadAmps * radians;
    spent += (room.load.forceN / motor.gearEfficiency) * metres;
  }
  expect(Math.abs(spent / supplied - 1)).toBeLessThan(NEAR);
});

test('a warming winding lowers the stall current by the temperature coefficient of copper', () => {
  const room = plainRoom(12, { drive: 'through-frame' });
  const [motor] = room.motors;
  const warm = { ...room, motors: [{ ...motor, heatCapacityJPerK: 40, heatLossWPerK: 0 }] };
  const driven = driveRoom(warm, healthyCondition(warm, 'extend'));
  const end = Math.floor(driven.events[0].offS / driven.stepS) - 2;
  const ohms = driven.volts[end] / driven.amps[0][end];
  let joules = 0;
  for (let step = 0; step <= end; step++)
    joules += driven.amps[0][step] ** 2 * motor.windingOhms * driven.stepS;
  // Energy at the resistance of 20 °C, so the rise is estimated a little low.
  const leastRise = joules / 40;
  const least = motor.windingOhms * (1 + COPPER_PER_K * leastRise) + motor.wireOhms;
  expect(ohms).toBeGreaterThan(least);
  expect(ohms).toBeLessThan(least * 1.05);
});

test.each([
  // Temperature, factor: IEC 60028 with 0.00393 per K.
  [-40, 0.7642],
  [0, 0.9214],
  [20, 1],
  [80, 1.2358],
])('copper at %i °C has %f of its resistance at 20 °C', (temperatureC, factor) => {
  expect(copperFactor(temperatureC)).toBeCloseTo(factor, 12);
});

test.each([
  // State of charge, volts at rest: Battery Council International, wet cell, 1.265.
  [1, 12.65],
  [0.75, 12.45],
  [0.5, 12.24],
  [0.25, 12.06],
  [0, 11.89],
  [0.875, 12.55],
])('a battery charged to %f rests at %f V', (charge, volts) => {
  expect(restVolts(charge)).toBeCloseTo(volts, 9);
});
