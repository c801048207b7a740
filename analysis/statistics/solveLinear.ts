/**
 * Solves matrix x = `right` by elimination with row exchanges. `matrix` holds `right.length` rows one after another;
 * both are used up, and `right` holds the answer. RangeError where the matrix is singular.
 *
 * Source: G. H. Golub, C. F. Van Loan, Matrix Computations, algorithm 3.4.1.
 */
export function solveLinear(matrix: Float64Array, right: Float64Array): Float64Array {
  const n = right.length;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) {
      if (Math.abs(matrix[r * n + c]) > Math.abs(matrix[pivot * n + c])) pivot = r;
    }
    if (matrix[pivot * n + c] === 0) throw new RangeError('the matrix is singular');
    if (pivot !== c) exchange(matrix, right, pivot, c);
    for (let r = c + 1; r < n; r++) {
      const factor = matrix[r * n + c] / matrix[c * n + c];
      if (factor === 0) continue;
      for (let j = c + 1; j < n; j++) matrix[r * n + j] -= factor * matrix[c * n + j];
      right[r] -= factor * right[c];
    }
  }
  for (let r = n - 1; r >= 0; r--) {
    for (let j = r + 1; j < n; j++) right[r] -= matrix[r * n + j] * right[j];
    right[r] /= matrix[r * n + r];
  }
  return right;
}

function exchange(matrix: Float64Array, right: Float64Array, a: number, b: number): void {
  const n = right.length;
  for (let j = 0; j < n; j++) {
    const held = matrix[a * n + j];
    matrix[a * n + j] = matrix[b * n + j];
    matrix[b * n + j] = held;
  }
  const held = right[a];
  right[a] = right[b];
  right[b] = held;
}
