import { describe, expect, it } from "vitest";
import { signTestProbability } from "@/lib/trends/diagnosis/sign-test";
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
