import { expect, test } from "vitest";
import { quantiles } from "@/lib/statistics/quantile";
import { seededRandom, uniformAt } from "@/lib/statistics/random";
import { quantilesBySelection, selectInPlace } from "@/lib/statistics/select";

test("selection gives the quantiles of sorting, with ties, in any order, and leaves its input alone", () => {
  const random = seededRandom(11);
  for (const count of [1, 2, 3, 10, 99, 500, 5000]) {
    const values = Float64Array.from({ length: count }, () => Math.floor(random() * count));
    const before = Array.from(values);
    expect(quantilesBySelection(values, [0, 0.1, 0.5, 0.9, 1])).toEqual(quantiles(values, [0, 0.1, 0.5, 0.9, 1]));
    expect(Array.from(values)).toEqual(before);
  }
  expect(() => quantilesBySelection(new Float64Array(0), [0.5])).toThrow("at least one value");
});

test("selection gives the quantiles of sorting for skewed, lumped, constant and negative values", () => {
  const random = seededRandom(12);
  const lists = [
    Float64Array.from({ length: 4999 }, () => 1e6 * random() ** 40 - 3),
    Float64Array.from({ length: 5000 }, (_, i) => (i % 7 === 0 ? 1e12 : -random())),
    new Float64Array(500).fill(-7.25),
    Float64Array.of(-1e308, 1e308, 0, 5),
  ];
  for (const values of lists) {
    for (const ps of [[0.1, 0.5, 0.9], [0.5], [0.05, 0.1, 0.9, 0.95], [0.25, 0.25, 0.2503]])
      expect(quantilesBySelection(values, ps)).toEqual(quantiles(values, ps));
  }
});

test("selects the k-th smallest and leaves none larger before it", () => {
  const values = Float64Array.of(5, 1, 4, 1, 3);
  expect(selectInPlace(values, 2)).toBe(3);
  expect(Math.max(...values.subarray(0, 2))).toBe(1);
});

test("a number of a stream can be had without those before it", () => {
  for (const seed of [0, 1, 42, 0xffffffff, -5]) {
    const next = seededRandom(seed);
    for (let index = 0; index < 300; index++) expect(uniformAt(seed, index)).toBe(next());
  }
});
