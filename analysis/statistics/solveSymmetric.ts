import { choleskyFactor, substituteBack, substituteForward } from './cholesky.ts';
import { ReusedArray } from './reusedArray.ts';

const [forScale, forScaled] = [new ReusedArray(), new ReusedArray()];
const [forLower, forColumn] = [new ReusedArray(), new ReusedArray()];

/**
 * Inverse of a symmetric positive definite matrix (row after row, `size` x `size`), or null where it is not
 * positive definite to working precision. Scaled to a unit diagonal first, so mixed units do no harm.
 */
export function invertSymmetric(matrix: Float64Array, size: number): Float64Array | null {
  if (matrix.length !== size * size) throw new RangeError(`${matrix.length} values are no ${size} x ${size}`);
  const scale = forScale.ofLength(size);
  for (let i = 0; i < size; i++) {
    if (!(matrix[i * size + i] > 0)) return null;
    scale[i] = 1 / Math.sqrt(matrix[i * size + i]);
  }
  const scaled = forScaled.ofLength(size * size);
  for (let r = 0; r < size; r++)
    for (let c = 0; c < size; c++) scaled[r * size + c] = matrix[r * size + c] * scale[r] * scale[c];
  const lower = choleskyFactor(scaled, size, forLower.ofLength(size * size));
  if (lower === null) return null;
  const inverse = new Float64Array(size * size);
  const column = forColumn.ofLength(size);
  for (let c = 0; c < size; c++) {
    column.fill(0);
    column[c] = 1;
    substituteForward(lower, column);
    substituteBack(lower, column);
    for (let r = 0; r < size; r++) inverse[r * size + c] = column[r] * scale[r] * scale[c];
  }
  return inverse;
}
