import type { Random } from '../../../server/demo/simulator/random.ts';
import type { ClampLogger } from './logger.ts';
import type { ClampState } from './strokeState.ts';
import { STEP_S, type Tape } from './tape.ts';

// Kept here for speed: an import is looked up anew in each step.
const STEP = STEP_S;

interface Reading {
  readonly rateHz: number;
  /** -1 where the room's direction reads negative. */
  readonly sign: number;
  readonly offsetAmps: number;
  readonly random: Random;
}

/** Samples one side's current as its clamp and converter show it; null: a missed sample. */
export function readClamp(
  logger: ClampLogger,
  clamp: ClampState,
  tape: Tape,
  side: number,
  { rateHz, sign, offsetAmps, random }: Reading,
): (number | null)[] {
  const source = logger.onMotorLead ? tape.motorAmps[side] : tape.feedAmps[side];
  const seconds = logger.leadS + tape.steps * STEP + logger.tailS;
  const count = Math.max(2, Math.floor(seconds * rateHz));
  const stepAmps = (2 * logger.rangeAmps) / 2 ** logger.bits;
  const most = Math.min(logger.rangeAmps, clamp.clipAmps);
  const zero = offsetAmps + clamp.offsetAmps + sign * logger.hysteresisAmps;
  const deviation = Math.hypot(logger.noiseAmps, clamp.noiseAmps);
  const missedPart = logger.missedPart + clamp.missedPart;
  const samples = new Array<number | null>(count);
  for (let index = 0; index < count; index++) {
    const part = index / count;
    const isGap = clamp.gaps.some(([from, to]) => part >= from && part < to);
    const isMissed = isGap || (missedPart > 0 && random.chance(missedPart));
    const at = index / rateHz - logger.leadS;
    const amps = clamp.isOff ? 0 : currentAt(source, tape.steps, at, logger.averages ? 1 / rateHz : 0);
    const ripple = logger.averages ? 0 : amps * random.uniform(-logger.ripplePart, logger.ripplePart) * 1.4;
    const shown =
      clamp.gain * sign * (amps + ripple) + zero + (deviation > 0 ? random.normal(0, deviation) : 0);
    const converted = Math.round(Math.max(-most, Math.min(most, shown)) / stepAmps) * stepAmps;
    samples[index] = isMissed ? null : Math.round(converted * 1000) / 1000;
  }
  return samples;
}

/** The current at a time, or its mean over the time before it. */
function currentAt(source: Float64Array, steps: number, seconds: number, overS: number): number {
  const last = Math.floor(seconds / STEP);
  if (last < 0) return 0;
  const first = Math.min(last, Math.max(0, Math.floor((seconds - overS) / STEP) + 1));
  if (first >= steps) return 0;
  let sum = 0;
  for (let step = first; step <= last; step++) if (step < steps) sum += source[step];
  return sum / (last - first + 1);
}
