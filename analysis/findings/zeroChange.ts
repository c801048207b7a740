import { fromScale } from '../baseline/scale.ts';
import { median } from '../statistics/median.ts';
import type { Direction } from '../trace.ts';
import type { FindingContext } from './finding.ts';

/** Amperes that one side read over what was expected on its latest strokes without any rest, by direction. */
export type ZeroMemory = Record<Direction, number[]>;

export function beginZeroMemory(): ZeroMemory {
  return { extend: [], retract: [] };
}

const LATEST = 2;
const FEWEST = 3;
/** As much as an offset that is seen at rest must be to be said (`stroke/doubts.ts`). */
const LEAST_AMPS = 0.9;
const LEAST_PART = 0.15;
/** Both ways by the same amount, within this part of it. */
const ALIKE = 0.4;

/**
 * By how many amperes a side's zero seems to have moved, where its records hold no rest to tell it by; null: it did
 * not. A reversed current reads with the other sign, so that a moved zero adds in one direction what it takes off in
 * the other; friction raises both.
 */
export function zeroChange(context: FindingContext, side: string): number | null {
  const { state, analysis, direction } = context;
  const memory = state.zero[side];
  const judged = context.residual(side, 'runningAmps');
  if (memory === undefined || judged === null) return null;
  const measured = analysis.sides[side];
  if (measured.offsetAmps !== null) {
    Object.assign(memory, beginZeroMemory());
    return null;
  }
  const expected = fromScale('runningAmps', Math.log(measured.runningAmps) - judged.rise);
  memory[direction].push(measured.runningAmps - expected);
  if (memory[direction].length > LATEST) memory[direction].shift();
  const { extend, retract } = memory;
  if (extend.length === 0 || retract.length === 0 || extend.length + retract.length < FEWEST) return null;
  const [out, back] = [median(extend), median(retract)];
  const size = (Math.abs(out) + Math.abs(back)) / 2;
  const opposite = out * back < 0 && Math.abs(out + back) < ALIKE * size;
  return opposite && size > Math.max(LEAST_AMPS, LEAST_PART * expected) ? (out - back) / 2 : null;
}
