import type { Random } from '../../../server/demo/simulator/random.ts';
import type { SideRecord, StrokeRecord } from '../../../server/demo/simulator/strokeRecord.ts';
import type { PlannedStroke } from './calendar.ts';
import type { StrokeCondition } from './condition.ts';
import type { Run } from './motion.ts';
import type { Plant } from './plant.ts';

/** Of the current, from the commutator, as a sample of one moment sees it. */
const COMMUTATOR_PART = 0.012;

/** What the room's logger makes of what really flowed. */
export function logStroke(
  plant: Plant,
  condition: StrokeCondition,
  { direction, atMs }: PlannedStroke,
  run: Run,
  random: Random,
): StrokeRecord {
  const { logger, facts } = plant;
  const first = Math.min(Math.round(condition.lateS * condition.rateHz), Math.floor(run.volts.length / 3));
  const told = condition.rateHz / condition.clockFactor;
  const count = run.volts.length - first;
  const times = Array.from({ length: count }, (_, n) => {
    const jitter = n === 0 ? 0 : random.uniform(-0.2, 0.2);
    return Number(((n + jitter) / told).toFixed(5));
  });
  const sides = plant.sides.map((side, i): SideRecord => {
    const amps = readSide(plant, condition, i, run.amps[i], random).slice(first);
    if (logger.times === 'jittered') return { side: side.name, t: times, amps };
    return { side: side.name, rateHz: Number(told.toFixed(4)), amps };
  });
  const isTold = logger.tellsDirection || !logger.signed;
  return {
    ...(isTold ? { direction } : {}),
    startedAt: new Date(atMs).toISOString(),
    sides: logger.signed && facts.positiveDirection === 'retract' ? sides.map(negated) : sides,
    ...(logger.supply === null ? {} : { supply: readSupply(run, condition, first, logger.supply, random) }),
    ...(logger.ambient === null
      ? {}
      : {
          ambientC:
            Math.round((condition.ambientC + logger.ambient.offsetK + random.normal(0, 0.4)) * 10) / 10,
        }),
  };
}

function readSide(
  { logger, sides }: Plant,
  condition: StrokeCondition,
  i: number,
  flowed: readonly number[],
  random: Random,
): (number | null)[] {
  const own = condition.sides[i];
  const last = flowed.find((amps) => Math.abs(amps) > 0.5 * sides[i].runningAmps) ?? 0;
  // What the last movement left in the core was of the other sign.
  let remanence = -Math.sign(last) * logger.remanenceAmps;
  const stall = 4 * sides[i].runningAmps;
  let held = 0;
  return flowed.map((amps) => {
    remanence +=
      (Math.sign(amps) * logger.remanenceAmps - remanence) * Math.min(1, Math.abs(amps) / stall) * 0.2;
    held = Math.max(amps - logger.playAmps, Math.min(amps + logger.playAmps, held));
    const commutator = random.normal(0, COMMUTATOR_PART * Math.abs(amps) * (logger.averages ? 0.3 : 1));
    const noise = random.normal(0, own.noiseAmps);
    const missed = random.chance(own.gapPart);
    const seen = own.isOff ? 0 : own.gain * (held + remanence + commutator);
    const read = Math.max(-own.clipAmps, Math.min(own.clipAmps, seen + own.offsetAmps + noise));
    if (missed) return null;
    const whole = Math.round(read / condition.resolutionAmps) * condition.resolutionAmps;
    return Number((logger.signed ? whole : Math.abs(whole)).toFixed(4));
  });
}

function negated({ amps, ...side }: SideRecord): SideRecord {
  return { ...side, amps: amps?.map((each) => (each === null ? null : -each)) };
}

function readSupply(
  { volts }: Run,
  { rateHz, clockFactor }: StrokeCondition,
  first: number,
  { rateHz: supplyHz, offsetVolts, noiseVolts }: NonNullable<Plant['logger']['supply']>,
  random: Random,
): StrokeRecord['supply'] {
  const every = rateHz / Math.min(supplyHz, rateHz);
  const read: number[] = [];
  for (let at = first; at < volts.length; at += every) {
    const value = volts[Math.floor(at)] + offsetVolts + random.normal(0, noiseVolts);
    read.push(Number(value.toFixed(2)));
  }
  if (read.length < 2) read.push(read[0]);
  return { rateHz: Number((rateHz / every / clockFactor).toFixed(4)), volts: read };
}
