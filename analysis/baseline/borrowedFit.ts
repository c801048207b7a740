import { type ShrunkRegression, shrunkRegression } from '../statistics/shrunkRegression.ts';
import { invertSymmetric } from '../statistics/solveSymmetric.ts';
import type { LentPrior } from './lent.ts';
import type { MeasurePrior } from './priors.ts';

/** The weight, in strokes, that makes a given scale stay whatever the room's own strokes say. */
const GIVEN = 1e9;

/**
 * A room's own strokes combined with what rooms of its model lend. The noise is estimated about the room's own level
 * first, because a room far from its model is not noisy although its strokes lie far from what was expected.
 *
 * `rows` and `responses` as for `shrunkRegression`; null where that is.
 */
export function borrowedFit(
  rows: readonly ArrayLike<number>[],
  responses: readonly number[],
  prior: MeasurePrior,
  lent: LentPrior,
): ShrunkRegression | null {
  const size = lent.means.length;
  const anyLevel = Float64Array.from(lent.covariance);
  anyLevel[0] += prior.levelSpread ** 2;
  const [ownLevel, precision] = [anyLevel, Float64Array.from(lent.covariance)].map((covariance) =>
    invertSymmetric(covariance, size),
  );
  if (ownLevel === null || precision === null) throw new RangeError('what is lent has no proper covariance');
  const { means, scale, scaleWeight: weight } = lent;
  const options = { scaleFloor: prior.scaleFloor, correctScale: true };
  const own = shrunkRegression(rows, responses, {
    ...options,
    prior: { means, precision: ownLevel },
    priorScale: { scale, weight },
  });
  if (own === null) return null;
  return shrunkRegression(rows, responses, {
    ...options,
    prior: { means, precision },
    priorScale: { scale: own.scale, weight: GIVEN },
  });
}
