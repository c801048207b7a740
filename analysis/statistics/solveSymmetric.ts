/**
 * Inverse of a symmetric positive definite matrix (row after row, `size` x `size`), or null where it is not
 * positive definite to working precision. Scaled to a unit diagonal first, so mixed units do no harm.
 *
 * Source: Cholesky's factorisation; G. H. Golub, C. F. Van Loan, Matrix Computations, section 4.2.
 */
export function invertSymmetric(matrix: Float64Array, size: number): Float64Array | null {
  if (matrix.length !== size * size) throw new RangeError(`${matrix.length} values are no ${size} x ${size}`);
  const scale = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    if (!(matrix[i * size + i] > 0)) return null;
    scale[i] = 1 / Math.sqrt(matrix[i * size + i]);
  }
  const lower = factorise(matrix, scale, size);
  if (lower === null) return null;
  const inverse = new Float64Array(size * size);
  const column = new Float64Array(size);
  for (let c = 0; c < size; c++) {
    column.fill(0);
    column[c] = 1;
    substitute(lower, column, size);
    for (let r = 0; r < size; r++) inverse[r * size + c] = column[r] * scale[r] * scale[c];
  }
  return inverse;
}

function factorise(matrix: Float64Array, scale: Float64Array, size: number): Float64Array | null {
  const lower = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j] * scale[i] * scale[j];
      for (let k = 0; k < j; k++) sum -= lower[i * size + k] * lower[j * size + k];
      if (i !== j) lower[i * size + j] = sum / lower[j * size + j];
      else if (sum > 1e-13) lower[i * size + i] = Math.sqrt(sum);
      else return null;
    }
  }
  return lower;
}

/** Solves (lower x lower') x = `vector` in place. */
function substitute(lower: Float64Array, vector: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) vector[i] -= lower[i * size + k] * vector[k];
    vector[i] /= lower[i * size + i];
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) vector[i] -= lower[k * size + i] * vector[k];
    vector[i] /= lower[i * size + i];
  }
}
