import { normalDensity, normalDistribution, normalUpperTail } from './normalDistribution.ts';
import { normalUpperQuantile } from './normalQuantile.ts';
import { studentT, studentTDensity, studentTUpperQuantile, studentTUpperTail } from './studentT.ts';

/** How the standardised, unshifted observations of a chart are distributed: symmetric about 0. */
export interface Observations {
  readonly density: (z: number) => number;
  readonly below: (z: number) => number;
  readonly above: (z: number) => number;
  readonly upperQuantile: (probability: number) => number;
}

/** Observations in units of a known standard deviation. */
export const NORMAL_OBSERVATIONS: Observations = {
  density: normalDensity,
  below: normalDistribution,
  above: normalUpperTail,
  upperQuantile: normalUpperQuantile,
};

/** Observations in units of a standard deviation that was itself estimated, with so many degrees of freedom. */
export function studentObservations(degreesOfFreedom: number): Observations {
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return NORMAL_OBSERVATIONS;
  return {
    density: (z) => studentTDensity(z, degreesOfFreedom),
    below: (z) => studentT(z, degreesOfFreedom),
    above: (z) => studentTUpperTail(z, degreesOfFreedom),
    upperQuantile: (probability) => studentTUpperQuantile(probability, degreesOfFreedom),
  };
}
