import type { Random } from '../../../server/demo/simulator/random.ts';
import type { SideRecord, StrokeRecord } from '../../../server/demo/simulator/strokeRecord.ts';
import type { ForcesCondition } from './condition.ts';
import type { ForcesRoom } from './room.ts';
import { type Run, runForces } from './run.ts';
import { sense } from './sense.ts';

/** One stroke as its logger sends it. */
export function forcesStroke(
  room: ForcesRoom,
  condition: ForcesCondition,
  startedAt: string,
  random: Random,
): StrokeRecord {
  const run = runForces(room, condition, random.fork());
  const clock = clockOf(room, condition, run.length, random.fork());
  const seen = room.recorded.filter((side) => !condition.leftOut.includes(side));
  const sign = room.signed && condition.direction === 'retract' ? -1 : 1;
  const sides = seen.map((side): SideRecord => {
    const amps = sense(run.amps[side], condition.sensing[side], sign, condition.rateHz, random.fork());
    return { side: room.facts.sides[side], ...clock, amps };
  });
  return {
    direction: condition.direction,
    startedAt,
    sides,
    ...supplyOf(room, condition, run, random.fork()),
    ...(condition.toldC === null ? {} : { ambientC: Math.round(2 * condition.toldC) / 2 }),
  };
}

/** A rate, or times that jitter about it. */
function clockOf(
  room: ForcesRoom,
  condition: ForcesCondition,
  length: number,
  random: Random,
): Pick<SideRecord, 'rateHz' | 't'> {
  const toldHz = condition.rateHz * condition.rateError;
  if (room.timed === 'rate') return { rateHz: toldHz };
  const jitter = random.uniform(0, 0.1);
  const t = Array.from({ length }, (_, i) => {
    return Math.round((i + (i === 0 ? 0 : random.uniform(-jitter, jitter))) * (1e5 / toldHz)) / 1e5;
  });
  return { t };
}

function supplyOf(
  { supply }: ForcesRoom,
  condition: ForcesCondition,
  run: Run,
  random: Random,
): Pick<StrokeRecord, 'supply'> {
  if (supply === null) return {};
  const every = condition.rateHz / supply.rateHz;
  const volts = Array.from({ length: Math.max(2, Math.floor(run.length / every)) }, (_, i) => {
    const volt = run.volts[Math.min(run.length - 1, Math.floor(i * every))] + random.normal(0, 0.02);
    return Math.round((Math.round(volt / supply.stepVolts) * supply.stepVolts + Number.EPSILON) * 1e3) / 1e3;
  });
  return { supply: { rateHz: supply.rateHz * condition.rateError, volts } };
}
