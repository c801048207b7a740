import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Condition } from './condition.ts';
import type { DrivenStroke } from './driveStroke.ts';
import type { WormRoom } from './room.ts';

/** One missed stretch takes up to so many samples. */
const LONGEST_MISS_S = 0.25;

/** What a side's clamp and its converter make of the current; null: missed. */
export function readSide(
  { logger }: WormRoom,
  at: number,
  { sides, clock }: Condition,
  { amps, steps, stepS }: DrivenStroke,
  turned: boolean,
  random: Random,
): (number | null)[] {
  const { reading } = sides[at];
  const rate = logger.rateHz[at];
  const periodS = clock / rate;
  const lengthS = steps * stepS + logger.leadInS + logger.leadOutS;
  const count = Math.max(2, Math.floor(lengthS / periodS));
  const gain = logger.gains[at] * reading.gain;
  const ripple = logger.ripple * (logger.averages ? Math.min(1, Math.sqrt(rate / 300)) : 1);
  const noise = Math.hypot(logger.noiseAmps, reading.addedNoiseAmps);
  const step = (2 * logger.fullScaleAmps) / 2 ** logger.bits;
  const ceiling = Math.min(logger.fullScaleAmps, reading.clipAmps);
  const longest = Math.max(1, Math.round(LONGEST_MISS_S * rate));
  const missing = logger.missedShare + reading.missedShare;
  // A stretch takes (1 + longest) / 2 samples on the average.
  const missChance = missing / (1 - missing) / ((1 + longest) / 2);
  const real = (fromS: number): number => {
    const index = Math.floor(fromS / stepS);
    return index < 0 || index >= steps ? 0 : amps[at][index];
  };
  const read: (number | null)[] = [];
  let missed = 0;
  for (let sample = 0; sample < count; sample++) {
    const endS = (sample + 1) * periodS - logger.leadInS;
    let current = 0;
    if (!reading.off) {
      if (logger.averages) {
        const parts = Math.max(1, Math.round(periodS / stepS));
        for (let part = 0; part < parts; part++)
          current += real(endS - ((part + 0.5) / parts) * periodS) / parts;
      } else current = real(endS - periodS / 2);
    }
    const seen =
      (turned ? -current : current) * gain +
      reading.zeroAmps +
      random.normal(0, Math.hypot(noise, ripple * current * gain));
    const cut = Math.max(-ceiling, Math.min(ceiling, seen));
    const counted = Math.round(cut / step) * step;
    if (missed === 0 && missing > 0 && random.chance(missChance)) missed = random.integer(1, longest);
    if (missed > 0) {
      missed--;
      read.push(null);
    } else read.push(Number((logger.signed ? counted : Math.abs(counted)).toFixed(3)));
  }
  return read;
}
