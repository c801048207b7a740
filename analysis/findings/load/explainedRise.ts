import type { Warning } from '../../warning.ts';
import type { FindingContext } from '../finding.ts';

/**
 * What a peak of so many parts of the running current may add to it by itself: once per turn of the gear it takes much of
 * the travel, elsewhere a little. A travel that ends early leaves out a part of the course. Guesses, no source.
 */
const BY_SWING = 0.8;
const BY_PEAKS = 0.3;
const MOST_BY_PEAKS = 0.12;
const BY_SHORT_TRAVEL = 0.12;
/** A side that comes late, or starts late, leaves the other to drag the room meanwhile. A guess, no source. */
const BY_LATE_SIDE = 0.4;

/** Whether a side that is late may have caused all of what is said of another's rise. */
export function lateSideExplains(open: Warning): boolean {
  return saidPercent(open) / 100 <= BY_LATE_SIDE;
}

/** By how many per cent a rise was said to stand above normal; NaN: of a side that stood still. */
export function saidPercent({ evidence }: Warning): number {
  return evidence.risePercent ?? Number.NaN;
}

/** How much of a rise the troubles that are open already explain, as a part of the running current. */
export function explainedRise({ state }: FindingContext, side: string): number {
  const explained = state.open.map((open) => {
    if (open.kind === 'short-travel') return BY_SHORT_TRAVEL;
    if (open.kind === 'late-side') return open.side === side ? 0 : BY_LATE_SIDE;
    if (open.kind !== 'stall-spike' || open.side !== side) return 0;
    const height = (open.evidence.heightPercent ?? 0) / 100;
    if (open.pattern === 'once-per-turn') return BY_SWING * height;
    return open.pattern === 'scattered' ? Math.min(MOST_BY_PEAKS, BY_PEAKS * height) : 0;
  });
  return Math.max(0, ...explained);
}
