import type { Residual } from '../../baseline/judge.ts';
import type { Doubt } from '../../measures.ts';
import { type FindingContext, isDoubted } from '../finding.ts';
import { isAsEver } from './asEver.ts';
import type { UsualSquare } from './restMemory.ts';

/** So many strokes tell what a sensor reads as a rule, and no more of them count. Guesses, no source. */
const FEWEST = 16;
const MOST = 64;
/** From so many amperes on, from this part of the running current on, and from so many times what is usual on. */
interface Least {
  readonly amps: number;
  readonly part: number;
  readonly times: number;
}

/**
 * A clamp that is set to zero anew is off by some tenths of an ampere, now more and now less, and what a start magnetises in its
 * core by a few hundredths of the running current. Guesses, no source.
 */
const OFFSET: Least = { amps: 0.6, part: 0.05, times: 4 };
/** Where no rest was read a motor's own ripple looks like noise, and more is wanted. Guesses, no source. */
const NOISE: Least = { amps: 0.25, part: 0.02, times: 4 };
const NOISE_RUNNING: Least = { amps: 0.5, part: 0.04, times: 4 };
/** While it is said already, this part of that will do to go on. */
const STILL_PART = 0.6;

/**
 * What a side's sensor by itself no longer reads as it did: its level at rest or its noise; null: neither. Takes the stroke
 * into the memory of what is usual. A level that is a current, as what a controller draws, is none that the sensor adds to
 * the running current.
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

/** Whether the running current less the rest moved by little of what the rest did: the sensor adds it to all that it reads. */
function runsAsEver(running: Residual | null, runningAmps: number, offsetAmps: number): boolean {
  if (running === null) return false;
  return isAsEver(Math.abs(Math.expm1(running.rise)) * runningAmps, Math.abs(offsetAmps));
}

function learn(usual: UsualSquare, amps: number): void {
  usual.strokes = Math.min(MOST, usual.strokes + 1);
  usual.square += (amps ** 2 - usual.square) / usual.strokes;
}
