/**
 * Inverse of a small symmetric positive definite matrix by Gauss-Jordan elimination, its rows and columns first
 * scaled to a unit diagonal. Null when the matrix is singular to working precision: something in it is not known.
 */
export function symmetricInverse(matrix: readonly (readonly number[])[]): number[][] | null {
  const size = matrix.length;
  const scale = matrix.map((row, i) => Math.sqrt(row[i] as number));
  if (!scale.every((each) => each > 0)) return null;
  const work = matrix.map((row, i) => [
    ...row.map((value, j) => value / ((scale[i] as number) * (scale[j] as number))),
    ...row.map((_, j) => (i === j ? 1 : 0)),
  ]);
  for (let k = 0; k < size; k++) {
    const pivotRow = work[k] as number[];
    const pivot = pivotRow[k] as number;
    if (!(pivot > 1e-12)) return null;
    for (let j = 0; j < 2 * size; j++) pivotRow[j] = (pivotRow[j] as number) / pivot;
    for (const [i, row] of work.entries()) {
      const factor = row[k] as number;
      if (i === k || factor === 0) continue;
      for (let j = 0; j < 2 * size; j++) row[j] = (row[j] as number) - factor * (pivotRow[j] as number);
    }
  }
  return work.map((row, i) => row.slice(size).map((value, j) => value / ((scale[i] as number) * (scale[j] as number))));
}
