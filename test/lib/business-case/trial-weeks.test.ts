import { expect, it } from "vitest";
import { trialWeeks, verificationPlan } from "@/lib/business-case/from-proposal/verification-plan";
import { verificationSection } from "@/lib/business-case/sections/verification";
import { caseInput } from "@/test/factories/case-input";

const PLAN = {
  stepKPerWeek: 0.5,
  stopRules: { hotReportsPerWeek: 3, dissatisfiedPct: 15, zoneAirTempC: 25.5 },
  notice: "From Monday the cooling setpoint changes from week to week.",
};

it("prints the drawn weeks of a switchback with their days, the same whenever they are printed", () => {
  const plan = { ...PLAN, switchback: { pairs: 4, seed: 7, beginsOn: "2026-06-01" } };
  const weeks = trialWeeks(plan);
  expect(weeks).toHaveLength(8);
  expect(weeks[7]).toMatchObject({ week: 8, pair: 4, from: "2026-07-20", to: "2026-07-26" });
  expect(trialWeeks(plan)).toEqual(weeks);
  expect(verificationPlan(plan, "C")[0]?.how).toMatch(/seed 7/);
  const { blocks } = verificationSection({ ...caseInput(), trialWeeks: weeks });
  expect(blocks).toHaveLength(2);
});

it("prints none for a trial in steps, nor for an issue of before there were first days", () => {
  expect(trialWeeks({ ...PLAN, switchback: null })).toEqual([]);
  expect(trialWeeks({ ...PLAN, switchback: { pairs: 4, seed: 7 } })).toEqual([]);
  expect(verificationSection(caseInput()).blocks).toHaveLength(1);
});
