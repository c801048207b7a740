/** How the errors of a room's strokes of one direction may hang together. */
export interface StrokeCorrelation {
  /** Part of the variance that wanders from stroke to stroke: dirt, damp, grease. */
  readonly wander: number;
  /** What is left of that from one stroke to the next. */
  readonly kept: number;
  /** Of the rest, what strokes share that are made at once: ground, supply and weather of the stay. */
  readonly atOnce: number;
}

/** A hypothesis of that, and what it is worth before any stroke is seen. */
interface SupposedCorrelation extends StrokeCorrelation {
  readonly prior: number;
}

/** How soon what strokes of one stay share is gone. */
const STAY_MS = 86_400_000;

/** Guesses, no source: neighbours most often share a third, and few rooms wander slowly with nearly all that they vary. */
const WANDERS = [
  { wander: 0, prior: 0.25 },
  { wander: 0.3, prior: 0.3 },
  { wander: 0.6, prior: 0.25 },
  { wander: 0.9, prior: 0.2 },
];
const KEPT = [0.5, 0.8, 0.95];
const AT_ONCE = [0, 0.4];

/** All that are weighed against each other; the priors come to 1. */
export const STROKE_CORRELATIONS: readonly SupposedCorrelation[] = WANDERS.flatMap(({ wander, prior }) => {
  const kept = wander === 0 ? [0] : KEPT;
  return kept.flatMap((each) =>
    AT_ONCE.map((atOnce) => ({ wander, kept: each, atOnce, prior: prior / kept.length / AT_ONCE.length })),
  );
});

/** For what a room does not tell itself, as the shape along the travel: neighbours share 0.3, and 0.4 if made at once. A guess, no source. */
export const USUAL_CORRELATION = { wander: 0.6, kept: 0.5, atOnce: 1 };

/** Correlation of the errors of two strokes, so many strokes and milliseconds apart. */
export function correlationOf(
  { wander, kept, atOnce }: StrokeCorrelation,
  steps: number,
  apartMs: number,
): number {
  const wandering = wander * kept ** steps;
  return atOnce === 0 ? wandering : wandering + (1 - wander) * atOnce * stayLeft(apartMs);
}

/** What is left after so many milliseconds of what strokes of one stay share, 0 to 1. A guess, no source. */
export function stayLeft(apartMs: number): number {
  return Math.exp(-apartMs / STAY_MS);
}
