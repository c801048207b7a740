import type { StrokeRecord } from '../../../server/demo/simulator/strokeRecord.ts';
import type { StrokeCondition } from './condition.ts';
import type { Motion } from './motion.ts';
import type { Random } from './random.ts';
import type { RecorderRoom } from './room.ts';

/** What the logger sends of one motion: clamps with zero, scale and converter, a clock, and what it left out. */
export function recordStroke(
  room: RecorderRoom,
  condition: StrokeCondition,
  motion: Motion,
  startedAtMs: number,
  random: Random,
): StrokeRecord {
  const { facts, logger } = room;
  const { recording, direction, ambientC } = condition;
  const moments = samplingMoments(room, condition, motion, random);
  const sendsTimes = logger.tellsTimes;
  const told = sendsTimes
    ? rising(moments.map((moment) => milli((moment + recording.leadS) * recording.clock)))
    : null;
  const reversed = logger.signed && direction !== facts.positiveDirection ? -1 : 1;
  const sides = facts.sides
    .map((side, index) => {
      const amps = readClamp(room, condition, motion, moments, index, random).map((value) =>
        value === null ? null : milli(reversed * value),
      );
      return told === null
        ? { side, rateHz: recording.rateHz / recording.clock, amps }
        : { side, t: told, amps };
    })
    .filter((_, index) => !recording.leftOut[index]);
  const rounded = logger.roundsToMinutes ? Math.round(startedAtMs / 60_000) * 60_000 : startedAtMs;
  return {
    startedAt: new Date(rounded).toISOString(),
    ...(logger.tellsDirection ? { direction } : {}),
    sides,
    ...(logger.supplyRateHz === null
      ? {}
      : {
          supply: {
            rateHz: logger.supplyRateHz / recording.clock,
            volts: readVolts(room, condition, motion, logger.supplyRateHz, random),
          },
        }),
    ...(logger.recordsAmbient ? { ambientC: Math.round(10 * (ambientC + 0.4 * random.normal())) / 10 } : {}),
  } as StrokeRecord;
}

function samplingMoments(
  { logger }: RecorderRoom,
  { recording }: StrokeCondition,
  motion: Motion,
  random: Random,
): number[] {
  const interval = 1 / recording.rateHz;
  const lasts = motion.volts.length * motion.stepS + recording.tailS + recording.leadS;
  const count = Math.max(2, Math.floor(lasts / interval));
  const late = random.between(0, interval);
  return Array.from({ length: count }, (_, at) => {
    const shift = logger.jitter * Math.max(-3, Math.min(3, random.normal()));
    return -recording.leadS + late + (at + shift) * interval;
  });
}

function readClamp(
  { logger }: RecorderRoom,
  { recording, ambientC }: StrokeCondition,
  motion: Motion,
  moments: readonly number[],
  index: number,
  random: Random,
): (number | null)[] {
  const zero = recording.zeroAmps[index] + logger.zeroAmpsPerC * (ambientC - 20);
  const memory = Math.exp(-1 / (0.8 * recording.rateHz));
  const slowStep = logger.slowNoiseAmps * Math.sqrt(1 - memory * memory);
  const clip = recording.clipAmps[index];
  const width = logger.averages ? Math.max(1, Math.round(1 / (recording.rateHz * motion.stepS))) : 1;
  const shared = recording.gaps.every((gap) => gap === recording.gaps[0]);
  const lost = bursts(
    moments.length,
    recording.gaps[index],
    recording.rateHz,
    random.branch(shared ? 'lost' : `lost ${index}`),
  );
  let slow = logger.slowNoiseAmps * random.normal();
  return moments.map((moment, at) => {
    slow = memory * slow + slowStep * random.normal();
    const noise = slow + recording.noiseAmps[index] * random.normal();
    const isMissed = lost[at] || random.chance(recording.missed);
    const current = recording.clampOff[index] ? 0 : meanUpTo(motion, index, moment, width);
    const read = recording.scale[index] * current + zero + noise;
    const clipped = Math.max(-clip, Math.min(clip, read));
    return isMissed ? null : Math.round(clipped / logger.stepAmps) * logger.stepAmps;
  });
}

/** The current at a moment, or its mean over the steps that end there; amperes, 0 outside the motion. */
function meanUpTo({ amps, stepS }: Motion, index: number, moment: number, width: number): number {
  const list = amps[index];
  if (width > 1) {
    const last = Math.floor(moment / stepS);
    let sum = 0;
    for (let at = last - width + 1; at <= last; at++) sum += list[at] ?? 0;
    return sum / width;
  }
  const place = moment / stepS;
  const at = Math.floor(place);
  const before = list[at] ?? 0;
  return before + (place - at) * ((list[at + 1] ?? 0) - before);
}

function bursts(count: number, part: number, rateHz: number, random: Random): boolean[] {
  const lost = new Array<boolean>(count).fill(false);
  let open = Math.round(part * count);
  while (open > 0) {
    const length = Math.min(open, Math.max(1, Math.round(rateHz * random.between(0.2, 1.2))));
    const from = random.whole(0, Math.max(0, count - length));
    for (let at = from; at < from + length; at++) {
      if (!lost[at]) open--;
      lost[at] = true;
    }
  }
  return lost;
}

function readVolts(
  { logger }: RecorderRoom,
  { recording, openVolts }: StrokeCondition,
  motion: Motion,
  rateHz: number,
  random: Random,
): number[] {
  const lasts = motion.volts.length * motion.stepS + recording.tailS + recording.leadS;
  const count = Math.max(2, Math.floor(lasts * rateHz));
  const step = logger.supplyStepVolts;
  return Array.from({ length: count }, (_, at) => {
    const place = Math.floor((at / rateHz - recording.leadS) / motion.stepS);
    const volts = motion.volts[place] ?? openVolts;
    return milli(Math.round((volts + 0.02 * random.normal()) / step) * step);
  });
}

function rising(times: number[]): number[] {
  const first = times[0];
  for (let at = 0; at < times.length; at++) {
    const own = Math.max(0, times[at] - first);
    times[at] = at === 0 ? 0 : Math.max(own, milli(times[at - 1] + 0.001));
  }
  return times.map(milli);
}

function milli(value: number): number {
  return Math.round(1000 * value) / 1000;
}
