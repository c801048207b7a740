/** Samples `from` to `to` (exclusive) of a recording. */
export interface SampleRange {
  readonly from: number;
  readonly to: number;
}
