import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Logger } from './logger.ts';

const FULL_SCALES_AMPS = [20, 30, 50, 75, 100, 150, 200, 300];

/** A logger whose range holds the largest current that a sound room can draw. */
export function drawLogger(random: Random, sideCount: number, stallAmps: number, leastHz: number): Logger {
  const rate = Math.round(random.logUniform(leastHz, 200));
  const rates = Array.from({ length: sideCount }, () => rate);
  if (sideCount > 1 && random.chance(0.15)) rates[1] = Math.round(random.logUniform(leastHz, 200));
  const signed = random.chance(0.6);
  const writes = random.pick(['amps', 'amps', 'milliamps', 'instants'] as const);
  return {
    rateHz: rates,
    averages: random.chance(0.5),
    fullScaleAmps: FULL_SCALES_AMPS.find((amps) => amps > stallAmps * 1.25) ?? stallAmps * 1.5,
    bits: random.pick([10, 12, 12]),
    signed,
    givesDirection: !signed || random.chance(0.7),
    gains: rates.map(() => random.uniform(0.95, 1.05)),
    noiseAmps: random.logUniform(0.02, 0.4),
    ripple: random.uniform(0.005, 0.035),
    leadInS: random.chance(0.75) ? random.uniform(0.25, 1.2) : -random.uniform(0, 0.15),
    leadOutS: random.chance(0.8) ? random.uniform(0.2, 1.2) : 0,
    missedShare: writes === 'amps' && random.chance(0.3) ? random.uniform(0.002, 0.02) : 0,
    writes,
    jitterS: random.uniform(0, 0.2) / Math.max(...rates),
    supply: random.chance(0.6)
      ? {
          rateHz: random.pick([1, 5, 10, 20]),
          zeroVolts: random.normal(0, 0.05),
          stepVolts: random.pick([0.01, 0.02, 0.05]),
        }
      : null,
    thermometer: random.chance(0.65)
      ? { zeroC: random.normal(0, 1), stepC: random.pick([0.1, 0.5, 1]) }
      : null,
  };
}
