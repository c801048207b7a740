/** A part of a recording, by its own clock. */
export interface Interval {
  readonly fromS: number;
  readonly toS: number;
}

/** Index of the first time at or after `timeS`; the length where there is none. `timesS` rises. */
export function firstAtOrAfter(timesS: Float64Array, timeS: number): number {
  let low = 0;
  let high = timesS.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timesS[middle] < timeS) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** How long intervals last together, seconds. */
export function lastS(intervals: readonly Interval[]): number {
  return intervals.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);
}
