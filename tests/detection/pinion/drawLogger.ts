import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Logger, Motor } from './plant.ts';

const RATES_HZ = [10, 10, 15, 20, 25, 40, 50, 50, 100, 200];

/** A logger fit for a side that draws `amps`. */
export function drawLogger(random: Random, amps: number, motor: Motor): Logger {
  const sensor = random.pick<Logger['sensor']>(['clamp', 'shunt']);
  const isClamp = sensor === 'clamp';
  const noiseAmps = random.logUniform(0.008, Math.min(0.4, 0.07 * amps));
  const beforeS = random.chance(0.7) ? random.uniform(0.2, 1.5) : 0;
  const afterS = random.chance(0.6) ? random.uniform(0.2, 1.5) : 0;
  const hidden = beforeS === 0 && afterS === 0;
  const offset = hidden ? 0.01 * amps : isClamp ? 0.12 : 0.03;
  const steps = [0.001, 0.01, 0.02, 0.05, 0.1, 0.25].filter((step) => step <= 0.04 * amps);
  return {
    sensor,
    rateHz: random.pick(RATES_HZ),
    noiseAmps,
    resolutionAmps: random.pick(steps),
    offsetAmps: [random.normal(0, offset), random.normal(0, offset)],
    gain: [1 + random.normal(0, 0.02), 1 + random.normal(0, 0.02)],
    driftAmpsPerK: random.normal(0, hidden ? 0.0005 * amps : isClamp ? 0.004 : 0.001),
    playAmps: isClamp ? Math.min(0.02 * amps, random.uniform(0.01, 0.12)) : 0,
    remanenceAmps: isClamp ? Math.min(0.012 * amps, random.uniform(0.02, 0.15)) : 0,
    averages: random.chance(0.5),
    times: random.chance(0.3) ? 'jittered' : 'rate',
    missedPart: random.chance(0.3) ? random.uniform(0.001, 0.02) : 0,
    beforeS,
    afterS,
    signed: random.chance(0.6),
    tellsDirection: random.chance(0.7),
    clockFactor: 1 + random.normal(0, 0.003),
    supply: random.chance(0.65)
      ? {
          rateHz: random.pick([2, 5, 10, 20, 50]),
          offsetVolts: random.normal(0, 0.04),
          noiseVolts: random.uniform(0.01, 0.06) * Math.sqrt(motor.brushVolts),
        }
      : null,
    ambient: random.chance(0.6) ? { offsetK: random.normal(0, 1.5) } : null,
  };
}
