import { PROFILE_BINS } from '../measures.ts';
import { pooledSquares, type Squares, squaresWithin } from '../statistics/moderatedVariance.ts';
import { studentTUpperQuantile } from '../statistics/studentT.ts';
import { permutedLimit } from './permutedLimit.ts';
import { placeSpreads } from './placeSpreads.ts';
import { type Profile, relativeProfile } from './relativeProfile.ts';
import { spanDifferences, strokeTable } from './spanDifferences.ts';

/** One bin of the travel: how far its part of the stroke's level moved, and how far it may have by chance. */
export interface ShapeChange {
  readonly bin: number;
  /** Parts of the level, strokes before and after together. */
  readonly part: number;
  /** After less before, parts of the level. */
  readonly shift: number;
  /** Chance alone comes to more than this anywhere along the travel in no more than the error rate's part of all comparisons. */
  readonly reach: number;
}

/** The profiles of one side and direction, and how its strokes depend on each other (`strokeDependence`). */
export interface ShapeGroup {
  readonly before: readonly Profile[];
  readonly after: readonly Profile[];
  readonly dependence: number;
}

/** A place differs from stroke to stroke by so much of the level as a rule, worth so many strokes: a guess, no source. */
const USUAL: Squares = { squares: 3 * 0.012 ** 2, degreesOfFreedom: 3 };

/**
 * How the shape along the travel changed, group by group of one room, bins left out that not every stroke has. Each reach holds for
 * the whole travel at once: where the strokes can be arranged often enough, by a permutation test of the largest standardised
 * difference; else by Student's t at the error rate divided by the number of bins, which is on the safe side, for bins
 * resemble each other. The spread of a place borrows from its neighbours, from the room's other sides and directions and from what
 * is usual.
 *
 * Source: `permutedLimit`; `moderatedVariance`; O. J. Dunn (1961), Multiple comparisons among means.
 */
export function shapeChanges(groups: readonly ShapeGroup[], errorRate: number): ShapeChange[][] {
  const shapes = groups.map(({ before, after }) => [before, after].map((span) => span.map(relativeProfile)));
  const squares = shapes.map(([before, after]) =>
    Array.from({ length: PROFILE_BINS }, (_, bin) => squaresWithin(inBin(before, bin), inBin(after, bin))),
  );
  return shapes.map(([before, after], own) => {
    const all = [...before, ...after];
    const bins = binsInAll(all);
    if (before.length === 0 || after.length === 0 || bins.length === 0) return [];
    const others = squares.filter((_, group) => group !== own);
    const known = bins.map((bin) => pooledSquares([USUAL, ...others.map((ofGroup) => ofGroup[bin])]));
    const table = strokeTable(all.map((shape) => bins.map((bin) => shape[bin] ?? 0)));
    const late = all.map((_, row) => row).slice(before.length);
    const { shift, within } = spanDifferences(table, late);
    const spreads = placeSpreads(within, all.length - 2, known);
    const limit = permutedLimit(table, after.length, known, errorRate);
    const alone = Math.sqrt(1 / before.length + 1 / after.length);
    return bins.map((bin, b) => {
      const { deviation, degreesOfFreedom } = spreads[b];
      const tail = errorRate / 2 / bins.length;
      const apart = limit ?? alone * studentTUpperQuantile(tail, degreesOfFreedom);
      return {
        bin,
        part: table.sums[b] / table.strokes,
        shift: shift[b],
        reach: apart * deviation * Math.sqrt(groups[own].dependence),
      };
    });
  });
}

function inBin(profiles: readonly Profile[], bin: number): number[] {
  return profiles.flatMap((profile) => profile[bin] ?? []);
}

/** Bins in which every profile has a sample. */
function binsInAll(profiles: readonly Profile[]): number[] {
  return Array.from({ length: PROFILE_BINS }, (_, bin) => bin).filter((bin) =>
    profiles.every((profile) => profile[bin] !== null),
  );
}
