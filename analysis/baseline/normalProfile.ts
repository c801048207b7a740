import type { Limits } from '../history.ts';
import { PROFILE_BINS } from '../measures.ts';
import { median } from '../statistics/median.ts';
import { robustScale } from '../statistics/robustScale.ts';
import { studentTUpperQuantile } from '../statistics/studentT.ts';

/** One healthy stroke of one side: its median amps by travel position, and its running current. */
export interface ReferenceProfile {
  readonly profile: readonly (number | null)[];
  readonly runningAmps: number;
}

/** Amperes by travel position, one per bin of a profile; null where too few strokes were measured. */
export interface NormalProfile {
  readonly lower: (number | null)[];
  readonly centre: (number | null)[];
  readonly upper: (number | null)[];
}

/** Fewer strokes do not tell their spread at one place. */
const FEWEST_STROKES = 3;
/** At one place about one healthy stroke in 400 lies outside, as with the limits of a whole stroke. */
const BEYOND_PROBABILITY = 1 / 400;
/** The spread over the whole travel counts for this many strokes at each place. */
const POOLED_WEIGHT = 6;
/** No record of a current repeats better than to this part of it. */
const LEAST_SPREAD = 0.01;

/**
 * What is normal along the travel: the usual shape of the reference strokes at the level that the baseline expects.
 *
 * Each profile is divided by its stroke's running current; the median of these ratios times `level.centre` is the
 * centre. The half width is, in logarithms, the root of the sum of squares of two: a prediction interval of Student's
 * t for the shape, with Qn (Rousseeuw and Croux, 1993) at each place shrunk towards the whole travel's, and that of
 * the level itself. Null with fewer than three reference strokes.
 */
export function normalProfile(reference: readonly ReferenceProfile[], level: Limits): NormalProfile | null {
  if (reference.length < FEWEST_STROKES || !(level.centre > 0)) return null;
  const places = Array.from({ length: PROFILE_BINS }, (_, bin) => shapeAt(reference, bin));
  const spreads = places.flatMap((place) => (place === null ? [] : [place.spread]));
  if (spreads.length === 0) return null;
  const pooled = Math.max(LEAST_SPREAD, median(spreads));
  const ofLevel = level.lower > 0 ? Math.log(level.upper / level.lower) / 2 : 0;
  const at = (bend: -1 | 0 | 1) =>
    places.map((place) => {
      if (place === null) return null;
      const half = Math.hypot(halfWidth(place.count, place.spread, pooled), ofLevel);
      return level.centre * Math.exp(place.shape + bend * half);
    });
  return { lower: at(-1), centre: at(0), upper: at(1) };
}

interface Shape {
  readonly count: number;
  /** Natural logarithm of the usual current here over the running current, and the strokes' spread about it. */
  readonly shape: number;
  readonly spread: number;
}

function shapeAt(reference: readonly ReferenceProfile[], bin: number): Shape | null {
  const ratios = reference.flatMap(({ profile, runningAmps }) => {
    const amps = profile[bin] ?? 0;
    return amps > 0 && runningAmps > 0 ? [Math.log(amps / runningAmps)] : [];
  });
  if (ratios.length < FEWEST_STROKES) return null;
  return { count: ratios.length, shape: median(ratios), spread: robustScale(ratios) };
}

function halfWidth(count: number, spread: number, pooled: number): number {
  const degreesOfFreedom = POOLED_WEIGHT + count - 1;
  const shrunk = Math.sqrt((POOLED_WEIGHT * pooled ** 2 + (count - 1) * spread ** 2) / degreesOfFreedom);
  return studentTUpperQuantile(BEYOND_PROBABILITY / 2, degreesOfFreedom) * shrunk * Math.sqrt(1 + 1 / count);
}
