import { PRIORS, unseenSupply } from '../baseline/priors.ts';
import type { MeasureName } from '../measures.ts';
import {
  type KnownVariance,
  moderatedVariance,
  pooledSquares,
  type Squares,
} from '../statistics/moderatedVariance.ts';

/** Of what the prior says that it is worth: what is usual for all rooms tells less of this one. A choice, no source. */
const PRIOR_COUNTS = 0.75;

/**
 * How far the strokes of one side and direction differ among themselves, by their own squares within the two spans, those of
 * the room's other sides and directions, which vary much alike, and what is usual for such rooms.
 *
 * Source: `moderatedVariance`.
 */
export function roomSpread(
  measure: MeasureName,
  own: Squares,
  others: readonly Squares[],
  supplyIsKnown: boolean,
): KnownVariance {
  const known = supplyIsKnown ? PRIORS[measure] : unseenSupply(PRIORS[measure]);
  return moderatedVariance(pooledSquares([own, ...others]), {
    variance: known.scale ** 2,
    degreesOfFreedom: PRIOR_COUNTS * known.scaleWeight,
  });
}
