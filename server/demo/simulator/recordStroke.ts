import type { StrokeCondition } from './condition.ts';
import type { DrivenStroke } from './driveRoom.ts';
import type { Random } from './random.ts';
import type { SideRecord, StrokeRecord } from './strokeRecord.ts';

const VOLT_STEP = 0.01;
const VOLT_NOISE = 0.012;
/** Commutation and brush noise, in parts of the current; far above any sampling rate here, so white to the logger. */
const BRUSH_NOISE = 0.012;

/** The truth of one side at the very samples that the logger took. */
export interface SideSamples {
  /** Seconds from `startedAt` on the logger's own clock. */
  readonly timesS: Float64Array;
  readonly positions: Float64Array;
  readonly trueAmps: Float64Array;
}

interface RecordedStroke {
  readonly stroke: StrokeRecord;
  /** By side index of the room, also for sides that the logger did not record. */
  readonly samples: readonly SideSamples[];
}

function at(series: Float64Array, stepS: number, timeS: number): number {
  const place = timeS / stepS;
  if (place <= 0) return series[0];
  if (place >= series.length - 1) return series[series.length - 1];
  const below = place | 0;
  return series[below] + (series[below + 1] - series[below]) * (place - below);
}

function rounded(value: number, step: number): number {
  // The second rounding only takes the dust of binary fractions off.
  return Math.round(Math.round(value / step) * step * 1e4) / 1e4;
}

/** Where the logger's clock slips, in parts of the record. */
const SLIP_AT = 0.45;
const SLIP_TICK_S = 0.001;

/** The time that a slipping clock shows: it stands still for a positive slip and jumps ahead for a negative one. */
function slipped(clockS: number, slipAtS: number, slipS: number): number {
  return slipS === 0 || clockS < slipAtS ? clockS : Math.max(slipAtS + SLIP_TICK_S, clockS - slipS);
}

/** What the logger makes of a stroke: sampled, offset, noisy, quantised, clipped, with missed samples. */
export function recordStroke(
  driven: DrivenStroke,
  sideNames: readonly string[],
  positive: boolean,
  condition: StrokeCondition,
  random: Random,
): RecordedStroke {
  const { logger } = condition;
  const lengthS = logger.idleBeforeS + (driven.steps - 1) * driven.stepS + logger.idleAfterS;
  const trueRateHz = logger.rateHz / logger.rateError;
  const sampleCount = Math.max(Math.floor(lengthS * trueRateHz), 2);
  const sign = logger.signed && !positive ? -1 : 1;
  const startOfSampling = random.uniform(0, 1 / trueRateHz);

  const samples: SideSamples[] = [];
  const sides: SideRecord[] = [];
  for (const [index, side] of sideNames.entries()) {
    const sensor = condition.sensors[index];
    const noise = random.fork();
    const timesS = new Float64Array(sampleCount);
    const positions = new Float64Array(sampleCount);
    const trueAmps = new Float64Array(sampleCount);
    const read: (number | null)[] = new Array(sampleCount);
    let gaps = false;
    for (let sample = 0; sample < sampleCount; sample++) {
      const strokeS = startOfSampling + sample / trueRateHz - logger.idleBeforeS;
      timesS[sample] = slipped(sample / logger.rateHz, SLIP_AT * lengthS, logger.clockSlipS);
      positions[sample] = at(driven.positions[index], driven.stepS, strokeS);
      const amps = strokeS < 0 ? 0 : at(driven.amps[index], driven.stepS, strokeS);
      trueAmps[sample] = amps;
      const part = sample / sampleCount;
      const offset = sensor.offsetAmps + sensor.offsetDriftAmps * part;
      const brush = amps > 0 ? amps * noise.normal(0, BRUSH_NOISE) : 0;
      const seen = sensor.off ? 0 : sign * sensor.scale * (amps + brush);
      const value = seen + offset + noise.normal(0, sensor.noiseAmps);
      const held = Math.min(Math.max(value, -sensor.rangeAmps), sensor.rangeAmps);
      const missed =
        (sensor.missed > 0 && noise.chance(sensor.missed)) ||
        (sensor.gap !== null && part >= sensor.gap.from && part < sensor.gap.to);
      read[sample] = missed ? null : rounded(held, sensor.stepAmps);
      if (missed) gaps = true;
    }
    samples.push({ timesS, positions, trueAmps });
    if (logger.sides.includes(index)) sides.push(sideRecord(side, condition, timesS, read, gaps));
  }

  const volts: number[] = [];
  if (logger.supplyRateHz !== null) {
    const voltRateHz = logger.supplyRateHz / logger.rateError;
    const count = Math.max(Math.floor(lengthS * voltRateHz), 2);
    for (let sample = 0; sample < count; sample++) {
      const value = at(
        driven.volts,
        driven.stepS,
        startOfSampling + sample / voltRateHz - logger.idleBeforeS,
      );
      volts.push(rounded(value + random.normal(0, VOLT_NOISE), VOLT_STEP));
    }
  }
  return {
    samples,
    stroke: {
      ...(logger.sendsDirection || !logger.signed ? { direction: condition.direction } : {}),
      startedAt: condition.startedAt,
      sides,
      ...(logger.supplyRateHz === null ? {} : { supply: { rateHz: logger.supplyRateHz, volts } }),
      ...(logger.sendsAmbient ? { ambientC: Math.round(condition.ambientC * 2) / 2 } : {}),
    },
  };
}

/** A slipping clock can only be sent with its times; so are gaps by loggers that send times. */
function sideRecord(
  side: string,
  condition: StrokeCondition,
  timesS: Float64Array,
  read: readonly (number | null)[],
  gaps: boolean,
): SideRecord {
  const { form, unit, rateHz, clockSlipS } = condition.logger;
  if (form === 'times' || clockSlipS !== 0) {
    const t: number[] = [];
    const amps: number[] = [];
    for (const [sample, value] of read.entries()) {
      const timeS = Math.round(timesS[sample] * 1e4) / 1e4;
      // Where the clock stood still several samples bear one time: a logger keeps the first.
      if (value === null || (t.length > 0 && timeS <= t[t.length - 1])) continue;
      t.push(timeS);
      amps.push(value);
    }
    return { side, t, amps };
  }
  if (unit === 'milliamps' && !gaps) {
    return { side, rateHz, milliamps: read.map((value) => Math.round((value ?? 0) * 1000)) };
  }
  return { side, rateHz, amps: read };
}
