import { cusumStep } from '../../statistics/cusum.ts';

/** Reference value and decision interval of a chart, in the unit of what it charts. */
export interface ChartDesign {
  readonly k: number;
  readonly h: number;
}

/** One step of a one-sided tabular CUSUM (E. S. Page, 1954) with the length of its run, held below three times h. */
export function chartStep(
  sum: number,
  run: number,
  deviation: number,
  { k, h }: ChartDesign,
): [number, number] {
  const next = Math.min(3 * h, cusumStep(sum, deviation, k));
  return [next, next > 0 ? run + 1 : 0];
}
