import { solveLinear } from './solveLinear.ts';

/** A fit by least squares; one coefficient for each column of the rows. */
export interface LeastSquares {
  readonly coefficients: Float64Array;
  readonly standardErrors: Float64Array;
  readonly residualStandardDeviation: number;
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
}

/**
 * Ordinary least squares by orthogonal reflections, which keep twice the digits of the normal equations.
 *
 * `rows`: one array of regressors per observation; no intercept is added, so put a 1 where one is wanted.
 * `responses`: as many, no gaps. Null for fewer observations than coefficients or collinear regressors; standard
 * errors are NaN where there are no more observations than coefficients. RangeError where lengths differ.
 *
 * Source: A. S. Householder (1958); G. H. Golub, C. F. Van Loan, Matrix Computations, algorithm 5.3.2.
 */
export function leastSquares(
  rows: readonly ArrayLike<number>[],
  responses: ArrayLike<number>,
): LeastSquares | null {
  const n = rows.length;
  if (responses.length !== n) throw new RangeError(`${n} rows but ${responses.length} responses`);
  const size = n === 0 ? 0 : rows[0].length;
  if (size === 0 || n < size) return null;
  const columns = Array.from({ length: size }, (_, j) => Float64Array.from(rows, (row) => row[j]));
  const right = Float64Array.from(responses);
  for (let j = 0; j < size; j++) if (!reflect(columns, right, j)) return null;
  const triangle = (unit: Float64Array) => {
    const matrix = new Float64Array(size * size);
    for (let r = 0; r < size; r++) for (let c = r; c < size; c++) matrix[r * size + c] = columns[c][r];
    return solveLinear(matrix, unit);
  };
  const coefficients = triangle(right.slice(0, size));
  const residualSumOfSquares = right.subarray(size).reduce((sum, rest) => sum + rest * rest, 0);
  const degreesOfFreedom = n - size;
  const residualStandardDeviation = Math.sqrt(residualSumOfSquares / degreesOfFreedom);
  const squares = new Float64Array(size);
  for (let c = 0; c < size; c++) {
    const unit = new Float64Array(size);
    unit[c] = 1;
    triangle(unit).forEach((value, r) => {
      squares[r] += value * value;
    });
  }
  const standardErrors = squares.map((square) => residualStandardDeviation * Math.sqrt(square));
  return { coefficients, standardErrors, residualStandardDeviation, residualSumOfSquares, degreesOfFreedom };
}

/** Reflects everything so that column `j` is zero below its row `j`; false where nothing is left of the column. */
function reflect(columns: Float64Array[], right: Float64Array, j: number): boolean {
  const column = columns[j];
  const tail = column.subarray(j);
  const length = Math.hypot(...tail);
  if (!(length > 1e-14 * Math.hypot(...column))) return false;
  const direction = Float64Array.from(tail);
  direction[0] += tail[0] < 0 ? -length : length;
  const squared = direction.reduce((sum, value) => sum + value * value, 0);
  for (const target of [...columns.slice(j), right]) {
    const part = target.subarray(j);
    const along = (2 * part.reduce((sum, value, i) => sum + value * direction[i], 0)) / squared;
    for (let i = 0; i < part.length; i++) part[i] -= along * direction[i];
  }
  return true;
}
