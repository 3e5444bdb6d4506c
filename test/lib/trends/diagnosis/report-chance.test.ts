import { describe, expect, it } from "vitest";
import { oneDeskProbability, signTestProbability } from "@/lib/trends/diagnosis/report-chance";
import { loadCheckValues } from "@/test/support/check-values";

const file = loadCheckValues<{ more: number; fewer: number }>("trends/sign-test");

describe("the exact sign test", () => {
  it.each(file.cases)("$name", ({ inputs, expected, tolerance }) => {
    const found = signTestProbability(inputs.more, inputs.fewer);
    expect(Math.abs(found - Number(expected.probability))).toBeLessThanOrEqual(Number(tolerance.probability));
  });

  it("is certain without reports, and the two sides of an odd number of them add up to one", () => {
    expect(signTestProbability(0, 0)).toBe(1);
    expect(signTestProbability(9, 2) + signTestProbability(3, 8)).toBeCloseTo(1, 12);
  });
});

describe("one desk among several", () => {
  // By hand: 6 * (5 * (1/6)^4 * 5/6 + (1/6)^5) = 6 * 26 / 7776, and 6 * (1/6)^2.
  it.each([
    [{ busiest: 4, reports: 5, desks: 6 }, (6 * 26) / 7776],
    [{ busiest: 2, reports: 2, desks: 6 }, 1 / 6],
    [{ busiest: 5, reports: 5, desks: 1 }, 1],
  ])("%o", (of, expected) => {
    expect(oneDeskProbability(of)).toBeCloseTo(expected, 12);
  });
});
