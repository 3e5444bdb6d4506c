/** Lower triangle L of a symmetric positive definite matrix A = L Lᵀ, by rows; null where A is not positive definite. */
export function choleskyOf(matrix: readonly Float64Array[]): Float64Array[] | null {
  const lower: Float64Array[] = [];
  for (const [i, given] of matrix.entries()) {
    const row = new Float64Array(i + 1);
    for (let j = 0; j <= i; j++) {
      const other = j === i ? row : (lower[j] as Float64Array);
      let sum = given[j] as number;
      for (let k = 0; k < j; k++) sum -= (row[k] as number) * (other[k] as number);
      if (j < i) row[j] = sum / (other[j] as number);
      else if (sum > 0) row[i] = Math.sqrt(sum);
      else return null;
    }
    lower.push(row);
  }
  return lower;
}

/** Solves A x = b with the Cholesky factor of A. */
export function solveWithCholesky(lower: readonly Float64Array[], b: Float64Array): Float64Array {
  const x = Float64Array.from(b);
  for (const [i, row] of lower.entries()) {
    let sum = x[i] as number;
    for (let k = 0; k < i; k++) sum -= (row[k] as number) * (x[k] as number);
    x[i] = sum / (row[i] as number);
  }
  for (let i = lower.length - 1; i >= 0; i--) {
    let sum = x[i] as number;
    for (let k = i + 1; k < lower.length; k++) sum -= ((lower[k] as Float64Array)[i] as number) * (x[k] as number);
    x[i] = sum / ((lower[i] as Float64Array)[i] as number);
  }
  return x;
}

/** Logarithm of the determinant of A. */
export const logDeterminant = (lower: readonly Float64Array[]): number =>
  2 * lower.reduce((sum, row, i) => sum + Math.log(row[i] as number), 0);
