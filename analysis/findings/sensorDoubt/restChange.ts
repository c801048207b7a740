import type { Residual } from '../../baseline/judge.ts';
import type { Doubt } from '../../measures.ts';
import { type FindingContext, isDoubted } from '../finding.ts';
import { isAsEver } from './asEver.ts';
import type { UsualSquare } from './restMemory.ts';

/**
 * From the first number of strokes on the usual reading is known; it is a mean over at most the second. Guesses, no
 * source.
 */
const FEWEST = 16;
const MOST = 64;
/**
 * The least that counts as changed: the largest of amperes, a part of the running current, and a multiple of what is
 * usual.
 */
interface Least {
  readonly amps: number;
  readonly part: number;
  readonly times: number;
}

/**
 * A clamp that is set to zero anew is off by some tenths of an ampere, now more and now less, and what a start leaves
 * magnetised in its core by a few hundredths of the running current. Less than that is no change. Guesses, no source.
 */
const OFFSET: Least = { amps: 0.6, part: 0.05, times: 4 };
/**
 * For noise at rest; and for noise while running, where the motor's own ripple looks like noise and the limits are
 * higher. Guesses, no source.
 */
const NOISE: Least = { amps: 0.25, part: 0.02, times: 4 };
const NOISE_RUNNING: Least = { amps: 0.5, part: 0.04, times: 4 };
/** While a warning is open, this part of the limits is enough for it to go on. */
const STILL_PART = 0.6;

/**
 * Which reading of a side's sensor at rest has changed: its level or its noise; null: neither. Takes the stroke into
 * the memory of what is usual. A level that is a real current, such as a controller draws, does not count: the sensor
 * does not add it to the running current.
 */
export function restChange(
  { state, analysis, residual }: Pick<FindingContext, 'state' | 'analysis' | 'residual'>,
  side: string,
): 'offset' | 'noise' | null {
  const measured = analysis.sides[side];
  const memory = state.rests[side];
  if (measured === undefined || memory === undefined) return null;
  const { offsetAmps, noiseAmps, runningAmps } = measured;
  const isOther = (doubt: Doubt, amps: number, usual: UsualSquare, { amps: least, part, times }: Least) => {
    const most = Math.max(least, part * runningAmps, times * Math.sqrt(usual.square));
    return usual.strokes >= FEWEST && amps > (isDoubted(state, side, doubt) ? STILL_PART : 1) * most;
  };
  const [usualNoise, leastNoise] =
    offsetAmps === null ? [memory.noiseRunning, NOISE_RUNNING] : [memory.noise, NOISE];
  if (isOther('noise', noiseAmps, usualNoise, leastNoise)) return 'noise';
  const isOff = offsetAmps !== null && isOther('offset', Math.abs(offsetAmps), memory.offset, OFFSET);
  if (isOff && runsAsEver(residual(side, 'runningAmps'), runningAmps, offsetAmps)) return 'offset';
  learn(usualNoise, noiseAmps);
  if (offsetAmps !== null) learn(memory.offset, offsetAmps);
  return null;
}

/**
 * Whether the running current less the rest hardly moved compared with the rest: then the sensor adds the rest to every
 * reading.
 */
function runsAsEver(running: Residual | null, runningAmps: number, offsetAmps: number): boolean {
  if (running === null) return false;
  return isAsEver(Math.abs(Math.expm1(running.rise)) * runningAmps, Math.abs(offsetAmps));
}

function learn(usual: UsualSquare, amps: number): void {
  usual.strokes = Math.min(MOST, usual.strokes + 1);
  usual.square += (amps ** 2 - usual.square) / usual.strokes;
}
