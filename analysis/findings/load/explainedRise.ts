import type { Warning } from '../../warning.ts';
import type { FindingContext } from '../finding.ts';

/**
 * How much of a peak's height may show in the running current: much where it comes once per turn of the gear, which
 * takes up much of the travel, and little, up to a limit, where peaks are scattered. A travel that ends early leaves
 * out a part of the course, which may change the running current by the last of these. Parts of the running current.
 * Guesses, no source.
 */
const BY_SWING = 0.8;
const BY_PEAKS = 0.3;
const MOST_BY_PEAKS = 0.12;
const BY_SHORT_TRAVEL = 0.12;
/**
 * How much a side may draw more because the other comes or starts late and leaves it to drag the room. A guess, no
 * source.
 */
const BY_LATE_SIDE = 0.4;

/** Whether a late side may have caused all of the rise that an open warning tells of another. */
export function lateSideExplains(open: Warning): boolean {
  return saidPercent(open) / 100 <= BY_LATE_SIDE;
}

/** By how many per cent above normal a warning says that the current is; NaN for one of a side that stood still. */
export function saidPercent({ evidence }: Warning): number {
  return evidence.risePercent ?? Number.NaN;
}

/** The part of a rise that open warnings explain, as a part of the running current; 0: none. */
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
