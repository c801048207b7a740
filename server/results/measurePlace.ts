import { MEASURE_INDEX, type MeasureName } from '../../analysis/measures.ts';

/** The place of a measure in the lists that a row of `measures` holds, as SQL names it: Postgres counts from 1. */
export function measurePlace(measure: MeasureName): number {
  return MEASURE_INDEX[measure] + 1;
}

/** SQL of such a row: whether it lies beyond its limits in the measure at that place. */
export function isBeyond(place: number): string {
  return `(beyond & ${2 ** (place - 1)} <> 0)`;
}
