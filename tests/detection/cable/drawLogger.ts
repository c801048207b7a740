import type { Random } from '../../../server/demo/simulator/random.ts';
import type { RoomNeeds } from './drawRoom.ts';
import type { Logger } from './logger.ts';

const RATES_HZ = [10, 20, 25, 40, 50, 100, 200];

/** A logger for sides that run and stall at these currents. Common practice, no source. */
export function drawLogger(random: Random, runAmps: number, stallAmps: number, needs: RoomNeeds): Logger {
  const rates = RATES_HZ.filter((rate) => rate >= (needs.leastRateHz ?? 10));
  const rateHz = random.pick(rates);
  const signed = random.chance(0.6);
  const bits = random.pick([8, 9, 10, 10, 12, 12, 12]);
  const rangeAmps = [20, 30, 50, 75, 100, 200].find((range) => range > stallAmps * 1.15) ?? 200;
  const prompt = needs.wholeRecord === true;
  const noise = random.logUniform(0.01, 0.4);
  return {
    rateHz,
    averages: random.chance(0.5),
    // A step of more than a tenth of the running current is no use to anybody.
    bits: (signed ? 2 : 1) * rangeAmps > 0.1 * runAmps * 2 ** bits ? 12 : bits,
    rangeAmps,
    signed,
    tellsDirection: !signed || random.chance(0.7),
    inMilliamps: random.chance(0.15),
    jitterPart: random.chance(0.2) ? random.uniform(0.05, 0.35) : 0,
    noiseAmps: Math.min(noise, 0.06 * runAmps),
    zeroAmps: signed ? random.normal(0, 0.08) : random.uniform(0.05, 0.3),
    zeroWanderAmps: random.chance(0.4) ? random.uniform(0.02, 0.1) : 0.01,
    restBeforeS: prompt ? random.uniform(0.5, 2) : random.pick([0, 0.2, 0.5, 1, 4]),
    restAfterS: prompt ? random.uniform(0.6, 2) : random.pick([0, 0.3, 1, 2, 6]),
    lateS: !prompt && random.chance(0.15) ? random.uniform(0.1, 0.6) : 0,
    endsEarlyS: !prompt && random.chance(0.08) ? random.uniform(0.2, 1) : 0,
    dropChance: random.chance(0.25) ? random.uniform(0.005, 0.03) : 0,
    thermometer: needs.thermometer || random.chance(0.55) ? { offsetC: random.normal(0, 0.8) } : null,
    supply:
      needs.supply || random.chance(0.5)
        ? {
            rateHz: random.pick(prompt ? [5, 10, rateHz] : [1, 2, 5, 10, rateHz]),
            gain: random.normal(1, 0.004),
            noiseVolts: random.logUniform(0.005, 0.08),
          }
        : null,
  };
}
