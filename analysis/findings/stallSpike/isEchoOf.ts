import type { Finding } from '../finding.ts';

/**
 * Peaks no further apart than this part of the travel are at one place, also those of two sides or of both directions.
 */
export const ONE_PLACE = 0.04;
/**
 * A side that jumps by less than this part of another side's jump at the same place only follows it: a guess, no
 * source.
 */
const ECHO_PART = 0.5;
/**
 * A side that jumps only on strokes on which the other does follows it up to this part, until it has a warning of its
 * own: a stiff room passes most of a jolt on. Above this both are at fault alike (`room/bothSides.ts`). A guess, no
 * source.
 */
const STIFF_ECHO_PART = 0.8;

/** What is known of the two sides beside what is found of each. */
export interface Echoing {
  /**
   * Whether the side has a warning already: then the lower limit holds, so that it does not come and go about the
   * higher.
   */
  readonly isSaid: boolean;
  /** Whether the side jumps where the other does, stroke by stroke (`jumpTogether.ts`). */
  readonly together: boolean;
}

/**
 * Whether a side jumps only because another one does: the room hangs on both, and a controller that keeps them in step
 * makes the one wait for the other.
 */
export function isEchoOf(each: Finding, other: Finding, { isSaid, together }: Echoing): boolean {
  if (other.side === each.side || other.pattern !== each.pattern) return false;
  // Scattered peaks have no place to compare: they count as echoes only where they come together stroke by stroke.
  if (each.pattern === 'scattered' && !together) return false;
  if (Math.abs((each.position ?? 0) - (other.position ?? 0)) >= ONE_PLACE) return false;
  const part = together && !isSaid ? STIFF_ECHO_PART : ECHO_PART;
  return heightOf(each) < part * heightOf(other);
}

const heightOf = ({ evidence }: Finding): number => evidence.heightPercent ?? 0;
