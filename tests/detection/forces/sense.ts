import type { Random } from '../../../server/demo/simulator/random.ts';
import type { ForcesSensing } from './condition.ts';

/** Corner times of the recursions whose sum falls about as 1/f. */
const PINK_S = [0.05, 0.5, 5];

/** What the logger writes down of a true current: noise of three kinds, zero, gain, and a converter's steps. */
export function sense(
  truth: Float64Array,
  sensing: ForcesSensing,
  sign: 1 | -1,
  rateHz: number,
  random: Random,
): (number | null)[] {
  const stepAmps = (2 * sensing.rangeAmps) / 2 ** sensing.bits;
  const pink = PINK_S.map(() => random.normal(0, 1));
  const keeps = PINK_S.map((s) => Math.exp(-1 / (rateHz * s)));
  const humPhase = random.uniform(0, 2 * Math.PI);
  const zero = sensing.zeroAmps + sign * sensing.remanenceAmps;
  return Array.from(truth, (amps, i) => {
    for (const [k, keep] of keeps.entries()) {
      pink[k] = keep * pink[k] + Math.sqrt(1 - keep * keep) * random.normal(0, 1);
    }
    const coloured = (sensing.pinkAmps * (pink[0] + pink[1] + pink[2])) / Math.sqrt(3);
    const hum = sensing.hum.amps * Math.sin((2 * Math.PI * sensing.hum.hertz * i) / rateHz + humPhase);
    const seen =
      (sensing.off ? 0 : sign * sensing.gain * amps) +
      zero +
      coloured +
      hum +
      random.normal(0, sensing.whiteAmps);
    const held = Math.min(sensing.rangeAmps - stepAmps, Math.max(-sensing.rangeAmps, seen));
    if (random.chance(sensing.missed)) return null;
    return Math.round(Math.round(held / stepAmps) * stepAmps * 1e4) / 1e4;
  });
}
