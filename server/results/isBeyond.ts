/**
 * SQL of a row of `measures`: whether it lies beyond its limits in the measure at a place of the rows' lists, which
 * Postgres counts from 1.
 */
export function isBeyond(place: number): string {
  return `(beyond & ${2 ** (place - 1)} <> 0)`;
}
