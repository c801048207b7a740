import { findPositiveRoot } from './findRoot.ts';
import { incompleteGamma, incompleteGammaUpper } from './incompleteGamma.ts';

/**
 * Share of the chi-square distribution below `x`, by `degreesOfFreedom` above 0. RangeError for a negative `x`.
 *
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.4.19.
 */
export function chiSquare(x: number, degreesOfFreedom: number): number {
  return incompleteGamma(degreesOfFreedom / 2, x / 2);
}

/** Share of the chi-square distribution above `x`, without cancellation where it is small. */
export function chiSquareUpperTail(x: number, degreesOfFreedom: number): number {
  return incompleteGammaUpper(degreesOfFreedom / 2, x / 2);
}

/** The value below which the distribution holds `probability`, which lies between 0 and 1, ends left out. */
export function chiSquareQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`a probability lies between 0 and 1, not ${probability}`);
  }
  const lower = probability < 0.5;
  return findPositiveRoot(
    (x) =>
      lower
        ? Math.log(probability / chiSquare(x, degreesOfFreedom))
        : Math.log(chiSquareUpperTail(x, degreesOfFreedom) / (1 - probability)),
    degreesOfFreedom,
  );
}
