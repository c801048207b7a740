import type { Random } from '../../../server/demo/simulator/random.ts';
import type { RunningAim } from './drawRoom.ts';
import type { ClampLogger } from './logger.ts';
import type { RoomNeeds } from './needs.ts';
import type { Motor } from './room.ts';

const RATES_HZ = [10, 12.5, 20, 25, 25, 50, 50, 50, 64, 100, 100, 200] as const;
const RANGES_AMPS = [30, 50, 60, 80, 100, 150, 200, 300] as const;
const MOST_VOLTS = 15;

/** A logger that fits the room: its range holds the stall current, its steps are fine beside the running current. */
export function drawLogger(random: Random, aim: RunningAim, motor: Motor, needs: RoomNeeds): ClampLogger {
  const rates = RATES_HZ.filter((rate) => rate >= (needs.leastRateHz ?? 0));
  const rate = random.pick(rates);
  const otherRate = random.chance(0.15) ? random.pick(rates) : rate;
  const rateHz = aim.sides === 2 ? [rate, otherRate] : [rate];
  const stallAmps = ((MOST_VOLTS / 12) * aim.nominalVolts) / (motor.ohmsAt20C * 0.82 + motor.leadOhms);
  const rangeAmps = RANGES_AMPS.find((range) => range > stallAmps * 1.1) ?? stallAmps * 1.3;
  const onMotorLead = needs.onMotorLead ?? random.chance(0.5);
  const sendsTimes = needs.sendsTimes ?? random.chance(0.25);
  const wakesLate = needs.recordsRest !== true && random.chance(0.2);
  const noisePart = 0.06;
  return {
    rateHz,
    laterRateHz: random.chance(0.12) ? rateHz.map(() => random.pick(rates)) : null,
    bits: Math.max(
      random.integer(8, 16),
      Math.ceil(Math.log2((2 * rangeAmps) / (noisePart * aim.runningAmps))),
    ),
    rangeAmps,
    noiseAmps: Math.min(0.4, noisePart * aim.runningAmps) * random.uniform(0, 1),
    offsetAmps: random.normal(0, 0.012 * aim.runningAmps),
    hysteresisAmps: Math.min(0.12, 0.015 * aim.runningAmps) * random.uniform(0, 1),
    averages: random.chance(0.5),
    ripplePart: random.uniform(0.005, 0.03),
    onMotorLead,
    tellsDirection: needs.tellsDirection ?? (!onMotorLead || random.chance(0.7)),
    sendsTimes,
    jitterS: sendsTimes ? (random.uniform(0, 0.12) * 1) / rate : 0,
    missedPart: random.chance(0.3) ? random.uniform(0.001, 0.02) : 0,
    sendsMilliamps: random.chance(0.15),
    leadS: wakesLate ? -random.uniform(0, 0.1) : random.uniform(needs.recordsRest === true ? 0.6 : 0, 1.2),
    tailS: random.chance(0.2) ? 0 : random.uniform(0.2, 1.2),
    supplyRateHz: (needs.recordsSupply ?? random.chance(0.6)) ? random.pick([2, 5, 10, 25]) : null,
    supplyOffsetVolts: random.normal(0, 0.05),
    recordsAmbient: random.chance(0.65),
    ambientOffsetC: random.normal(0, 1),
  };
}
