/** One line of a small picture. */
export interface SmallLine {
  /** Which of the sides' two colours and dashes, from 0. */
  readonly side: number;
  /** Along the picture, 0 to 1, and the value; null is a gap. */
  readonly points: readonly (readonly [number, number | null])[];
  /** Indexes of points to draw as marks that stand out. */
  readonly beyond?: readonly number[];
  /** Dots as well as the line. */
  readonly dotted?: boolean;
}
