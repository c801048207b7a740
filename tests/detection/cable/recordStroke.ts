import type { Random } from '../../../server/demo/simulator/random.ts';
import type { SideRecord, StrokeRecord } from '../../../server/demo/simulator/strokeRecord.ts';
import type { Condition, Reading } from './condition.ts';
import type { Tape } from './driveStroke.ts';
import type { LivedStroke } from './life.ts';
import type { CableRoom } from './room.ts';
import { STEP_S } from './step.ts';

/** What the logger makes of a stroke: its samples, its converter's steps, its clock and what it leaves out. */
export function recordStroke(
  room: CableRoom,
  lived: LivedStroke,
  condition: Condition,
  tape: Tape,
  random: Random,
): StrokeRecord {
  const { logger, facts } = room;
  const fromS = logger.lateS > 0 ? logger.lateS : -logger.restBeforeS;
  const untilS = tape.steps * STEP_S + (logger.endsEarlyS > 0 ? -logger.endsEarlyS : logger.restAfterS);
  const count = Math.max(8, Math.floor((untilS - fromS) * lived.rateHz));
  const lean = logger.jitterPart > 0 ? drawLean(count, logger.jitterPart, random) : null;
  const timesS = Array.from({ length: count }, (_, k) => fromS + (k + (lean?.[k] ?? 0)) / lived.rateHz);
  const hole = random.chance(logger.dropChance) ? drawHole(count, lived.rateHz, random) : null;
  const phase = random.uniform(0, 2 * Math.PI);
  const sides = tape.amps.map((amps, at): SideRecord => {
    const { reading, ohm } = condition.sides[at];
    const rippleAmps = rippleOf(condition, room, room.sides[at].ohmAt20C * ohm, lived);
    const missed = reading.missedPart > 0 ? drawMissed(count, reading.missedPart, random) : null;
    const read = timesS.map((timeS, k) => {
      if (hole !== null && k >= hole.from && k < hole.to) return null;
      if (missed?.[k]) return null;
      const fed = meanAmps(amps, tape.steps, timeS, lived.averages ? 1 / lived.rateHz : 0);
      const ripple =
        fed > 0.05 ? rippleAmps * Math.sin(2 * Math.PI * room.supply.rippleHz * timeS + phase) : 0;
      return readAmps(room, reading, lived, fed + ripple, random);
    });
    const side = {
      side: facts.sides[at],
      ...clockOf(timesS, fromS, lived.rateHz * condition.clock, condition.clock, lean !== null),
    };
    if (logger.inMilliamps && !read.includes(null)) {
      return { ...side, milliamps: read.map((value) => Math.round((value as number) * 1000)) };
    }
    return { ...side, amps: read };
  });
  return {
    ...(logger.tellsDirection ? { direction: lived.direction } : {}),
    startedAt: new Date(lived.atMs + lived.clockMs).toISOString(),
    sides,
    ...supplyOf(room, condition, tape, fromS, untilS, random),
    ...(logger.thermometer === null
      ? {}
      : { ambientC: round(lived.ambientC + logger.thermometer.offsetC + random.normal(0, 0.3), 1) }),
  };
}

/** The ripple of a converter in the motor's current: the armature is too heavy to follow it, its coil takes a part. */
function rippleOf(
  { rippleVolts }: Condition,
  { supply }: CableRoom,
  ohm: number,
  { averages, rateHz }: LivedStroke,
): number {
  const coil = 1 / Math.hypot(1, 2 * Math.PI * supply.rippleHz * 0.0012);
  const turns = (Math.PI * supply.rippleHz) / rateHz;
  const kept = averages && turns > 0 ? Math.abs(Math.sin(turns) / turns) : 1;
  return ((rippleVolts * coil) / (2 * ohm)) * kept;
}

function meanAmps(amps: Float64Array, steps: number, timeS: number, overS: number): number {
  const last = Math.floor(timeS / STEP_S + 1e-9);
  const first = Math.min(last, Math.floor((timeS - overS) / STEP_S + 1e-9) + 1);
  let sum = 0;
  const from = overS > 0 ? first : last;
  for (let step = from; step <= last; step++) if (step >= 0 && step < steps) sum += amps[step];
  return sum / (last - from + 1);
}

function readAmps(
  { logger, facts }: CableRoom,
  reading: Reading,
  lived: LivedStroke,
  amps: number,
  random: Random,
): number {
  const sign = logger.signed && lived.direction !== facts.positiveDirection ? -1 : 1;
  const driven = reading.off ? 0 : sign * amps * reading.gain;
  const clipped = Math.max(-reading.clipAmps, Math.min(reading.clipAmps, driven));
  const noise = random.normal(0, reading.noiseAmps);
  // What a clamp cuts off has no noise on it.
  const analogue = (clipped === driven ? driven + noise : clipped) + reading.zeroAmps;
  const low = logger.signed ? -logger.rangeAmps : 0;
  const stepAmps = (logger.rangeAmps - low) / 2 ** logger.bits;
  const held = Math.max(low, Math.min(logger.rangeAmps - stepAmps, analogue));
  return round(Math.round(held / stepAmps) * stepAmps, 4);
}

function clockOf(timesS: readonly number[], fromS: number, rateHz: number, clock: number, jitters: boolean) {
  return jitters ? { t: timesS.map((timeS) => round((timeS - fromS) / clock, 4)) } : { rateHz };
}

/** Where each sample lies in its own interval; small enough to keep them in order. */
function drawLean(count: number, part: number, random: Random): number[] {
  return Array.from({ length: count }, (_, k) => (k === 0 ? 0 : random.uniform(-part, part)));
}

function drawHole(count: number, rateHz: number, random: Random): { from: number; to: number } {
  const from = random.integer(0, count - 1);
  return { from, to: from + Math.ceil(random.uniform(0.1, 0.8) * rateHz) };
}

/** Lost in blocks of eight, as packets are. */
function drawMissed(count: number, part: number, random: Random): boolean[] {
  const blocks = Array.from({ length: Math.ceil(count / 8) }, () => random.chance(part));
  return Array.from({ length: count }, (_, k) => blocks[k >> 3]);
}

function supplyOf(
  room: CableRoom,
  condition: Condition,
  tape: Tape,
  fromS: number,
  untilS: number,
  random: Random,
) {
  const { supply } = room.logger;
  if (supply === null) return {};
  const count = Math.max(2, Math.floor((untilS - fromS) * supply.rateHz));
  const volts = Array.from({ length: count }, (_, k) => {
    const step = Math.floor((fromS + k / supply.rateHz) / STEP_S);
    const fed = step >= 0 && step < tape.steps ? tape.volts[step] : condition.openVolts;
    return round(fed * supply.gain + random.normal(0, supply.noiseVolts), 2);
  });
  return { supply: { rateHz: supply.rateHz * condition.clock, volts } };
}

function round(value: number, digits: number): number {
  const power = 10 ** digits;
  return Math.round(value * power) / power;
}
