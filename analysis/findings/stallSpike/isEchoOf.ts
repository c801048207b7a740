import type { Finding } from '../finding.ts';

/** A side that jumps by so much less than another, and where that does: a guess, no source. */
const ECHO_PART = 0.5;
const ECHO_PLACE = 0.04;

/**
 * Whether a side jumps only because another one does: the room hangs on both, and a controller that keeps them in step has the
 * one wait for the other.
 */
export function isEchoOf(each: Finding, other: Finding): boolean {
  if (other.side === each.side || other.pattern !== each.pattern || each.pattern === 'scattered')
    return false;
  const isThere = Math.abs((each.position ?? 0) - (other.position ?? 0)) < ECHO_PLACE;
  return isThere && heightOf(each) < ECHO_PART * heightOf(other);
}

const heightOf = ({ evidence }: Finding): number => evidence.heightPercent ?? 0;
