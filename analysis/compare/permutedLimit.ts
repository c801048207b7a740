import type { Squares } from '../statistics/moderatedVariance.ts';
import { arrangements } from './arrangements.ts';
import { placeSpreads } from './placeSpreads.ts';
import { type StrokeTable, spanDifferences } from './spanDifferences.ts';

/** Two arrangements that mirror each other (before for after) come to the same, but for the last digits. */
const SAME = 1e-9;

/**
 * What the largest of all differences over its stroke-to-stroke spread must exceed, so that no more than the error rate's part of all
 * arrangements of the strokes come to as much; null where there are too few arrangements for any to be so rare. Where both
 * spans hold as many strokes each arrangement has its mirror, which comes to the same: three strokes against three have one pair of 20 at
 * the top, which is not rare enough, whatever changed.
 *
 * Source: P. H. Westfall, S. S. Young (1993), Resampling-Based Multiple Testing, section 2.3 (single-step maxT).
 */
export function permutedLimit(
  table: StrokeTable,
  late: number,
  known: readonly Squares[],
  errorRate: number,
): number | null {
  const all = arrangements(table.strokes, late);
  const rank = Math.floor(errorRate * all.length);
  if (rank < (2 * late === table.strokes ? 2 : 1)) return null;
  const maxima = all.map((chosen) => {
    const { shift, within } = spanDifferences(table, chosen);
    const spreads = placeSpreads(within, table.strokes - 2, known);
    let largest = 0;
    for (let b = 0; b < table.bins; b++)
      largest = Math.max(largest, Math.abs(shift[b]) / spreads[b].deviation);
    return largest;
  });
  maxima.sort((a, b) => b - a);
  return maxima[rank] * (1 + SAME);
}
