import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Motor } from './plant.ts';

const KELVIN_A_SECOND = { low: 0.08, high: 0.5 };

/** A motor that draws `amps` at `metresPerSecond` on `volts`. */
export function drawMotor(random: Random, amps: number, metresPerSecond: number, volts: number): Motor {
  const brushVolts = random.uniform(0.3, 0.8) * (volts / 12.6);
  const ohms = (volts - brushVolts) / (amps * random.logUniform(4, 9));
  const voltsPerSpeed = (volts - brushVolts - amps * ohms) / metresPerSecond;
  const efficiency = random.uniform(0.3, 0.6);
  const mechanicalS = random.uniform(0.03, 0.08);
  return {
    voltsPerSpeed,
    efficiency,
    ohms,
    henries: ohms * random.uniform(0.002, 0.005),
    brushVolts,
    idleAmps: amps * random.uniform(0.12, 0.3),
    kilograms: (mechanicalS * voltsPerSpeed ** 2 * efficiency) / ohms,
    kelvinPerJoule: random.uniform(KELVIN_A_SECOND.low, KELVIN_A_SECOND.high) / (amps ** 2 * ohms),
    windingS: random.uniform(60, 200),
    housingS: random.uniform(900, 3000),
  };
}

/** The force that the room asks of a motor which draws `amps`, newtons. */
export function forceOf(motor: Motor, amps: number): number {
  return motor.voltsPerSpeed * motor.efficiency * (amps - motor.idleAmps);
}
