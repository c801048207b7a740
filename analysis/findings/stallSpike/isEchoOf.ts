import type { Finding } from '../finding.ts';

/** Peaks that are so near each other, parts of the travel, are at one place, be they of two sides or of both ways. */
export const ONE_PLACE = 0.04;
/** A side that jumps by so much less than another where that does only follows it: a guess, no source. */
const ECHO_PART = 0.5;

/**
 * Whether a side jumps only because another one does: the room hangs on both, and a controller that keeps them in step has the
 * one wait for the other.
 */
export function isEchoOf(each: Finding, other: Finding): boolean {
  if (other.side === each.side || other.pattern !== each.pattern || each.pattern === 'scattered')
    return false;
  const isThere = Math.abs((each.position ?? 0) - (other.position ?? 0)) < ONE_PLACE;
  return isThere && heightOf(each) < ECHO_PART * heightOf(other);
}

const heightOf = ({ evidence }: Finding): number => evidence.heightPercent ?? 0;
