import { normalDensity, normalUpperTail } from './normalDistribution.ts';

/**
 * The z below which the standard normal distribution holds `probability`; minus infinity at 0, infinity at 1,
 * RangeError outside. For an upper tail smaller than 1e-10 use `normalUpperQuantile`, which keeps its digits.
 */
export function normalQuantile(probability: number): number {
  if (!(probability >= 0 && probability <= 1)) {
    throw new RangeError(`a probability lies between 0 and 1, not ${probability}`);
  }
  return probability < 0.5 ? -normalUpperQuantile(probability) : normalUpperQuantile(1 - probability);
}

/**
 * The z above which the standard normal distribution holds `probability`, to 1e-14 relative in the tails.
 *
 * Source: M. Abramowitz, I. A. Stegun, 26.2.23 (C. Hastings 1955) as the first guess, then Halley's steps on the
 * logarithm of the exact tail.
 */
export function normalUpperQuantile(probability: number): number {
  if (!(probability >= 0 && probability <= 1)) {
    throw new RangeError(`a probability lies between 0 and 1, not ${probability}`);
  }
  if (probability === 0) return Number.POSITIVE_INFINITY;
  if (probability === 0.5) return 0;
  if (probability > 0.5) return -normalUpperQuantile(1 - probability);
  let z = firstGuess(probability);
  for (let step = 0; step < 4; step++) {
    const tail = normalUpperTail(z);
    const hazard = normalDensity(z) / tail;
    const excess = Math.log(tail / probability);
    // Second derivative of ln(tail) is -hazard (hazard - z).
    z += excess / (hazard + (0.5 * excess * hazard * (hazard - z)) / hazard);
  }
  return z;
}

function firstGuess(tail: number): number {
  const t = Math.sqrt(-2 * Math.log(tail));
  const top = 2.515517 + t * (0.802853 + t * 0.010328);
  return t - top / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
}
