import type { Direction, SideMeasures, Trace } from '../api/types.ts';
import type { NumberedMark } from '../charts/drawn/marks.ts';

/** One recorded line, ready to be drawn: seconds from the stroke's start, and values on the same index. */
export interface TraceLine {
  readonly name: string;
  readonly seconds: readonly number[];
  readonly values: readonly (number | null)[];
  /** The sender's sign was turned, because this motor ran the way that reads negative. */
  readonly flipped: boolean;
}

function secondsOf(recorded: { rateHz?: number; t?: number[] }, length: number): number[] {
  if (recorded.t !== undefined) return recorded.t;
  const { rateHz = 1 } = recorded;
  return Array.from({ length }, (_, i) => i / rateHz);
}

export function sideLines(trace: Trace): TraceLine[] {
  return trace.sides.map((side) => {
    const sum = side.amps.reduce<number>((total, amps) => total + (amps ?? 0), 0);
    const flipped = sum < 0;
    const values = flipped ? side.amps.map((amps) => (amps === null ? null : -amps)) : side.amps;
    return { name: side.side, seconds: secondsOf(side, side.amps.length), values, flipped };
  });
}

export function supplyLine(trace: Trace): TraceLine | null {
  if (trace.supply === undefined) return null;
  const { volts } = trace.supply;
  return { name: 'supply', seconds: secondsOf(trace.supply, volts.length), values: volts, flipped: false };
}

/** How far from its expected moment a mark is looked for, as a part of the stroke. */
const SEARCH_PART = 0.12;

/**
 * The moment of a mark, whose place is known by travel only: near where an even speed would put it, the sample
 * that is closest to its current. Null where that stretch holds no sample.
 */
export function markMoment(
  mark: NumberedMark,
  measures: SideMeasures,
  line: TraceLine,
  direction: Direction,
): { readonly seconds: number; readonly amps: number } | null {
  const { startS, endStopStartS, endS } = measures.phases;
  const runS = (endStopStartS ?? endS) - startS;
  const expectedS = startS + runS * (direction === 'extend' ? mark.position : 1 - mark.position);
  let best: { seconds: number; amps: number } | null = null;
  for (const [i, amps] of line.values.entries()) {
    const seconds = line.seconds[i];
    if (amps === null || Math.abs(seconds - expectedS) > runS * SEARCH_PART) continue;
    if (best === null || Math.abs(amps - mark.amps) < Math.abs(best.amps - mark.amps))
      best = { seconds, amps };
  }
  return best;
}
