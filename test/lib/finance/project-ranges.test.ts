import { expect, test } from "vitest";
import { projectRanges } from "@/lib/finance/project-ranges";

const PLAN = { basis: "real", outlay: 100, upkeepPerYear: 0, rate: 0, escalation: 0, timing: "end" } as const;

test("ranges are quantiles over the draws, draw by draw", () => {
  // Savings 0, 10 ... 100 with a life of 2 years and no discounting: values -100, -80 ... 100.
  const savingPerYear = Float64Array.from({ length: 11 }, (_, i) => 10 * i);
  const lifeYears = new Float64Array(11).fill(2);
  const ranges = projectRanges({ plan: PLAN, savingPerYear, lifeYears });
  expect(ranges.netPresentValue).toEqual({ p10: -80, p50: 0, p90: 80 });
  expect(ranges.lossShare).toBeCloseTo(5 / 11, 12);
  expect(ranges.savingsToInvestment?.p90).toBeCloseTo(1.8, 12);
  expect(ranges.simplePaybackYears.p10).toBeCloseTo(100 / 90, 12);
  expect(ranges.simplePaybackYears.p50).toBeCloseTo(2, 12);
});

test("an end of the range at which nothing is saved is never paid back", () => {
  const savingPerYear = Float64Array.from([-10, -10, -10, 50, 50, 50, 50, 50]);
  const { simplePaybackYears } = projectRanges({ plan: PLAN, savingPerYear, lifeYears: new Float64Array(8).fill(3) });
  expect(simplePaybackYears).toEqual({ p10: 2, p50: 2, p90: null });
});

test("without an outlay there is no ratio, and the payback is at once", () => {
  const draws = Float64Array.from([1, 2, 3]);
  const ranges = projectRanges({ plan: { ...PLAN, outlay: 0 }, savingPerYear: draws, lifeYears: draws });
  expect(ranges.savingsToInvestment).toBeNull();
  expect(ranges.simplePaybackYears).toEqual({ p10: 0, p50: 0, p90: 0 });
});

test("a short life and a low saving of the same draw go together", () => {
  const savingPerYear = Float64Array.from([100, 0]);
  const together = projectRanges({ plan: PLAN, savingPerYear, lifeYears: Float64Array.from([2, 1]) });
  const apart = projectRanges({ plan: PLAN, savingPerYear, lifeYears: Float64Array.from([1, 2]) });
  expect(together.netPresentValue.p90).toBeCloseTo(80, 10);
  expect(apart.netPresentValue.p90).toBeCloseTo(-10, 10);
});

test("draws that do not belong together are refused", () => {
  const one = Float64Array.from([1]);
  expect(() => projectRanges({ plan: PLAN, savingPerYear: one, lifeYears: new Float64Array(2) })).toThrow(/as often/);
});
