import { sumNthPowerDeviations } from 'simple-statistics';

/** Squares about what was fitted, and the degrees of freedom that they have. */
export interface Squares {
  readonly squares: number;
  readonly degreesOfFreedom: number;
}

/** A variance and how many degrees of freedom it is worth. */
export interface KnownVariance {
  readonly variance: number;
  readonly degreesOfFreedom: number;
}

/**
 * A variance that few observations tell, shrunk towards one known beforehand: a mean weighted by degrees of freedom, and as
 * many altogether. A difference over its standard error by this one follows Student's t with these degrees of freedom.
 *
 * Source: G. K. Smyth (2004), Linear models and empirical Bayes methods for assessing differential expression in
 * microarray experiments, section 3.
 */
export function moderatedVariance(own: Squares, prior: KnownVariance): KnownVariance {
  const degreesOfFreedom = prior.degreesOfFreedom + own.degreesOfFreedom;
  if (!(degreesOfFreedom > 0)) throw new RangeError('A variance takes at least one degree of freedom.');
  return {
    variance: (prior.degreesOfFreedom * prior.variance + own.squares) / degreesOfFreedom,
    degreesOfFreedom,
  };
}

/** Squares of each sample about its own mean, together. */
export function squaresWithin(...samples: readonly (readonly number[])[]): Squares {
  let squares = 0;
  let degreesOfFreedom = 0;
  for (const sample of samples) {
    if (sample.length === 0) continue;
    squares += sumNthPowerDeviations(sample, 2);
    degreesOfFreedom += sample.length - 1;
  }
  return { squares, degreesOfFreedom };
}

/** Squares of samples that are thought to vary alike, as one. */
export function pooledSquares(samples: readonly Squares[]): Squares {
  return samples.reduce(
    (sum, sample) => ({
      squares: sum.squares + sample.squares,
      degreesOfFreedom: sum.degreesOfFreedom + sample.degreesOfFreedom,
    }),
    { squares: 0, degreesOfFreedom: 0 },
  );
}
