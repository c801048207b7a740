import type { FindingContext } from './finding.ts';

/** Less than this is what a part of the travel may draw more than the whole, natural logarithm: a guess, no source. */
const LEAST_BY_MAGNETS = 0.1;

/** What a motor draws more is at least this part of what it turns faster, friction and spread aside: a guess, no source. */
const ALIKE_PART = 0.8;

/**
 * Whether a stroke that came to its stop is quicker by `shortBy` (natural logarithm) for no other reason than that its motors
 * draw more by as much: magnets that lost some of their field make a motor turn faster and draw more in the same proportion
 * (its `Ke` and `Kt` are one constant in SI units), and nothing that stops a room early does.
 */
export function isByWeakMagnets(
  { state, analysis, residual }: Pick<FindingContext, 'state' | 'analysis' | 'residual'>,
  shortBy: number,
): boolean {
  return state.room.sides.every((side) => {
    const running = residual(side, 'runningAmps');
    const stopped = (analysis.sides[side]?.endStopAmps ?? null) !== null;
    // Cold, of which the copper tells, quickens nothing.
    const least = Math.max(LEAST_BY_MAGNETS, ALIKE_PART * shortBy);
    return stopped && running !== null && running.rise + running.byCopper > least;
  });
}
