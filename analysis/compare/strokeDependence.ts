/** What neighbouring strokes of one direction share of their error, and by how much less the next but one: dirt, damp, grease. */
const SHARED_BY_NEIGHBOURS = 0.3;
const LEFT_FROM_STROKE_TO_STROKE = 0.5;
/** What strokes share that are made at once: ground, supply and weather of the stay; and how soon that is gone. */
const SHARED_AT_ONCE = 0.4;
const STAY_MS = 86_400_000;
/** So many strokes on, next to nothing is left. */
const FARTHEST = 40;

/**
 * By how much the variance of the difference between two spans is more than strokes that have nothing in common would have,
 * where their spread is taken from within the spans: 1 for lonely strokes, about 2 for ten of a season against the next ten.
 * Two strokes of one stay say less than two of two stays, and their likeness hides what stays differ by.
 *
 * `before`, `after`: when the strokes were made, milliseconds, any order. The shared parts are guesses, no source.
 *
 * Source: variance of a linear combination and expectation of a quadratic form under correlated errors, G. E. P. Box (1954),
 * Some theorems on quadratic forms applied in the study of analysis of variance problems, II.
 */
export function strokeDependence(before: readonly number[], after: readonly number[]): number {
  const [m, n] = [before.length, after.length];
  const alone = 1 / m + 1 / n;
  if (m === 0 || n === 0) return 1;
  const strokes = [
    ...before.map((atMs) => ({ atMs, isAfter: false })),
    ...after.map((atMs) => ({ atMs, isAfter: true })),
  ].sort((one, other) => one.atMs - other.atMs);
  const sums = { before: 0, after: 0, across: 0 };
  strokes.forEach((one, i) => {
    for (let j = i + 1; j < Math.min(strokes.length, i + 1 + FARTHEST); j++) {
      const other = strokes[j];
      const shared = sharedBy(j - i, other.atMs - one.atMs);
      if (one.isAfter !== other.isAfter) sums.across += shared;
      else sums[one.isAfter ? 'after' : 'before'] += shared;
    }
  });
  // Of unit variance: of the difference of the means, and what the squares about them come to.
  const difference =
    alone + (2 * sums.before) / m ** 2 + (2 * sums.after) / n ** 2 - (2 * sums.across) / (m * n);
  const within = m + n - 2 - (2 * sums.before) / m - (2 * sums.after) / n;
  const told = m + n > 2 ? within / (m + n - 2) : 1;
  return Math.max(1, difference / alone / told);
}

/** Correlation of two strokes' errors. */
function sharedBy(steps: number, apartMs: number): number {
  const bySteps = SHARED_BY_NEIGHBOURS * LEFT_FROM_STROKE_TO_STROKE ** (steps - 1);
  return bySteps + SHARED_AT_ONCE * Math.exp(-apartMs / STAY_MS);
}
