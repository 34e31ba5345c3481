/** Cholesky's method for a symmetric positive matrix; null where it is not positive. */
export function solveDense(matrix: Float64Array, right: Float64Array): Float64Array | null {
  const n = right.length;
  const lower = matrix.slice();
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let value = lower[i * n + j]!;
      for (let k = 0; k < j; k++) value -= lower[i * n + k]! * lower[j * n + k]!;
      if (i === j) {
        if (!(value > 1e-12 * Math.abs(matrix[j * n + j]!))) return null;
        lower[j * n + j] = Math.sqrt(value);
      } else lower[i * n + j] = value / lower[j * n + j]!;
    }
  }
  const solution = right.slice();
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) solution[i]! -= lower[i * n + k]! * solution[k]!;
    solution[i]! /= lower[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) solution[i]! -= lower[k * n + i]! * solution[k]!;
    solution[i]! /= lower[i * n + i]!;
  }
  return solution;
}
