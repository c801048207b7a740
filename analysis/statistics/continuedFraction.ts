const TINY = 1e-300;
const MAXIMUM_TERMS = 100_000;

/**
 * Value of b0 + a1/(b1 + a2/(b2 + ...)); `term(j)` answers [aj, bj] for j from 1. Throws where it does not settle.
 *
 * Source: W. J. Lentz (1976), as modified by I. J. Thompson, A. R. Barnett (1986); NIST Digital Library of
 * Mathematical Functions 3.10(iii).
 */
export function continuedFraction(b0: number, term: (j: number) => readonly [number, number]): number {
  let value = b0 === 0 ? TINY : b0;
  let numerator = value;
  let denominator = 0;
  for (let j = 1; j <= MAXIMUM_TERMS; j++) {
    const [a, b] = term(j);
    denominator = 1 / (b + a * denominator || TINY);
    numerator = b + a / numerator || TINY;
    const factor = numerator * denominator;
    value *= factor;
    if (Math.abs(factor - 1) < 1e-16) return value;
  }
  throw new RangeError(
    `the continued fraction did not settle in ${MAXIMUM_TERMS} terms, the last at ${value}`,
  );
}
