import fc from "fast-check";
import { expect, test } from "vitest";
import { type CashFlowPlan, cashFlowByYear, discountedPaybackYears } from "@/lib/finance/cash-flow";
import { investmentFigures } from "@/lib/finance/investment";
import { nominalRate } from "@/lib/finance/present-value";
import { projectFigures } from "@/lib/finance/project-figures";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

const plain = (plan: Partial<CashFlowPlan>): CashFlowPlan => ({
  basis: "real",
  outlay: 0,
  savingPerYear: 0,
  upkeepPerYear: 0,
  lifeYears: 1,
  rate: 0,
  escalation: 0,
  timing: "end",
  ...plan,
});

type Worked = { I0: number; A: number; n: number; d_real: number; inflation: number };
test.each(loadCheckValues<Worked>("finance/life-cycle").cases)(
  "year by year the flows end at the handbook's net present value, real and nominal alike: $name",
  (check) => {
    const { I0: outlay, A: savingPerYear, n: lifeYears, d_real: rate, inflation } = check.inputs;
    const real = plain({ outlay, savingPerYear, lifeYears, rate });
    const nominal = plain({ ...real, basis: "nominal", rate: nominalRate(rate, inflation), escalation: inflation });
    const [figures, middle] = [projectFigures(real), projectFigures({ ...real, timing: "middle" })];
    compareWithCase(
      {
        ...check,
        expected: onlyOf(check.expected as Record<string, number>),
        tolerance: onlyOf(check.tolerance as Record<string, number>),
      },
      {
        SPB_yr: figures.simplePaybackYears ?? Number.NaN,
        NPV_real_endyear: cashFlowByYear(real).at(-1)?.presentCumulative ?? Number.NaN,
        NPV_nominal_escalated: cashFlowByYear(nominal).at(-1)?.presentCumulative ?? Number.NaN,
        NPV_real_midyear: middle.netPresentValue,
        SIR: figures.savingsToInvestment ?? Number.NaN,
      },
    );
  },
);

/** The figures of the case that a list of cash flows has. */
const onlyOf = (all: Record<string, number>): Record<string, number> =>
  Object.fromEntries(
    ["SPB_yr", "NPV_real_endyear", "NPV_nominal_escalated", "NPV_real_midyear", "SIR"].map((key) => [
      key,
      all[key] as number,
    ]),
  );

test("rising prices are those of the handbook's escalated factor", () => {
  for (const check of loadCheckValues<{ d: number; n: number[]; e: number }>("finance/present-value-factors").cases) {
    const factors = (check.expected as { UPV_star_e1pct: number[] }).UPV_star_e1pct;
    const tolerances = (check.tolerance as { UPV_star_e1pct: number[] }).UPV_star_e1pct;
    for (const [at, lifeYears] of check.inputs.n.entries()) {
      const plan = plain({ savingPerYear: 1, lifeYears, rate: check.inputs.d, escalation: check.inputs.e });
      const { presentSavings } = projectFigures(plan);
      expect(Math.abs(presentSavings - (factors[at] as number))).toBeLessThan(tolerances[at] as number);
    }
  }
});

test("the figures are those of the years, for any plan", () => {
  const money = fc.double({ min: 0, max: 1e5, noNaN: true });
  fc.assert(
    fc.property(
      money,
      money,
      money,
      fc.double({ min: 0.1, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 0.2, noNaN: true }),
      (outlay, savingPerYear, upkeepPerYear, lifeYears, rate) => {
        const plan = plain({ outlay, savingPerYear, upkeepPerYear, lifeYears, rate });
        const last = cashFlowByYear(plan).at(-1);
        expect(projectFigures(plan).netPresentValue).toBeCloseTo(last?.presentCumulative ?? Number.NaN, 4);
      },
    ),
  );
});

test("whole years agree with the figures of level savings", () => {
  const plan = { outlay: 6000, savingPerYear: 3200, rate: 0.03 };
  const level = investmentFigures({ ...plan, years: 10 });
  expect(projectFigures(plain({ ...plan, lifeYears: 10 })).netPresentValue).toBeCloseTo(level.netPresentValue, 8);
});

test("of a year in which the change is undone only the part before counts", () => {
  const years = cashFlowByYear(plain({ savingPerYear: 100, upkeepPerYear: 20, lifeYears: 2.5 }));
  expect(years.map(({ saving }) => saving)).toEqual([0, 100, 100, 50]);
  expect(years.map(({ upkeep }) => upkeep)).toEqual([0, 20, 20, 10]);
});

test("discounted payback lies within the year in which the sum turns, or is none", () => {
  // By hand: -100 + 60/1.1 = -45.4545; 60/1.21 = 49.5868; 1 + 45.4545/49.5868 = 1.91667.
  const plan = plain({ outlay: 100, savingPerYear: 60, lifeYears: 3, rate: 0.1 });
  expect(discountedPaybackYears(cashFlowByYear(plan))).toBeCloseTo(1.91667, 5);
  expect(discountedPaybackYears(cashFlowByYear({ ...plan, savingPerYear: 30 }))).toBeNull();
  expect(discountedPaybackYears(cashFlowByYear({ ...plan, outlay: 0 }))).toBe(0);
});
