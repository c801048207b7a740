import type { DoneAnalysis } from '../../measures.ts';
import type { Dropped } from '../droppedLoad/dropped.ts';
import { type FindingContext, openOf } from '../finding.ts';

/** A peak within this part of the travel from the edge of a stretch without load is the jolt of that. */
export const JOLT = 0.05;

/** A side that ends within this part of its time after the first other side did not run alone. */
const LATE_PART = 0.03;

/**
 * The part of its way, 0 to 1, that a side had gone when the first of the other sides came to its end. From there on it
 * bears the whole room, which makes its current jump. More than 1 where no side ended before it.
 */
export function togetherUntil({ sides }: DoneAnalysis, side: string): number {
  const others = Object.keys(sides).filter((name) => name !== side);
  const parts = others.map((name) => sides[name].durationS / sides[side].durationS);
  const first = Math.min(...parts);
  return first < 1 - LATE_PART ? first : 1 + JOLT;
}

/** The stretches without load that open warnings name, whether or not this stroke shows them. */
export function saidLost({ state }: FindingContext): Dropped[] {
  return openOf(state, 'dropped-load').flatMap(({ side, position, evidence: { from, to } }) =>
    side === null || position === null || from === undefined || to === undefined ? [] : [{ side, from, to }],
  );
}

/**
 * A side that idles over more than this part of its way shows no peaks that count: its current is almost none, with
 * jolts. A guess, no source.
 */
const MOST_OF_WAY = 0.5;

/** Whether a side has no load over most of its way, on this stroke or by an open warning. */
export function idlesMostly({ state }: FindingContext, side: string, dropped: readonly Dropped[]): boolean {
  const said = openOf(state, 'dropped-load').filter((open) => open.side === side);
  const stretches = [
    ...dropped.filter((each) => each.side === side),
    ...said.map(({ evidence }) => evidence),
  ];
  return stretches.some(({ from, to }) => (to ?? 0) - (from ?? 0) > MOST_OF_WAY);
}

/** Whether a stretch without load explains a jolt: on its own side at its edges, on the other side all along it. */
export function explainsJolt({ side, from, to }: Dropped, jolted: string, position: number): boolean {
  if (side !== jolted) return position > from - JOLT && position < to + JOLT;
  return [from, to].some((edge) => Math.abs(position - edge) < JOLT);
}
