import { median } from './median.ts';
import { MAD_TO_SIGMA, medianAbsoluteDeviation } from './medianAbsoluteDeviation.ts';
import { normalDensity, normalDistribution } from './normalDistribution.ts';
import { present } from './select.ts';

/** A location and the scale that it was found with, in the unit of the values. */
export interface Location {
  readonly location: number;
  readonly scale: number;
}

/**
 * Huber's M-estimate of location: values further than `k` scales are moved in to there, the scale being the median
 * absolute deviation. NaN counts as missing; NaN is the answer where nothing is left.
 *
 * Source: P. J. Huber (1964), Robust estimation of a location parameter; W. N. Venables, B. D. Ripley (2002),
 * section 5.5.
 */
export function huberLocation(values: ArrayLike<number>, k = 1.5, constant = MAD_TO_SIGMA): Location {
  const x = present(values);
  const scale = medianAbsoluteDeviation(x, constant);
  let location = median(x);
  for (let step = 0; step < 500 && scale > 0; step++) {
    const next = mean(movedIn(x, location, k * scale));
    if (Math.abs(next - location) < 1e-12 * scale) break;
    location = next;
  }
  return { location, scale };
}

/**
 * Location and scale together (proposal 2): the scale is that of the values moved in, made right for normal ones.
 *
 * Source: P. J. Huber (1964), section 8.
 */
export function huberProposal2(values: ArrayLike<number>, k = 1.5, constant = MAD_TO_SIGMA): Location {
  const x = present(values);
  const inside = 2 * normalDistribution(k) - 1;
  const beta = inside + k * k * (1 - inside) - 2 * k * normalDensity(k);
  let location = median(x);
  let scale = medianAbsoluteDeviation(x, constant);
  for (let step = 0; step < 1000 && scale > 0; step++) {
    const moved = movedIn(x, location, k * scale);
    const nextLocation = mean(moved);
    const squares = moved.reduce((sum, value) => sum + (value - nextLocation) ** 2, 0);
    const nextScale = Math.sqrt(squares / (x.length - 1) / beta);
    const settled = Math.abs(nextLocation - location) + Math.abs(nextScale - scale) < 1e-12 * scale;
    location = nextLocation;
    scale = nextScale;
    if (settled) break;
  }
  return { location, scale };
}

function movedIn(x: Float64Array, centre: number, reach: number): Float64Array {
  return x.map((value) => Math.min(centre + reach, Math.max(centre - reach, value)));
}

function mean(x: Float64Array): number {
  return x.reduce((sum, value) => sum + value, 0) / x.length;
}
