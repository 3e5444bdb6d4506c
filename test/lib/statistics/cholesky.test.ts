import { expect, it } from "vitest";
import { choleskyOf, logDeterminant, solveWithCholesky } from "@/lib/statistics/cholesky";

const rows = (matrix: number[][]) => matrix.map((row) => Float64Array.from(row));

// Hand: [[4, 2], [2, 3]] has L = [[2, 0], [1, √2]], determinant 8; with b = (10, 9) x = (1.5, 2).
it("factors, solves and gives the determinant", () => {
  const lower =
    choleskyOf(
      rows([
        [4, 2],
        [2, 3],
      ]),
    ) ?? [];
  expect([...(lower[0] ?? [])]).toEqual([2]);
  expect(lower[1]?.[0]).toBe(1);
  expect(lower[1]?.[1]).toBeCloseTo(Math.SQRT2, 12);
  expect(logDeterminant(lower)).toBeCloseTo(Math.log(8), 12);
  const [x, y] = solveWithCholesky(lower, Float64Array.of(10, 9));
  expect(x).toBeCloseTo(1.5, 12);
  expect(y).toBeCloseTo(2, 12);
});

it("refuses what is not positive definite", () => {
  expect(
    choleskyOf(
      rows([
        [1, 2],
        [2, 1],
      ]),
    ),
  ).toBeNull();
});
