import { findPositiveRoot } from './findRoot.ts';
import { incompleteBeta } from './incompleteBeta.ts';
import { logGamma } from './logGamma.ts';
import { normalUpperTail } from './normalDistribution.ts';
import { normalUpperQuantile } from './normalQuantile.ts';

/** Share of Student's t distribution below `t`, by `degreesOfFreedom` above 0 (infinite: the normal one). */
export function studentT(t: number, degreesOfFreedom: number): number {
  return studentTUpperTail(-t, degreesOfFreedom);
}

/**
 * Share of Student's t distribution above `t`, to 1e-12 relative in both tails. RangeError unless the degrees of
 * freedom are above 0; infinitely many give the normal distribution.
 *
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.7.1 and 26.5.27.
 */
export function studentTUpperTail(t: number, degreesOfFreedom: number): number {
  check(degreesOfFreedom);
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return normalUpperTail(t);
  const square = t * t;
  const inside = square / (degreesOfFreedom + square);
  const half = degreesOfFreedom / 2;
  const beyond =
    t === 0 ? 1 : incompleteBeta(half, 0.5, degreesOfFreedom / (degreesOfFreedom + square), inside);
  return t >= 0 ? beyond / 2 : 1 - beyond / 2;
}

/** Density of Student's t distribution at `t`. */
export function studentTDensity(t: number, degreesOfFreedom: number): number {
  check(degreesOfFreedom);
  const front = logGamma((degreesOfFreedom + 1) / 2) - logGamma(degreesOfFreedom / 2);
  const spread = 0.5 * Math.log(degreesOfFreedom * Math.PI);
  return Math.exp(front - spread - ((degreesOfFreedom + 1) / 2) * Math.log1p((t * t) / degreesOfFreedom));
}

/** The t below which the distribution holds `probability`; infinite at 0 and 1, RangeError outside. */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  return probability < 0.5
    ? -studentTUpperQuantile(probability, degreesOfFreedom)
    : studentTUpperQuantile(1 - probability, degreesOfFreedom);
}

/** The t above which the distribution holds `probability`, however small, to 1e-12 relative. */
export function studentTUpperQuantile(probability: number, degreesOfFreedom: number): number {
  check(degreesOfFreedom);
  if (!(probability >= 0 && probability <= 1)) {
    throw new RangeError(`a probability lies between 0 and 1, not ${probability}`);
  }
  if (probability > 0.5) return -studentTUpperQuantile(1 - probability, degreesOfFreedom);
  if (probability === 0) return Number.POSITIVE_INFINITY;
  if (probability === 0.5) return 0;
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return normalUpperQuantile(probability);
  return remembered(probability, degreesOfFreedom, () =>
    findPositiveRoot(
      (t) => Math.log(studentTUpperTail(t, degreesOfFreedom) / probability),
      normalUpperQuantile(probability),
    ),
  );
}

/** A baseline is asked for the same limit with every stroke: the search for a root is not repeated. */
const MOST_REMEMBERED = 2000;
const quantiles = new Map<number, Map<number, number>>();
let remembers = 0;

function remembered(probability: number, degreesOfFreedom: number, find: () => number): number {
  const known = quantiles.get(probability)?.get(degreesOfFreedom);
  if (known !== undefined) return known;
  const found = find();
  if (++remembers > MOST_REMEMBERED) {
    quantiles.clear();
    remembers = 1;
  }
  const ofProbability = quantiles.get(probability) ?? new Map<number, number>();
  quantiles.set(probability, ofProbability.set(degreesOfFreedom, found));
  return found;
}

function check(degreesOfFreedom: number): void {
  if (!(degreesOfFreedom > 0))
    throw new RangeError(`degrees of freedom lie above 0, not ${degreesOfFreedom}`);
}
