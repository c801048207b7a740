import type { Finding } from '../finding.ts';

/** Peaks that are so near each other, parts of the travel, are at one place, be they of two sides or of both ways. */
export const ONE_PLACE = 0.04;
/** A side that jumps by so much less than another where that does only follows it: a guess, no source. */
const ECHO_PART = 0.5;
/**
 * One that jumps only when the other does follows it up to here as well, until it is said: a stiff room hands most of a jolt
 * on. From here on both are at fault alike (`room/bothSides.ts`). A guess, no source.
 */
const STIFF_ECHO_PART = 0.8;

/** What is known of the two sides beside what is found of each. */
export interface Echoing {
  /** Whether the side is told of already: what lies about a limit does not come and go with it. */
  readonly isSaid: boolean;
  /** Whether the side jumps where the other does, stroke by stroke (`jumpTogether.ts`). */
  readonly together: boolean;
}

/**
 * Whether a side jumps only because another one does: the room hangs on both, and a controller that keeps them in step has the
 * one wait for the other.
 */
export function isEchoOf(each: Finding, other: Finding, { isSaid, together }: Echoing): boolean {
  if (other.side === each.side || other.pattern !== each.pattern) return false;
  // Peaks here and there are at one place only where every stroke has them so.
  if (each.pattern === 'scattered' && !together) return false;
  if (Math.abs((each.position ?? 0) - (other.position ?? 0)) >= ONE_PLACE) return false;
  const part = together && !isSaid ? STIFF_ECHO_PART : ECHO_PART;
  return heightOf(each) < part * heightOf(other);
}

const heightOf = ({ evidence }: Finding): number => evidence.heightPercent ?? 0;
