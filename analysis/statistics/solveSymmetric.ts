import { choleskyFactor, substituteBack, substituteForward } from './cholesky.ts';

/**
 * Inverse of a symmetric positive definite matrix (row after row, `size` x `size`), or null where it is not
 * positive definite to working precision. Scaled to a unit diagonal first, so mixed units do no harm.
 */
export function invertSymmetric(matrix: Float64Array, size: number): Float64Array | null {
  if (matrix.length !== size * size) throw new RangeError(`${matrix.length} values are no ${size} x ${size}`);
  const scale = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    if (!(matrix[i * size + i] > 0)) return null;
    scale[i] = 1 / Math.sqrt(matrix[i * size + i]);
  }
  const scaled = matrix.map((value, at) => value * scale[Math.floor(at / size)] * scale[at % size]);
  const lower = choleskyFactor(scaled, size);
  if (lower === null) return null;
  const inverse = new Float64Array(size * size);
  const column = new Float64Array(size);
  for (let c = 0; c < size; c++) {
    column.fill(0);
    column[c] = 1;
    substituteForward(lower, column);
    substituteBack(lower, column);
    for (let r = 0; r < size; r++) inverse[r * size + c] = column[r] * scale[r] * scale[c];
  }
  return inverse;
}
