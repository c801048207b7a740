import type { Residual } from '../../baseline/judge.ts';
import type { Doubt } from '../../measures.ts';
import type { FindingContext } from '../finding.ts';
import type { RestMemory } from './restMemory.ts';

/** So many strokes tell what a sensor reads at rest as a rule, and no more of them count. Guesses, no source. */
const FEWEST = 16;
const MOST = 64;
/**
 * A rest is another one from so many amperes on, from this part of the running current on, and where it is so many times what
 * it is as a rule: a clamp that is set to zero anew is off by some tenths of an ampere, now more and now less. Guesses, no source.
 */
const OFFSET = { amps: 0.6, part: 0.1, times: 4 };
const NOISE = { amps: 0.25, part: 0.02, times: 4 };
/** While it is said already, this part of that will do to go on. */
const STILL_PART = 0.6;
/** It moved by less than this part of what the rest did. A guess, no source. */
const AS_EVER = 0.5;

/**
 * What of a side's rest is no longer what it was: its level or its noise; null: neither, or the record holds none. Takes the rest
 * into the memory of what is usual. A level that is a current, as what a controller draws, is none that the sensor adds to
 * the running current.
 */
export function restChange(
  { state, analysis, residual }: Pick<FindingContext, 'state' | 'analysis' | 'residual'>,
  side: string,
): 'offset' | 'noise' | null {
  const { offsetAmps, noiseAmps, runningAmps } = analysis.sides[side] ?? { offsetAmps: null };
  const memory = state.rests[side];
  if (offsetAmps === null || memory === undefined) return null;
  const knows = memory.strokes >= FEWEST;
  const isOther = (
    doubt: Doubt,
    amps: number,
    usual: number,
    { amps: least, part, times }: typeof OFFSET,
  ) => {
    const isSaid = state.open.some((open) => open.side === side && open.evidence.doubt === doubt);
    const most = Math.max(least, part * runningAmps, times * Math.sqrt(usual));
    return knows && amps > (isSaid ? STILL_PART : 1) * most;
  };
  const isOff = isOther('offset', Math.abs(offsetAmps), memory.offset, OFFSET);
  const isNoisy = isOther('noise', noiseAmps, memory.noise, NOISE);
  if (isNoisy) return 'noise';
  if (isOff && isAsEver(residual(side, 'runningAmps'), runningAmps, offsetAmps)) return 'offset';
  learnRest(memory, offsetAmps, noiseAmps);
  return null;
}

/** Whether the running current less the rest moved by little of what the rest did: the sensor adds it to all that it reads. */
function isAsEver(running: Residual | null, runningAmps: number, offsetAmps: number): boolean {
  const moved =
    running === null ? Number.POSITIVE_INFINITY : Math.abs(Math.expm1(running.rise)) * runningAmps;
  return moved < AS_EVER * Math.abs(offsetAmps);
}

function learnRest(memory: RestMemory, offsetAmps: number, noiseAmps: number): void {
  memory.strokes = Math.min(MOST, memory.strokes + 1);
  memory.offset += (offsetAmps ** 2 - memory.offset) / memory.strokes;
  memory.noise += (noiseAmps ** 2 - memory.noise) / memory.strokes;
}
