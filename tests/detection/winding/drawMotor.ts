import type { Random } from '../../../server/demo/simulator/random.ts';
import type { RunningAim } from './drawRoom.ts';
import type { Motor } from './room.ts';

/** What a battery at rest gives on the way to the motor, less what the wiring takes. */
const VOLTS_LEFT = 0.985;

/** A motor that makes the aimed speed at the aimed current, with a stall current of several times that. */
export function drawMotor(random: Random, aim: RunningAim): Motor {
  const volts = aim.nominalVolts * 1.05 * VOLTS_LEFT;
  const ohms = volts / (aim.runningAmps * random.uniform(aim.leastStallRatio, 9));
  const leadOhms = ohms * random.uniform(0.05, 0.15);
  const newtonsPerAmp = (volts - aim.runningAmps * ohms) / aim.metresPerSecond;
  const spinUpS = random.logUniform(0.03, 0.12);
  return {
    ohmsAt20C: ohms - leadOhms,
    leadOhms,
    newtonsPerAmp,
    noLoadAmps: aim.runningAmps * random.uniform(0.18, 0.35),
    massKg: (spinUpS * newtonsPerAmp ** 2) / ohms,
    gearEfficiency: random.uniform(0.45, 0.7),
    windingJoulesPerKelvin: aim.runningAmps * random.uniform(8, 18),
    windingKelvinPerWatt: random.uniform(8, 16) / aim.runningAmps,
  };
}
