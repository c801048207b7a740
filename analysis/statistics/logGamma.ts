/** B(2j) / (2j (2j - 1)) for j = 1 to 8, the terms of Stirling's series. */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156, -3617 / 122400];

const HALF_LOG_TWO_PI = 0.9189385332046728;

/**
 * Natural logarithm of the gamma function, for `x` above 0; RangeError otherwise.
 *
 * Source: Stirling's series, NIST Digital Library of Mathematical Functions 5.11.1, after shifting small
 * arguments upwards by 5.5.1. Absolute error below 1e-14, relative error below 1e-15 for large arguments.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`logGamma takes a number above 0, not ${x}`);
  if (x === Number.POSITIVE_INFINITY) return x;
  let shifted = x;
  let product = 1;
  while (shifted < 10) product *= shifted++;
  return (
    (shifted - 0.5) * Math.log(shifted) -
    shifted +
    HALF_LOG_TWO_PI +
    stirlingTail(shifted) -
    Math.log(product)
  );
}

/** logGamma(x) - [(x - 1/2) ln x - x + ln(2 pi)/2], for `x` of at least 10. */
function stirlingTail(x: number): number {
  const inverseSquare = 1 / (x * x);
  let sum = 0;
  for (let j = STIRLING.length - 1; j >= 0; j--) sum = sum * inverseSquare + STIRLING[j];
  return sum / x;
}
