import { hodgesLehmann } from '../statistics/hodgesLehmann.ts';
import type { KnownVariance } from '../statistics/moderatedVariance.ts';
import { normalUpperQuantile } from '../statistics/normalQuantile.ts';
import { studentTUpperQuantile } from '../statistics/studentT.ts';
import type { AtReference } from './atReference.ts';

/** After less before, on the measure's scale, and how far it may reach. */
export interface ShiftInterval {
  readonly shift: number;
  readonly lower: number;
  readonly upper: number;
}

/** How far strokes differ, and by how much they resemble their neighbours. */
export interface StrokeSpread {
  readonly spread: KnownVariance;
  /** `strokeDependence` of the two spans. */
  readonly dependence: number;
}

/** Of an interval that is told by itself. */
export const CONFIDENCE = 0.95;

/**
 * Median of all differences (Hodges and Lehmann, 1963) with its exact rank interval where that reaches the confidence, else
 * Student's t about it by the room's moderated spread; both as much wider as neighbouring strokes resemble each other, and as
 * what the slopes leave open of a difference in weather and supply asks for. `by`: `spread` alone, or by the ranks where they
 * can. Null where a span holds no stroke.
 */
export function shiftInterval(
  { before, after, unsure }: Pick<AtReference, 'before' | 'after' | 'unsure'>,
  { spread, dependence }: StrokeSpread,
  confidence: number,
  by: 'ranks' | 'spread' = 'ranks',
): ShiftInterval | null {
  const ranked = hodgesLehmann(after, before, confidence);
  if (ranked === null) return null;
  const tail = (1 - confidence) / 2;
  const { shift } = ranked;
  const half =
    studentTUpperQuantile(tail, spread.degreesOfFreedom) *
    Math.sqrt(spread.variance * (1 / before.length + 1 / after.length));
  const isExact = by === 'ranks' && ranked.confidence >= confidence;
  const open = normalUpperQuantile(tail) * unsure;
  const reach = (alone: number) => Math.hypot(alone * Math.sqrt(dependence), open);
  return {
    shift,
    lower: shift - reach(isExact ? shift - ranked.lower : half),
    upper: shift + reach(isExact ? ranked.upper - shift : half),
  };
}
