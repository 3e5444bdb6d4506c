import { expect, test } from "vitest";
import { wanderingOf } from "@/lib/comfort-reports/wandering";

test("mean, spread and swing of a saw of 1 K are those by hand", () => {
  const saw = Float64Array.from({ length: 48 }, (_, i) => (i % 2 === 0 ? 22 : 23));
  expect(wanderingOf(saw)).toEqual({ meanC: 22.5, deviationK: 0.5, rateDeviationKPerHour: 1 });
});

test("a night between two days counts for neither spread nor swing", () => {
  const day = Array.from({ length: 11 }, (_, hour) => 22 + 0.1 * hour);
  const night = Array.from({ length: 13 }, () => Number.NaN);
  const week = Float64Array.from(Array.from({ length: 5 }, () => [...day, ...night]).flat());
  const found = wanderingOf(week);
  expect(found?.meanC).toBeCloseTo(22.5, 9);
  // Eleven steps of 0.1 K: variance (11² - 1) / 12 of their squares.
  expect(found?.deviationK).toBeCloseTo(0.1 * Math.sqrt(10), 9);
  expect(found?.rateDeviationKPerHour).toBeCloseTo(0.1, 9);
});

test("less than a working week says nothing", () => {
  expect(wanderingOf(new Float64Array(39).fill(22))).toBeNull();
  expect(wanderingOf(Float64Array.from({ length: 80 }, (_, i) => (i % 2 === 0 ? 22 : Number.NaN)))).toBeNull();
});
