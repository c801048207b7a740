import type { Random } from '../../../server/demo/simulator/random.ts';
import type { SideRecord, StrokeRecord } from '../../../server/demo/simulator/strokeRecord.ts';
import type { PlainCondition } from './condition.ts';
import type { PlainRoom } from './room.ts';

/** How fast the current rises into the stall, seconds. */
const STALL_RISE_S = 0.06;
const LONGEST_S = 200;

interface Course {
  /** Amperes of each side at each sample, before any sensor. */
  readonly amps: readonly Float64Array[];
  readonly volts: Float64Array;
  readonly length: number;
}

/** One stroke written down directly: a level, a course over the travel, a start and a stall; no motor's equations. */
export function plainStroke(
  room: PlainRoom,
  condition: PlainCondition,
  startedAt: string,
  random: Random,
): StrokeRecord {
  const course = runCourse(room, condition, random);
  const sides = room.clamps.map((side): SideRecord => {
    const { scale, offsetAmps, noiseAmps, rangeAmps, missed, off } = condition.sensors[side];
    const noise = random.fork();
    const keeps = Math.exp(-1 / (condition.rateHz * room.colouredS));
    let coloured = 0;
    const sign = room.signed && condition.direction === 'retract' ? -1 : 1;
    const amps = Array.from({ length: course.length }, (_, i): number | null => {
      const truth = off ? 0 : course.amps[side][i];
      coloured = keeps * coloured + Math.sqrt(1 - keeps * keeps) * noise.normal(0, room.colouredAmps);
      const seen =
        sign * scale * (truth + (truth > 0 ? coloured : 0)) + offsetAmps + noise.normal(0, noiseAmps);
      const held = Math.min(rangeAmps, Math.max(-rangeAmps, seen));
      return noise.chance(missed)
        ? null
        : Math.round(Math.round(held / room.stepAmps) * room.stepAmps * 1e4) / 1e4;
    });
    return { side: room.facts.sides[side], rateHz: condition.rateHz * condition.rateError, amps };
  });
  return {
    direction: condition.direction,
    startedAt,
    sides,
    ...(room.supplyRateHz === null ? {} : { supply: supplyOf(course, condition, room.supplyRateHz, random) }),
    ...(room.sendsAmbient ? { ambientC: Math.round(10 * condition.ambientC) / 10 } : {}),
  };
}

function supplyOf(course: Course, condition: PlainCondition, rateHz: number, random: Random) {
  const every = condition.rateHz / rateHz;
  const volts = Array.from({ length: Math.max(2, Math.floor(course.length / every)) }, (_, i) => {
    const volt = course.volts[Math.min(course.length - 1, Math.floor(i * every))];
    return Math.round(100 * (volt + random.normal(0, 0.02))) / 100;
  });
  return { rateHz: rateHz * condition.rateError, volts };
}

/** Steps through the stroke sample by sample; each side runs by itself. */
function runCourse(room: PlainRoom, condition: PlainCondition, random: Random): Course {
  const { restS } = room;
  const stepS = 1 / condition.rateHz;
  const most = Math.ceil(LONGEST_S / stepS);
  const amps = room.sides.map(() => new Float64Array(most));
  const volts = new Float64Array(most).fill(condition.openVolts);
  const sides = room.sides.map(() => ({ position: condition.from, endedS: -1, offS: -1, startedS: 0 }));
  const heading = Math.sign(condition.to - condition.from);
  const pauses = [...condition.pauses];
  let restsUntilS = 0;
  // The switch is pressed anywhere between two samples.
  let timeS = random.uniform(0, stepS) - restS.before;
  let length = 0;
  for (; length < most; length++, timeS += stepS) {
    const lastOffS = Math.max(...sides.map((side) => side.offS));
    if (sides.every((side) => side.offS >= 0) && timeS >= lastOffS + restS.after) break;
    if (timeS < 0) continue;
    const [leader] = sides;
    if (pauses.length > 0 && heading * (leader.position - pauses[0].position) >= 0 && leader.offS < 0) {
      restsUntilS = timeS + (pauses.shift()?.durationS ?? 0);
      for (const side of sides) side.startedS = restsUntilS;
    }
    if (timeS < restsUntilS) continue;
    const before = length > 0 ? volts[length - 1] : condition.openVolts;
    let total = 0;
    for (const [index, side] of sides.entries()) {
      if (side.offS >= 0) continue;
      amps[index][length] = ampsNow(room, condition, index, side, timeS, before);
      total += amps[index][length];
      const slower = 1 + condition.laterS[index] / room.travelS[condition.direction];
      const load = condition.levels[index] * coldFactor(room, condition.ambientC);
      const speed = (before / 12.6) ** room.speedPower * (1 - room.slowing * (load - 1));
      side.position +=
        (heading * Math.max(0.2, speed) * stepS) / (room.travelS[condition.direction] * slower);
      if (side.endedS < 0 && heading * (side.position - condition.to) >= 0) side.endedS = timeS;
      const held = condition.stalls ? Math.max(room.stallS, 0.25) : 0;
      if (side.endedS >= 0 && timeS >= side.endedS + held) side.offS = timeS;
    }
    volts[length] = condition.openVolts - room.supplyOhms * total;
  }
  return { amps: amps.map((all) => all.subarray(0, length)), volts: volts.subarray(0, length), length };
}

function coldFactor(room: PlainRoom, ambientC: number): number {
  return Math.max(0.5, 1 - room.perDegree * (ambientC - 20));
}

function ampsNow(
  room: PlainRoom,
  condition: PlainCondition,
  index: number,
  side: { position: number; endedS: number; startedS: number },
  timeS: number,
  volts: number,
): number {
  const own = room.sides[index];
  const { direction, ambientC } = condition;
  const stallFactor = (volts / 12.6) * (1 - 0.0039 * (ambientC - 20));
  const turning = 1 + own.ripple * Math.sin((2 * Math.PI * side.position) / room.turn + own.ripplePhase);
  let running =
    own.amps[direction] *
    condition.levels[index] *
    coldFactor(room, ambientC) *
    (volts / 12.6) ** room.ampsPower *
    courseAt(own.course[direction], side.position) *
    turning;
  for (const shape of condition.shapes) running *= shape(index, side.position, timeS);
  const sinceS = timeS - side.startedS;
  const start = Math.max(0, own.inrushAmps * stallFactor - running) * Math.exp(-sinceS / own.inrushS);
  if (side.endedS < 0) return running + start;
  const into = 1 - Math.exp(-(timeS - side.endedS) / STALL_RISE_S);
  return running + (own.stallAmps * stallFactor - running) * into;
}

function courseAt(course: readonly number[], position: number): number {
  const place = Math.min(1, Math.max(0, position)) * (course.length - 1);
  const below = Math.min(course.length - 2, Math.floor(place));
  return course[below] + (place - below) * (course[below + 1] - course[below]);
}
