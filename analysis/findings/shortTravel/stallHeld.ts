import type { Residual } from '../../baseline/judge.ts';
import type { DoneAnalysis } from '../../measures.ts';
import { median } from '../../statistics/median.ts';
import type { DirectionTravel } from './travelMemory.ts';

/** Stalls that tell how long they are usually held. */
const LATEST = 9;
const FEWEST = 3;
/** One that was held for less than this part of the usual time was let go sooner. */
const SOONER = 0.9;

/** Remembers how long each side's stall was held; after everything else was told of the stroke. */
export function noteHeld({ held }: DirectionTravel, { sides }: DoneAnalysis): void {
  for (const side of Object.keys(sides)) {
    const seconds = heldS(sides[side]);
    if (seconds === null) continue;
    held[side] = [...(held[side] ?? []), seconds].slice(-LATEST);
  }
}

/**
 * Whether a stall that reads less than expected was let go sooner than this room's stalls are: the motor was still coming to
 * a stand, and what it would have drawn there is not known, only that it is no less. `endStop`: the reading against its
 * baseline; null while there is none.
 */
export function isLetGo(
  { held }: DirectionTravel,
  { sides }: DoneAnalysis,
  side: string,
  endStop: Residual | null,
): boolean {
  const seconds = heldS(sides[side]);
  const usual = held[side] ?? [];
  if (seconds === null || endStop === null || usual.length < FEWEST) return false;
  return endStop.fromReference < 0 && seconds < SOONER * median(usual);
}

/** A stall of fewer samples is as high as chance has it. */
const FEWEST_SAMPLES = 3;

/** Whether this side's stalls are too short for a record of so many samples a second to tell how high they are. */
export function areBrief({ held }: DirectionTravel, side: string, rateHz: number): boolean {
  const usual = held[side] ?? [];
  return usual.length >= FEWEST && median(usual) * rateHz < FEWEST_SAMPLES;
}

function heldS({ phases }: DoneAnalysis['sides'][string]): number | null {
  return phases.endStopStartS === null ? null : phases.endS - phases.endStopStartS;
}
