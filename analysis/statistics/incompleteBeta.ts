import { continuedFraction } from './continuedFraction.ts';
import { logGamma } from './logGamma.ts';

/**
 * Regularised incomplete beta function I_x(a, b), the beta distribution's share below `x`.
 * `a` and `b` above 0, `x` from 0 to 1, else RangeError. Give `complement` (1 - x) where it is known more exactly
 * than the subtraction would give it.
 *
 * Source: NIST Digital Library of Mathematical Functions 8.17.22 (continued fraction) and 8.17.4 (symmetry).
 */
export function incompleteBeta(a: number, b: number, x: number, complement = 1 - x): number {
  if (!(a > 0 && b > 0 && x >= 0 && x <= 1)) {
    throw new RangeError(`incompleteBeta takes a, b above 0 and x from 0 to 1, not ${a}, ${b}, ${x}`);
  }
  if (x === 0) return 0;
  if (complement === 0) return 1;
  // The fraction settles fast below the mean; above it, the other tail is worked out instead.
  return x < (a + 1) / (a + b + 2) ? fraction(a, b, x, complement) : 1 - fraction(b, a, complement, x);
}

function fraction(a: number, b: number, x: number, complement: number): number {
  const logFront =
    a * Math.log(x) + b * Math.log(complement) + logGamma(a + b) - logGamma(a) - logGamma(b) - Math.log(a);
  const below = continuedFraction(1, (j) => {
    const m = j >> 1;
    const d =
      j % 2 === 0
        ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
        : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    return [d, 1];
  });
  return Math.exp(logFront) / below;
}
