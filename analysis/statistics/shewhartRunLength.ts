import { NORMAL_OBSERVATIONS, type Observations } from './observations.ts';

/** A chart of single values whose run length is asked for. */
export interface ShewhartChart {
  /** Distance of the limit from the centre, in standard deviations. */
  readonly limit: number;
  readonly sides?: 'one' | 'two';
  readonly observations?: Observations;
}

/**
 * Average number of observations until one lies beyond the limit, the mean being shifted by `shift` standard
 * deviations: one over the chance of it.
 *
 * Source: W. A. Shewhart (1931), Economic Control of Quality of Manufactured Product.
 */
export function shewhartRunLength(chart: ShewhartChart, shift = 0): number {
  const { limit, sides = 'two', observations = NORMAL_OBSERVATIONS } = chart;
  const above = observations.above(limit - shift);
  return 1 / (sides === 'one' ? above : above + observations.above(limit + shift));
}

/** The limit with which the average run length without a shift is `runLength` (above 2, else RangeError). */
export function designShewhart(chart: Omit<ShewhartChart, 'limit'>, runLength: number): number {
  const { sides = 'two', observations = NORMAL_OBSERVATIONS } = chart;
  if (!(runLength > 2)) throw new RangeError(`a run length lies above 2, not ${runLength}`);
  return observations.upperQuantile(1 / (sides === 'one' ? runLength : 2 * runLength));
}
