/** A pivot of a matrix with a unit diagonal that is no larger is lost in rounding. */
const LEAST_PIVOT = 1e-13;

/**
 * Lower triangle L with L L' the symmetric matrix (row after row, `size` x `size`, diagonal about 1; what lies above it is
 * not read), or null where that is not positive definite to working precision. `lower`: what it is put into, of which what lies
 * above the diagonal is left as it is.
 *
 * Source: Cholesky's factorisation; G. H. Golub, C. F. Van Loan, Matrix Computations, section 4.2.
 */
export function choleskyFactor(
  matrix: Float64Array,
  size: number,
  lower: Float64Array = new Float64Array(size * size),
): Float64Array | null {
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j];
      for (let k = 0; k < j; k++) sum -= lower[i * size + k] * lower[j * size + k];
      if (i !== j) lower[i * size + j] = sum / lower[j * size + j];
      else if (sum > LEAST_PIVOT) lower[i * size + i] = Math.sqrt(sum);
      else return null;
    }
  }
  return lower;
}

/** Solves `lower` x = `vector` in place. */
export function substituteForward(lower: Float64Array, vector: Float64Array): void {
  const size = vector.length;
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) vector[i] -= lower[i * size + k] * vector[k];
    vector[i] /= lower[i * size + i];
  }
}

/** Solves the transpose of `lower` x = `vector` in place. */
export function substituteBack(lower: Float64Array, vector: Float64Array): void {
  const size = vector.length;
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) vector[i] -= lower[k * size + i] * vector[k];
    vector[i] /= lower[i * size + i];
  }
}
