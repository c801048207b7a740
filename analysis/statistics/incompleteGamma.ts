import { continuedFraction } from './continuedFraction.ts';
import { logGamma } from './logGamma.ts';

/**
 * Regularised lower incomplete gamma function P(a, x), the gamma distribution's share below `x`.
 * `a` above 0 and `x` at least 0, else RangeError.
 *
 * Source: NIST Digital Library of Mathematical Functions 8.11.4 (series) and 8.9.2 (continued fraction).
 */
export function incompleteGamma(a: number, x: number): number {
  check(a, x);
  return x < a + 1 ? series(a, x) : 1 - fraction(a, x);
}

/** The upper tail Q(a, x) = 1 - P(a, x), without cancellation where it is small. */
export function incompleteGammaUpper(a: number, x: number): number {
  check(a, x);
  return x < a + 1 ? 1 - series(a, x) : fraction(a, x);
}

function check(a: number, x: number): void {
  if (!(a > 0 && x >= 0))
    throw new RangeError(`incompleteGamma takes a above 0 and x at least 0, not ${a}, ${x}`);
}

function series(a: number, x: number): number {
  if (x === 0) return 0;
  let term = 1;
  let sum = 1;
  for (let j = 1; term > sum * 1e-17; j++) {
    term *= x / (a + j);
    sum += term;
  }
  return (sum * Math.exp(a * Math.log(x) - x - logGamma(a))) / a;
}

function fraction(a: number, x: number): number {
  if (x === Number.POSITIVE_INFINITY) return 0;
  const below = continuedFraction(x + 1 - a, (j) => [j * (a - j), x + 2 * j + 1 - a]);
  return Math.exp(a * Math.log(x) - x - logGamma(a)) / below;
}
