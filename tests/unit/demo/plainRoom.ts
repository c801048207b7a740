import { type DrawRoomOptions, drawRoom } from '../../../server/demo/simulator/drawRoom.ts';
import type { SimulatedRoom } from '../../../server/demo/simulator/room.ts';

/** A room without seals, ripple, texture, viscous friction or warming: what closed equations can say. */
export function plainRoom(seed: number, options: DrawRoomOptions = {}): SimulatedRoom {
  const room = drawRoom(seed, { noiseAmps: 0, supplyRateHz: null, ...options });
  return {
    ...room,
    motors: room.motors.map((motor) => ({
      ...motor,
      texture: [1, 1],
      toothRipple: 0,
      turnRipple: 0,
      heatCapacityJPerK: 1e9,
    })),
    // Stiff and patient enough for the motor to come to a true standstill.
    control: { ...room.control, stopGiveMetres: 0.001, stallS: 0.6 },
    load: { ...room.load, viscousPart: 0, retractFactor: 1, sealPart: 0 },
    logging: { ...room.logging, scales: room.motors.map(() => 1), signed: false, form: 'rate', unit: 'amps' },
  };
}

/** The middle step of a stroke, by position. */
export function middleStep(positions: Float64Array): number {
  return positions.findIndex((position) => position > 0.5);
}
