import type { DoneAnalysis } from '../../measures.ts';
import type { Dropped } from '../droppedLoad/dropped.ts';
import { type FindingContext, openOf } from '../finding.ts';

/** So near the edge of a stretch without load, as a part of the travel, a peak is the jolt of it. */
export const JOLT = 0.05;

/** A side that ends no later than this part of its time after the first is not alone. */
const LATE_PART = 0.03;

/**
 * The part of its way that a side had gone when the first of the others came to its end: from there it bears the whole room,
 * and its current jumps because of that. Beyond the end of its way where no side ended before it.
 */
export function togetherUntil({ sides }: DoneAnalysis, side: string): number {
  const others = Object.keys(sides).filter((name) => name !== side);
  const parts = others.map((name) => sides[name].durationS / sides[side].durationS);
  const first = Math.min(...parts);
  return first < 1 - LATE_PART ? first : 1 + JOLT;
}

/** The stretches over which sides are said to have no load, whether or not this stroke shows it. */
export function saidLost({ state }: FindingContext): Dropped[] {
  return openOf(state, 'dropped-load').flatMap(({ side, position, evidence: { from, to } }) =>
    side === null || position === null || from === undefined || to === undefined ? [] : [{ side, from, to }],
  );
}

/** Of a side that idles over more of its way than this nothing is a peak: it runs in jolts beside a current near none. A guess, no source. */
const MOST_OF_WAY = 0.5;

/** Whether a side has no load over most of its way, on this stroke or by what is said. */
export function idlesMostly({ state }: FindingContext, side: string, dropped: readonly Dropped[]): boolean {
  const said = openOf(state, 'dropped-load').filter((open) => open.side === side);
  const stretches = [
    ...dropped.filter((each) => each.side === side),
    ...said.map(({ evidence }) => evidence),
  ];
  return stretches.some(({ from, to }) => (to ?? 0) - (from ?? 0) > MOST_OF_WAY);
}

/** A stretch without load jolts its own side at its edges, and the other all along it. */
export function explainsJolt({ side, from, to }: Dropped, jolted: string, position: number): boolean {
  if (side !== jolted) return position > from - JOLT && position < to + JOLT;
  return [from, to].some((edge) => Math.abs(position - edge) < JOLT);
}
