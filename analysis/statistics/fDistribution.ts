import { findPositiveRoot } from './findRoot.ts';
import { incompleteBeta } from './incompleteBeta.ts';

/**
 * Share of the F distribution below `f` (at least 0), by the degrees of freedom of numerator and denominator,
 * both above 0, else RangeError.
 *
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.6.2.
 */
export function fDistribution(f: number, numerator: number, denominator: number): number {
  const whole = denominator + numerator * f;
  return incompleteBeta(numerator / 2, denominator / 2, (numerator * f) / whole, denominator / whole);
}

/** Share of the F distribution above `f`, without cancellation where it is small. */
export function fUpperTail(f: number, numerator: number, denominator: number): number {
  const whole = denominator + numerator * f;
  return incompleteBeta(denominator / 2, numerator / 2, denominator / whole, (numerator * f) / whole);
}

/** The value below which the distribution holds `probability`, which lies between 0 and 1, ends left out. */
export function fQuantile(probability: number, numerator: number, denominator: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`a probability lies between 0 and 1, not ${probability}`);
  }
  const lower = probability < 0.5;
  return findPositiveRoot(
    (f) =>
      lower
        ? Math.log(probability / fDistribution(f, numerator, denominator))
        : Math.log(fUpperTail(f, numerator, denominator) / (1 - probability)),
    1,
  );
}
