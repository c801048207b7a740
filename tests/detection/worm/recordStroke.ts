import type { Random } from '../../../server/demo/simulator/random.ts';
import type { SideRecord, StrokeRecord } from '../../../server/demo/simulator/strokeRecord.ts';
import type { Condition } from './condition.ts';
import type { DrivenStroke } from './driveStroke.ts';
import type { LivedStroke } from './life.ts';
import type { Logger } from './logger.ts';
import { readSide } from './readSide.ts';
import type { WormRoom } from './room.ts';

/** What the room's logger sends of one stroke. */
export function recordStroke(
  room: WormRoom,
  lived: LivedStroke,
  condition: Condition,
  driven: DrivenStroke,
  random: Random,
): StrokeRecord {
  const { logger, facts } = room;
  const sides: SideRecord[] = [];
  room.sides.forEach(({ name }, at) => {
    if (at === lived.missingSide) return;
    const turned = logger.signed && lived.direction !== facts.positiveDirection;
    const amps = readSide(room, at, condition, driven, turned, random);
    sides.push({ side: name, ...written(logger, at, amps, random) });
  });
  return {
    ...(logger.givesDirection ? { direction: lived.direction } : {}),
    startedAt: new Date(lived.atMs).toISOString(),
    sides,
    ...(logger.supply === null
      ? {}
      : { supply: readSupply(logger.supply, logger, condition, driven, random) }),
    ...(logger.thermometer === null
      ? {}
      : { ambientC: stepped(condition.ambientC + logger.thermometer.zeroC, logger.thermometer.stepC) }),
  };
}

function written(
  { rateHz, writes, jitterS }: Logger,
  at: number,
  amps: readonly (number | null)[],
  random: Random,
): Omit<SideRecord, 'side'> {
  const rate = rateHz[at];
  if (writes === 'instants') {
    const t: number[] = [];
    const kept: number[] = [];
    amps.forEach((value, index) => {
      if (value === null) return;
      t.push(Number((index / rate + random.uniform(0, jitterS)).toFixed(5)));
      kept.push(value);
    });
    return { t, amps: kept };
  }
  if (writes === 'milliamps' && !amps.includes(null)) {
    return { rateHz: rate, milliamps: amps.map((value) => Math.round(1000 * (value ?? 0))) };
  }
  return { rateHz: rate, amps };
}

function readSupply(
  supply: NonNullable<Logger['supply']>,
  { leadInS, leadOutS }: Logger,
  { openVolts, clock }: Condition,
  { steps, stepS, volts }: DrivenStroke,
  random: Random,
): NonNullable<StrokeRecord['supply']> {
  const lengthS = (steps * stepS + leadInS + leadOutS) / clock;
  const count = Math.max(2, Math.floor(lengthS * supply.rateHz));
  const read = Array.from({ length: count }, (_, index) => {
    const step = Math.floor(((index / supply.rateHz) * clock - leadInS) / stepS);
    const real = step < 0 || step >= steps ? openVolts : volts[step];
    return stepped(real + supply.zeroVolts + random.normal(0, 0.015), supply.stepVolts);
  });
  return { rateHz: supply.rateHz, volts: read };
}

function stepped(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(4));
}
