/** Values of strokes by bin, row after row, with what is the same whichever of the strokes are chosen. */
export interface StrokeTable {
  readonly strokes: number;
  readonly bins: number;
  readonly values: Float64Array;
  readonly sums: Float64Array;
  readonly squares: Float64Array;
}

/** `rows`: one list of values a stroke, each as long; not empty. */
export function strokeTable(rows: readonly (readonly number[])[]): StrokeTable {
  const bins = rows[0].length;
  const values = Float64Array.from(rows.flat());
  const sums = new Float64Array(bins);
  const squares = new Float64Array(bins);
  for (let at = 0; at < values.length; at++) {
    sums[at % bins] += values[at];
    squares[at % bins] += values[at] * values[at];
  }
  return { strokes: rows.length, bins, values, sums, squares };
}

/** Mean of the chosen strokes less that of the others, and the squares about either mean, bin by bin. */
export function spanDifferences(
  { strokes, bins, values, sums, squares }: StrokeTable,
  chosen: readonly number[],
) {
  const shift = new Float64Array(bins);
  const within = new Float64Array(bins);
  const others = strokes - chosen.length;
  const sum = new Float64Array(bins);
  for (const row of chosen) for (let b = 0; b < bins; b++) sum[b] += values[row * bins + b];
  for (let b = 0; b < bins; b++) {
    const mean = sum[b] / chosen.length;
    const otherMean = (sums[b] - sum[b]) / others;
    shift[b] = mean - otherMean;
    within[b] = Math.max(0, squares[b] - chosen.length * mean ** 2 - others * otherMean ** 2);
  }
  return { shift, within };
}
