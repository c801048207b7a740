/** The stretch over which a side ran without load on this stroke, as parts of the travel. */
export interface Dropped {
  readonly side: string;
  readonly from: number;
  readonly to: number;
}
