import type { ToldEvent } from '../playFleet.ts';
import type { ClampState, Condition } from './condition.ts';
import { type Course, STEP_S } from './integrate.ts';
import type { Plant } from './plant.ts';
import type { Random } from './random.ts';

type StrokeRecord = Extract<ToldEvent, { type: 'stroke' }>['stroke'];
type SideRecord = StrokeRecord['sides'][number];

/** Part of the current by which the commutator makes it ripple, and how often in a metre of rack. */
const RIPPLE_PART = 0.025;
const RIPPLE_PER_METRE = 7400;
const VOLTS_NOISE = 0.015;

/** What the coach's logger makes of a course. */
export function recordOf(plant: Plant, condition: Condition, course: Course, random: Random): StrokeRecord {
  const { logger, facts } = plant;
  const { rateHz, beforeS, clockFactor } = condition.logger;
  const sides = condition.logger.clamps.flatMap((clamp, motor): SideRecord[] => {
    if (clamp.missing) return [];
    const read = readClamp(plant, condition, course, motor, clamp, random);
    const side = facts.sides[motor];
    if (logger.form === 'times') return [{ side, t: timesOf(read.length, rateHz, random), amps: read }];
    const whole = read.filter((amps) => amps !== null);
    if (logger.form === 'amps' || whole.length < read.length) return [{ side, rateHz, amps: read }];
    return [{ side, rateHz, milliamps: whole.map((amps) => Math.round(amps * 1000)) }];
  });
  const supply =
    logger.supply === null
      ? undefined
      : { rateHz: logger.supply.rateHz, volts: readVolts(plant, condition, course, random) };
  return {
    direction: logger.tellsDirection ? condition.direction : undefined,
    startedAt: new Date(condition.atMs - Math.round((beforeS / clockFactor) * 1000)).toISOString(),
    sides,
    supply,
    ambientC: logger.ambient ? Math.round(10 * (condition.ambientC + 0.5 * random.normal())) / 10 : undefined,
  };
}

/** The sampled current of one motor; null: a missed sample. */
function readClamp(
  { logger }: Plant,
  condition: Condition,
  { amps, turned, length }: Course,
  motor: number,
  clamp: ClampState,
  random: Random,
): (number | null)[] {
  const { rateHz, beforeS, clockFactor } = condition.logger;
  const lagged = lag(amps[motor], length, logger.lagS);
  const sign = logger.signed && condition.direction === 'retract' ? -1 : 1;
  const samples = Math.floor((length * STEP_S + beforeS) * rateHz * clockFactor);
  const noise = logger.noiseAmps * clamp.noiseFactor;
  const read: (number | null)[] = [];
  let lostUntil = 0;
  for (let sample = 0; sample < samples; sample++) {
    const step = Math.floor((sample / (rateHz * clockFactor) - beforeS) / STEP_S);
    let true_ = 0;
    if (step >= 0 && step < length && !clamp.left) {
      const ripple = RIPPLE_PART * Math.sin(2 * Math.PI * RIPPLE_PER_METRE * turned[motor][step]);
      true_ = lagged[step] * (1 + ripple);
    }
    const raw = sign * true_ * clamp.scale + clamp.offsetAmps + noise * random.normal();
    const clipped = Math.max(-clamp.clipAmps, Math.min(clamp.clipAmps, raw));
    if (clamp.lostPart > 0 && sample >= lostUntil && random.chance(clamp.lostPart / 4)) {
      lostUntil = sample + random.whole(1, 6);
    }
    const told = Math.round(clipped / logger.resolutionAmps) * logger.resolutionAmps;
    read.push(sample < lostUntil ? null : Math.round(told * 1000) / 1000);
  }
  return read;
}

function lag(amps: Float32Array, length: number, lagS: number): Float32Array {
  const follow = 1 - Math.exp(-STEP_S / lagS);
  const lagged = new Float32Array(length);
  let state = 0;
  for (let step = 0; step < length; step++) {
    state += (amps[step] - state) * follow;
    lagged[step] = state;
  }
  return lagged;
}

function readVolts({ logger }: Plant, condition: Condition, course: Course, random: Random): number[] {
  const { beforeS, clockFactor } = condition.logger;
  const { rateHz, sense } = logger.supply ?? { rateHz: 1, sense: 'battery' };
  const source = sense === 'battery' ? course.batteryVolts : course.controllerVolts;
  const samples = Math.floor((course.length * STEP_S + beforeS) * rateHz * clockFactor);
  return Array.from({ length: Math.max(2, samples) }, (_, sample) => {
    const step = Math.floor((sample / (rateHz * clockFactor) - beforeS) / STEP_S);
    const volts = source[Math.min(course.length - 1, Math.max(0, step))];
    return Math.round(1000 * (volts + VOLTS_NOISE * random.normal())) / 1000;
  });
}

/** A logger that stamps each sample is not quite even. */
function timesOf(samples: number, rateHz: number, random: Random): number[] {
  return Array.from({ length: samples }, (_, sample) => {
    const jitter = sample === 0 ? 0 : random.between(-0.2, 0.2);
    return Math.round(((sample + jitter) / rateHz) * 1e5) / 1e5;
  });
}
